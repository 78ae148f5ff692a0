// What the built page lets into itself: the content security policy as it is written, and nothing inline that would want a weaker one.
import assert from "node:assert/strict";
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { dist } from "../../tools/shell.mjs";

/** Content Security Policy Level 3: nothing but what is named here, and all of that from the app's own host. */
const POLICY = {
  "default-src": "'none'",
  "script-src": "'self' 'wasm-unsafe-eval'",
  "style-src": "'self'",
  "img-src": "'self' data: blob:",
  "font-src": "'self'",
  "connect-src": "'self'",
  "worker-src": "'self'",
  "manifest-src": "'self'",
  "base-uri": "'none'",
  "form-action": "'none'",
};

const page = readFileSync(join(dist, "index.html"), "utf8");

test("the page has the content security policy that the threat model tells, before anything that it is about", () => {
  const meta = page.match(/<meta http-equiv="Content-Security-Policy" content="([^"]*)">/);
  assert(meta, "no policy");
  const told = Object.fromEntries(meta[1].split(";").map((one) => one.trim()).map((one) => [one.split(" ")[0], one.slice(one.indexOf(" ") + 1)]));
  assert.deepEqual(told, POLICY);
  assert.doesNotMatch(page.slice(0, meta.index), /<(script|link|style)/);
});

test("nothing stands inline in the page, and no script of ours writes markup or runs text", () => {
  for (const [, attributes, inside] of page.matchAll(/<script([^>]*)>([\s\S]*?)<\/script>/g)) {
    assert.match(attributes, /\bsrc="/);
    assert.equal(inside.trim(), "");
  }
  assert.doesNotMatch(page, /<style|\sstyle=|\son[a-z]+=|javascript:/i);
  const scripts = readdirSync(dist).filter((name) => /^(boot-.*|sw)\.js$/.test(name));
  assert.equal(scripts.length, 2, scripts.join(", "));
  for (const name of scripts) {
    assert.doesNotMatch(readFileSync(join(dist, name), "utf8"), /innerHTML|outerHTML|insertAdjacentHTML|document\.write|\beval\(|new Function/, name);
  }
});

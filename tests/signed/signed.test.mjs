// Sign-offs between this program and the Data Integrity library of another project: what one signs the other accepts,
// and `stepboard verify` says why not.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, test } from "node:test";
import Ajv from "ajv/dist/2020.js";
import * as base58 from "base58-universal";
import { root } from "../../tools/shell.mjs";
import { canonical, data, did, signed, text, verified } from "./support.mjs";

const command = join(process.env.CARGO_TARGET_DIR ?? join(root, "target"), "debug", "stepboard");
const ASSESSOR = new Uint8Array(32).fill(3);
const DAY = "2026-06-01";
const schema = JSON.parse(readFileSync(join(root, "content", "schema", "verify.schema.json"), "utf8"));
const keeps = new Ajv({ allErrors: true, strict: true }).compile(schema);

const folder = mkdtempSync(join(tmpdir(), "stepboard-"));
after(() => rmSync(folder, { recursive: true }));

/** What the command says of a file: its exit code and its JSON, which keeps to the schema. */
function verify(file, words = ["--on", DAY]) {
  const { status, stdout } = spawnSync(command, ["verify", file, "--trust", data("trust.json"), "--json", ...words]);
  const told = JSON.parse(stdout);
  assert(keeps(told), JSON.stringify(keeps.errors));
  return { status, ...told };
}

function written(name, content) {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

const ours = JSON.parse(text("sign-off.json"));

test("the other library accepts a sign-off that this program signed, and refuses it changed", async () => {
  assert.equal(await verified(structuredClone(ours)), true);
  const changed = structuredClone(ours);
  changed.credentialSubject.identifier[0].identityHash = "18";
  assert.equal(await verified(changed), false);
});

test("both write the same canonical form", () => {
  assert.equal(canonical(ours), text("sign-off.json"));
  assert.equal(canonical(JSON.parse(text("trust.json"))), text("trust.json"));
});

test("this program accepts a sign-off that the other library signed", async () => {
  const { proof, ...document } = ours;
  const theirs = await signed(document, ASSESSOR, document.validFrom);
  const path = written("theirs.json", canonical(theirs));
  const told = verify(path);
  assert.deepEqual(told.reasons, []);
  assert.equal(told.status, 0);
  assert.equal(told.accepted, true);
  // Ed25519 leaves nothing to chance: both signatures are one.
  assert.equal(canonical(theirs), text("sign-off.json"));
  assert.equal(told.sign_off.assessor.key, await did(ASSESSOR));
});

test("hash, code and fingerprints are those that another program reckons", () => {
  const { proof, ...document } = ours;
  const hash = createHash("sha256").update(canonical(document)).digest("hex");
  const fingerprint = (key) =>
    createHash("sha256").update(base58.decode(key.slice("did:key:z".length)).subarray(2)).digest("hex").slice(0, 20);
  const told = verify(data("sign-off.json"));
  assert.equal(told.hash, hash);
  const [id, first, key] = told.code.split("\n");
  assert.deepEqual([id, first.replaceAll(" ", "")], [ours.id, hash.slice(0, 32)]);
  assert.equal(key.replaceAll(" ", ""), fingerprint(ours.issuer.id));
  assert.equal(told.trust.fingerprint, fingerprint(told.trust.root));
});

test("the file kept from that library is what it signs today", async () => {
  const kept = JSON.parse(text("signed-elsewhere.json"));
  const { proof, ...document } = kept;
  assert.equal(canonical(await signed(document, ASSESSOR, document.validFrom)), text("signed-elsewhere.json"));
  assert.equal(verify(data("signed-elsewhere.json")).status, 0);
});

test("what that library lets pass this program refuses", async () => {
  const more = structuredClone(ours);
  more["@context"] = [...more["@context"], "https://example.org/more"];
  assert.equal(await verified(structuredClone(more)), true, "a context behind the signed ones");
  const told = verify(written("more.json", canonical(more)));
  assert.deepEqual([told.status, told.accepted, told.reasons.map(({ why }) => why)], [1, false, ["context-differs"]]);
  const laid = verify(written("laid-out.json", JSON.stringify(ours, null, 1)));
  assert.deepEqual([laid.status, laid.reasons.map(({ why }) => why)], [1, ["not-canonical"]]);
});

test("the day decides, and without one it is today", () => {
  const file = data("sign-off.json");
  assert.equal(verify(file).status, 0);
  assert.deepEqual(verify(file, ["--on", "2026-03-01"]).reasons.map(({ why }) => why), ["not-yet-valid"]);
  assert.deepEqual(verify(file, ["--on", "2028-03-02"]).reasons.map(({ why }) => why), ["expired"]);
  const before = new Date().toISOString().slice(0, 19);
  const { on } = verify(file, []);
  assert(before <= on.slice(0, 19) && on.slice(0, 19) <= new Date().toISOString().slice(0, 19), on);
});

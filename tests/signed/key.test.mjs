// A wrapped key opens with other implementations of Argon2id (RFC 9106) and ChaCha20-Poly1305 (RFC 8439): the file says
// all that is needed, and nobody is bound to this program.
import assert from "node:assert/strict";
import { createDecipheriv } from "node:crypto";
import { test } from "node:test";
import { argon2id } from "@noble/hashes/argon2.js";
import * as base58 from "base58-universal";
import { canonical, did, text } from "./support.mjs";

const PASSPHRASE = "four words of oak and ash";
const ASSESSOR = new Uint8Array(32).fill(3);
const TAG = 16;

const bytes = (value) => base58.decode(value.slice(1));

function opened(file, passphrase) {
  const { sealed, ...beside } = file;
  const { memory_kib: m, passes: t, lanes: p, version, salt } = beside.derivation;
  const key = argon2id(passphrase, bytes(salt), { t, m, p, version, dkLen: 32 });
  const cipher = createDecipheriv("chacha20-poly1305", key, bytes(beside.cipher.nonce), { authTagLength: TAG });
  const all = Buffer.from(bytes(sealed));
  cipher.setAuthTag(all.subarray(-TAG));
  cipher.setAAD(Buffer.from(canonical(beside)), { plaintextLength: all.length - TAG });
  return Buffer.concat([cipher.update(all.subarray(0, -TAG)), cipher.final()]);
}

test("a wrapped key opens with other libraries, and only with its passphrase", async () => {
  const file = JSON.parse(text("key.json"));
  assert.deepEqual(new Uint8Array(opened(file, PASSPHRASE)), ASSESSOR);
  assert.equal(file.key, await did(ASSESSOR));
  assert.throws(() => opened(file, `${PASSPHRASE}.`));
});

test("the parameters are those recommended by RFC 9106, section 4, second option", () => {
  const { algorithm, memory_kib, passes, lanes, salt } = JSON.parse(text("key.json")).derivation;
  assert.deepEqual([algorithm, memory_kib, passes, lanes, bytes(salt).length], ["argon2id", 65536, 3, 4, 16]);
});

// What other implementations are asked with: the Data Integrity library of another project, with did:key and nothing
// fetched. The seeds are those of tests/support/shop.rs, published: nothing real may be signed with them.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { DataIntegrityProof } from "@digitalbazaar/data-integrity";
import * as Ed25519Multikey from "@digitalbazaar/ed25519-multikey";
import { createSignCryptosuite, createVerifyCryptosuite } from "@digitalbazaar/eddsa-jcs-2022-cryptosuite";
import canonicalize from "canonicalize";
import jsigs from "jsonld-signatures";
import { root } from "../../tools/shell.mjs";

const MULTIKEY = "https://w3id.org/security/multikey/v1";

export const data = (name) => join(root, "tests", "data", "signoff", name);
export const text = (name) => readFileSync(data(name), "utf8");
export const canonical = (value) => canonicalize(value);

/** A did:key is its own document; nothing else is loaded. */
async function documentLoader(url) {
  if (!url.startsWith("did:key:")) throw new Error(`${url} would be fetched`);
  const [did, fragment] = url.split("#");
  const publicKeyMultibase = did.slice("did:key:".length);
  const id = `${did}#${publicKeyMultibase}`;
  const method = { "@context": MULTIKEY, id, type: "Multikey", controller: did, publicKeyMultibase };
  const controller = { "@context": "https://www.w3.org/ns/did/v1", id: did, assertionMethod: [method] };
  return { contextUrl: null, documentUrl: url, document: fragment === undefined ? controller : method };
}

/** Whether the library takes a signed document for good. */
export async function verified(document) {
  const suite = new DataIntegrityProof({ cryptosuite: createVerifyCryptosuite() });
  const purpose = new jsigs.purposes.AssertionProofPurpose();
  const result = await jsigs.verify(document, { suite, purpose, documentLoader });
  return result.verified;
}

/** The document signed by the library. */
export async function signed(document, seed, date) {
  const key = await Ed25519Multikey.generate({ seed });
  const did = `did:key:${key.publicKeyMultibase}`;
  Object.assign(key, { id: `${did}#${key.publicKeyMultibase}`, controller: did });
  const suite = new DataIntegrityProof({ signer: key.signer(), date, cryptosuite: createSignCryptosuite() });
  const purpose = new jsigs.purposes.AssertionProofPurpose();
  return jsigs.sign(structuredClone(document), { suite, purpose, documentLoader });
}

/** The public key of a seed as did:key. */
export async function did(seed) {
  const key = await Ed25519Multikey.generate({ seed });
  return `did:key:${key.publicKeyMultibase}`;
}

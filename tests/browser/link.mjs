// What stands in a link, by another reader than the app's.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { crc32, inflateRawSync } from "node:zlib";
import { root } from "../../tools/shell.mjs";

/** The text in a code: RFC 4648, RFC 1951 with what was seen before, RFC 1952. */
export function read(code) {
  const packed = Buffer.from(code, "base64url");
  const body = packed.subarray(0, -4);
  assert.equal(packed.readUInt32LE(body.length), crc32(body));
  const before = readFileSync(join(root, "src", "exchange", "link", "before.txt"));
  const text = inflateRawSync(body.subarray(3), { dictionary: before });
  assert.deepEqual([body[0], body.readUInt16LE(1)], [1, text.length]);
  return text.toString("utf8");
}

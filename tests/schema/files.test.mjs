// Every file that we write keeps to its published JSON Schema, read by a validator from outside the project; every format that
// the sources name has a schema; what breaks the shape of a hostile file is refused by schema and program alike.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, test } from "node:test";
import Ajv from "ajv/dist/2020.js";
import { root } from "../../tools/shell.mjs";

const debug = join(process.env.CARGO_TARGET_DIR ?? join(root, "target"), "debug");
const folder = mkdtempSync(join(tmpdir(), "stepboard-files-"));
after(() => rmSync(folder, { recursive: true, force: true }));
execFileSync("cargo", ["build", "--locked", "--quiet", "--bin", "stepboard", "--example", "made"], { cwd: root, stdio: "inherit" });
execFileSync(join(debug, "examples", "made"), ["files", folder]);

const SUFFIX = ".schema.json";
const schemas = new Map();
const ajv = new Ajv({ allErrors: true, strict: true, strictTypes: false, strictRequired: false });
for (const file of readdirSync(join(root, "content", "schema")).filter((name) => name.endsWith(SUFFIX))) {
  const schema = JSON.parse(readFileSync(join(root, "content", "schema", file), "utf8"));
  schemas.set(file.slice(0, -SUFFIX.length), schema);
  ajv.addSchema(schema);
}
const check = (name) => ajv.getSchema(schemas.get(name).$id);
const read = (...path) => readFileSync(join(...path), "utf8");

function keeps(name, value, what) {
  const held = check(name);
  assert(held(value), `${what}: ${ajv.errorsText(held.errors)}\n${JSON.stringify(value).slice(0, 2000)}`);
}

/** Every place of a schema that says what an object may have. */
function* objects(schema, path = "") {
  if (schema === null || typeof schema !== "object") return;
  if (schema.type === "object" && schema.properties) yield [path, schema];
  for (const [name, inside] of Object.entries(schema)) yield* objects(inside, `${path}/${name}`);
}

test("every schema is of 2020-12, has an id with a version and lets no unknown member pass", () => {
  for (const [name, schema] of schemas) {
    assert.equal(schema.$schema, "https://json-schema.org/draft/2020-12/schema", name);
    assert.match(schema.$id, new RegExp(`^urn:stepboard:schema:${name}:\\d+$`));
    for (const [path, object] of objects(schema)) {
      // The stamp of an event is closed by each event that takes it up.
      if (name === "event" && path.endsWith("/stamp")) continue;
      const closed = object.additionalProperties === false || object.unevaluatedProperties === false;
      assert(closed, `${name}${path} takes any member`);
    }
  }
});

test("every format that the sources name has a schema of that format and version", () => {
  const files = (path) =>
    readdirSync(path, { withFileTypes: true }).flatMap((one) =>
      one.isDirectory() ? files(join(path, one.name)) : one.name.endsWith(".rs") ? [join(path, one.name)] : [],
    );
  const named = new Map();
  for (const file of files(join(root, "src"))) {
    const text = read(file);
    for (const [, format, version] of text.matchAll(/Kind\s*\{\s*format:\s*"([^"]+)",\s*version:\s*(\d+)/g)) named.set(format, version);
    for (const [, format] of text.matchAll(/FORMAT: &str = "([^"]+)"/g)) {
      named.set(format, text.match(/const (?:FORMAT_|FILE_)?VERSION: u32 = (\d+)/)?.[1]);
    }
    for (const [, format, version] of text.matchAll(/"format": "([^"]+)", "format_version": (\d+)/g)) named.set(format, version);
  }
  assert(named.size >= 9, `${[...named.keys()]}`);
  for (const [format, version] of named) {
    const schema = schemas.get(format.replace(/^stepboard-/, ""));
    assert(schema, `${format} has no schema in content/schema`);
    assert.equal(schema.$id.split(":").at(-1), version, format);
    assert(JSON.stringify(schema).includes(`{"const":"${format}"}`), `${format} is not named by its schema`);
  }
  const stamp = read(root, "src", "record", "stamp.rs").match(/pub const FORMAT: u32 = (\d+)/)[1];
  assert.equal(schemas.get("event").$id.split(":").at(-1), stamp, "the format of events");
});

const written = readdirSync(folder).filter((name) => name.endsWith(".json") && name !== "hostile.json");

for (const file of written) {
  test(`${file}, as we write it, keeps to its schema`, () => keeps(file.split(".")[0], JSON.parse(read(folder, file)), file));
}

test("every kind of event, answer and step is among what was validated", () => {
  const text = read(folder, "results.all.json");
  for (const kind of Object.keys(schemas.get("event").$defs).filter((name) => schemas.get("event").$defs[name].unevaluatedProperties === false)) {
    if (kind !== "erased") assert(text.includes(`"event":"${kind}"`), kind);
  }
});

test("journals of every format keep to the schema of events", () => {
  const folder = join(root, "tests", "data");
  const journals = readdirSync(folder).filter((name) => /^journal-format-\d+\.json$/.test(name));
  assert(journals.length >= 3);
  for (const name of journals) for (const event of JSON.parse(read(folder, name))) keeps("event", event, name);
});

test("signed files keep to their schemas", () => {
  const folder = join(root, "tests", "data", "signoff");
  keeps("key", JSON.parse(read(folder, "key.json")), "a key");
  keeps("trust-list", JSON.parse(read(folder, "trust.json")), "a trust list");
  keeps("sign-off", JSON.parse(read(folder, "sign-off.json")), "a sign-off");
  const records = read(folder, "book.jsonl").trim().split("\n");
  for (const record of records) keeps("book", JSON.parse(record), "a record");
});

test("rows and reports keep to their schemas", () => {
  const journals = join(folder, "journals");
  execFileSync(join(debug, "examples", "made"), ["crowd", journals, "20", "50"]);
  const files = readdirSync(journals).map((name) => join(journals, name));
  const stepboard = (...words) => execFileSync(join(debug, "stepboard"), words, { encoding: "utf8", maxBuffer: 1 << 28 });
  keeps("report", JSON.parse(stepboard("report", ...files)), "a report");
  stepboard("export", join(folder, "results.all.json"), ...files, `out=${join(folder, "rows")}`);
  let rows = 0;
  for (const day of readdirSync(join(folder, "rows", "answers"))) {
    for (const file of readdirSync(join(folder, "rows", "answers", day))) {
      for (const line of read(folder, "rows", "answers", day, file).trim().split("\n")) {
        keeps("row", JSON.parse(line), file);
        rows += 1;
      }
    }
  }
  assert(rows > 1000, `${rows} rows`);
});

test("reports on walks keep to their schema", () => {
  const walks = written.filter((name) => name.startsWith("walk."));
  assert(walks.length >= 2);
  const report = (...words) => JSON.parse(execFileSync(join(debug, "stepboard"), ["walk", ...words], { encoding: "utf8" }));
  for (const name of walks) keeps("walk-report", report(join(folder, name)), name);
  const right = execFileSync(join(debug, "stepboard"), ["walk", join(folder, "walk.own.json"), "--right"], { encoding: "utf8" });
  const over = JSON.parse(execFileSync(join(debug, "stepboard"), ["walk", "-"], { encoding: "utf8", input: right }));
  assert.equal(over.over, true);
  keeps("walk-report", over, "a walk that is over");
});

// The archive is tried by a reader of other people, the module `zipfile` of Python.
test("a package of items is a whole archive", () => {
  const archive = join(folder, "items.zip");
  assert.match(execFileSync("python3", ["-m", "zipfile", "-t", archive], { encoding: "utf8" }), /Done testing/);
  const listed = execFileSync("python3", ["-m", "zipfile", "-l", archive], { encoding: "utf8" });
  assert.match(listed, /imsmanifest\.xml/);
  writeFileSync(archive, readFileSync(archive).map((byte, at) => (at === 60 ? byte ^ 1 : byte)));
  assert.throws(() => {
    const said = execFileSync("python3", ["-m", "zipfile", "-t", archive], { encoding: "utf8", stdio: "pipe" });
    assert.doesNotMatch(said, /corrupted/);
  });
});

test("what breaks the shape of a hostile file is refused by its schema too", () => {
  const hostile = JSON.parse(read(folder, "hostile.json"));
  assert(hostile.length >= 60, `${hostile.length} files`);
  let shapes = 0;
  for (const { file, name, schema, shape, refused } of hostile) {
    let value;
    try {
      value = JSON.parse(new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(readFileSync(join(folder, file))));
    } catch {
      assert(refused, `${name} is no JSON and is accepted`);
      continue;
    }
    const takes = check(schema)(value);
    if (shape) {
      assert(!takes, `${name}: the schema takes it`);
      shapes += 1;
    }
    if (!refused) assert(takes, `${name}: accepted, and the schema refuses it: ${ajv.errorsText(check(schema).errors)}`);
  }
  assert(shapes >= 40, `${shapes} shapes`);
});

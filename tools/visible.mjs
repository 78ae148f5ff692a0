// Measures on which woods a slight fault can be seen and writes it into content/panels.toml: dealing then needs no pixels.
import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "./shell.mjs";

const file = join(root, "content", "panels.toml");
const answer = execFileSync("cargo", ["run", "--quiet", "--locked", "--", "picture", "--visible"], { cwd: root, encoding: "utf8" });
const seen = JSON.parse(answer);
let fault = "";
const lines = readFileSync(file, "utf8").split("\n").map((line) => {
  fault = /^fault = "(.*)"/.exec(line)?.[1] ?? fault;
  return line.startsWith("slight = ") ? `slight = [${(seen[fault] ?? []).map((look) => `"${look}"`).join(", ")}]` : line;
});
writeFileSync(file, lines.join("\n"));
for (const [name, looks] of Object.entries(seen)) console.log(`${name}: ${looks.length ? looks.join(", ") : "nowhere"}`);

// Builds the least page of the framework into target/minimal/, in the way of the app and served like it.
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "./shell.mjs";
import { compiled, optimise } from "./wasm.mjs";

export const minimal = join(root, "target", "minimal");

/** Builds it; what cargo has built already is not built again. */
export function build() {
  rmSync(minimal, { recursive: true, force: true });
  mkdirSync(minimal, { recursive: true });
  compiled(["--example", "minimal"], minimal);
  optimise(join(minimal, "app_bg.wasm"), ["-Oz", "--strip-debug", "--strip-producers"]);
  writeFileSync(join(minimal, "boot.js"), 'import start from "./app.js";\nstart({ module_or_path: new URL("./app_bg.wasm", import.meta.url) });\n');
  writeFileSync(join(minimal, "index.html"), `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>Least page</title><link rel="icon" href="data:,">
<link rel="preload" href="app_bg.wasm" as="fetch" type="application/wasm" crossorigin><link rel="modulepreload" href="app.js">
<script type="module" src="boot.js"></script></head><body></body></html>
`);
}

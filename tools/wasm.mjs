// Compiles for the browser: the flags of the app, its glue, and the optimiser.
import { homedir } from "node:os";
import { join } from "node:path";
import { root, run, tool } from "./shell.mjs";

const TARGET = "wasm32-unknown-unknown";
/** What today's browsers understand and the compiler may emit; wasm-opt refuses what it is not told of. */
const FEATURES = [
  "bulk-memory", "bulk-memory-opt", "multivalue", "mutable-globals", "nontrapping-float-to-int", "reference-types",
  "sign-ext", "simd",
];

/** Compiles a program of the package (`--bin app`, `--example minimal`) into a folder, as app.js and app_bg.wasm. */
export function compiled([kind, name], folder) {
  // Paths of this machine stay out of the file: the same source gives the same bytes everywhere.
  const cargoHome = process.env.CARGO_HOME ?? join(homedir(), ".cargo");
  const flags = [`--remap-path-prefix=${cargoHome}=cargo`, `--remap-path-prefix=${root}=stepboard`,
    // Eight pixels of a picture are lit at once.
    "-Ctarget-feature=+simd128",
    // Names of functions tell the types that they are made for, by which the program is parted.
    "-Csymbol-mangling-version=v0",
    // One short loop in place of every round written out: a sheet is hashed once.
    '--cfg=sha2_backend="soft"', '--cfg=sha2_backend_soft="compact"'];
  run("cargo", ["build", "--release", "--locked", "--target", TARGET, "--features", "web", kind, name], {
    CARGO_ENCODED_RUSTFLAGS: flags.join("\x1f"),
  });
  const built = join(process.env.CARGO_TARGET_DIR ?? join(root, "target"), TARGET, "release", kind === "--example" ? "examples" : "", `${name}.wasm`);
  run(tool("wasm-bindgen"), ["--target", "web", "--no-typescript", "--out-dir", folder, "--out-name", "app", built]);
}

/** Has the optimiser rewrite a file in place. */
export function optimise(wasm, how) {
  const optimiser = join(root, "node_modules", "binaryen", "bin", "wasm-opt");
  run("node", [optimiser, ...how, ...FEATURES.map((feature) => `--enable-${feature}`), wasm, "-o", wasm]);
}

// Running programs and naming places, shared by the tools.
import { spawnSync } from "node:child_process";
import { homedir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The top of the package. */
export const root = dirname(dirname(fileURLToPath(import.meta.url)));

/** Where the built app stands. */
export const dist = join(root, "dist");

/** Where the set-up puts what it builds and fetches. */
export const tools = process.env.STEPBOARD_TOOLS || join(homedir(), ".cache", "stepboard", "tools");

/** A program that the set-up built. */
export function tool(name) {
  return join(tools, "bin", name);
}

/** Runs a program from the top of the package, showing what it says; stops everything when it fails. */
export function run(program, args, env = {}) {
  const done = spawnSync(program, args, { cwd: root, stdio: "inherit", env: { ...process.env, ...env } });
  if (done.error) throw done.error;
  if (done.status !== 0) {
    console.error(`failed: ${program} ${args.join(" ")}`);
    process.exit(1);
  }
}

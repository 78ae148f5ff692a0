// Finds the programs that browsers and their drivers are.
import { accessSync, constants, existsSync, readdirSync } from "node:fs";
import { delimiter, join } from "node:path";

const runs = (path) => {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
};

/** The program that a variable names, or the first of those names in the path or in the folders given. */
export function program(variable, names, folders = []) {
  if (process.env[variable]) return process.env[variable];
  const places = [...folders, ...(process.env.PATH ?? "").split(delimiter)];
  const found = names.flatMap((name) => places.map((folder) => join(folder, name))).find(runs);
  if (found) return found;
  throw new Error(`none of ${names.join(", ")} found: run tools/setup.sh test, or set ${variable}`);
}

/** Folders below one: Debian keeps programs that belong to a library in one for its architecture and version. */
export const below = (folder) =>
  existsSync(folder) ? readdirSync(folder, { withFileTypes: true }).filter((one) => one.isDirectory()).map(({ name }) => join(folder, name)) : [];

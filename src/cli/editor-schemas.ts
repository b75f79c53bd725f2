import { existsSync } from "node:fs";
import { basename, dirname, join, posix } from "node:path";
import { fileURLToPath } from "node:url";
import type { TextFile } from "../base/index.js";

/** The schemas that come with the program. */
export const SHIPPED_SCHEMAS = fileURLToPath(new URL("../../schemas", import.meta.url));

const SCHEMA_LINE = /^\ufeff?# yaml-language-server: \$schema=(\S+)\s/;

/** Where an editor finds the schema of a file, as the first line says it; null where it does not. */
export function schemaNamed(text: string): string | null {
  return SCHEMA_LINE.exec(text)?.[1] ?? null;
}

/** What the first lines of files say of schemas. */
export interface SchemasNamed {
  /** The schemas that editors look for beside the files, each once, in the order of their paths. */
  readonly wanted: readonly { readonly path: string; readonly name: string }[];
  /** How many files name one of them. */
  readonly files: number;
  /** Files that name what does not come with the program. */
  readonly foreign: readonly { readonly path: string; readonly schema: string }[];
}

/** Gathers the schemas that files name by a path, to be looked for from the folder of each. */
export function schemasOf(files: readonly TextFile[]): SchemasNamed {
  const wanted = new Map<string, string>();
  const foreign: { readonly path: string; readonly schema: string }[] = [];
  let count = 0;
  for (const { path, text } of files) {
    const schema = schemaNamed(text);
    if (schema === null) continue;
    const name = basename(schema);
    if (/^[a-z]+:\/\//i.test(schema) || !existsSync(join(SHIPPED_SCHEMAS, name))) {
      foreign.push({ path, schema });
      continue;
    }
    count++;
    wanted.set(join(dirname(path), schema), name);
  }
  const sorted = [...wanted].sort(([one], [other]) => (one < other ? -1 : 1));
  return { wanted: sorted.map(([path, name]) => ({ path, name })), files: count, foreign };
}

/** Folders above a file that are looked into for schemas. */
const MOST_UP = 8;

/**
 * How a new file in a folder names its schema: as its like beside it do, where that leads to one, else by the way to the
 * nearest folder `schemas` above.
 *
 * @param folder - in which the file is to stand
 * @param named - how the files beside it name theirs
 * @returns `there` is false where no schema is found at all
 */
export function schemaFor(folder: string, named: string): { readonly schema: string; readonly there: boolean } {
  const name = basename(named);
  const ups = Array.from({ length: MOST_UP }, (_, up) => posix.join(...Array(up).fill(".."), "schemas", name));
  const schema = [named, ...ups].find((one) => existsSync(join(folder, one)));
  return { schema: schema ?? named, there: schema !== undefined };
}

import { readFileSync } from "node:fs";
import { z } from "zod";

const PACKAGE = z.object({ name: z.string(), version: z.string() });

/** Name and version of the program, as its package states them. */
export function programIdentity(): { readonly name: string; readonly version: string } {
  const text = readFileSync(new URL("../../package.json", import.meta.url), "utf8");
  const { name, version } = PACKAGE.parse(JSON.parse(text));
  return { name, version };
}

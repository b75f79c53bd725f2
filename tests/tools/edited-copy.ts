import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { projectPath } from "./shipped.js";

/** The overlay that comes with the samples. */
export const SITE_BOOK = projectPath("samples/site-book");

/** A folder of its own for files of a test. */
export function ownFolder(): string {
  return mkdtempSync(join(tmpdir(), "over-"));
}

/** A copy of the shipped rulebook, edited by hand to what it is with the sample overlay laid over it. */
export function editedCopy(): string {
  const copy = join(ownFolder(), "book");
  cpSync(projectPath("rules"), copy, { recursive: true });
  const cure = join(copy, "bond/adhesive-cure.yaml");
  const change = readFileSync(join(SITE_BOOK, "changes/adhesive-cure.yaml"), "utf8");
  const keys = change.slice(change.indexOf("  limits:"), change.indexOf("reason:")).replace(/^ {2}/gm, "");
  const text = readFileSync(cure, "utf8");
  writeFileSync(cure, text.slice(0, text.indexOf("limits:")) + keys);
  rmSync(join(copy, "cable/drip-loop.yaml"));
  for (const path of ["cable/cable-in-store.yaml", "models/example-works-unit.yaml"]) {
    cpSync(join(SITE_BOOK, path.startsWith("models") ? path : `rules/${path}`), join(copy, path));
  }
  return copy;
}

/** A copy of the sample overlay, some of its files edited (from, to), added (null, text) or left out (null). */
export function siteBookWith(
  edits: Readonly<Record<string, readonly [from: string | null, to: string] | null>>,
): string {
  const copy = join(ownFolder(), "site");
  cpSync(SITE_BOOK, copy, { recursive: true });
  for (const [path, edit] of Object.entries(edits)) {
    const file = join(copy, path);
    if (edit === null) rmSync(file);
    else if (edit[0] === null) writeFileSync(file, edit[1]);
    else {
      const text = readFileSync(file, "utf8");
      if (!text.includes(edit[0])) throw new Error(`${path} holds no "${edit[0]}"`);
      writeFileSync(
        file,
        text.replace(edit[0], () => edit[1]),
      );
    }
  }
  return copy;
}

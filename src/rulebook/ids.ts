import type { LoadedFile } from "./loaded-file.js";

/**
 * Reports ids that differ from the name of their file, and ids that two files of a kind share, also when only case
 * or a look-alike hyphen tells them apart: people, file systems and spreadsheets would mix them up.
 */
export function checkIds(loaded: readonly LoadedFile[]): void {
  const homes = new Map<string, LoadedFile>();
  for (const file of loaded) {
    const id = idOf(file.source.data);
    if (id === null || file.role === "manifest" || file.role === "words") continue;
    const mark = `${file.role}:${foldId(id)}`;
    const home = homes.get(mark);
    if (home) {
      const text = `the id "${id}" stands in ${home.file.path} already; every ${file.role} needs an id of its own`;
      file.report.atValue("/id", "duplicate-id", text);
    } else if (file.fits && id !== file.name) {
      file.report.atValue(
        "/id",
        "id-is-not-file-name",
        `the id "${id}" differs from the name of the file; rename one of them`,
      );
    }
    homes.set(mark, home ?? file);
  }
  checkWrittenNames(loaded);
}

function idOf(data: unknown): string | null {
  return typeof data === "object" && data !== null && "id" in data && typeof data.id === "string" ? data.id : null;
}

function foldId(id: string): string {
  return id
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[\u00ad\u2010-\u2015\u2212\ufe58\ufe63\uff0d]/gu, "-");
}

/** Two models that claim the same way of writing would leave a survey open to either. */
function checkWrittenNames(loaded: readonly LoadedFile[]): void {
  const homes = new Map<string, string>();
  for (const file of loaded) {
    if (file.role !== "model" || !file.fits) continue;
    const id = idOf(file.source.data) ?? "";
    for (const { written, pointer } of namesOf(file.source.data)) {
      const home = homes.get(foldId(written));
      if (home !== undefined && home !== id) {
        file.report.atValue(
          pointer,
          "duplicate-name",
          `the model "${home}" is also written "${written}"; keep it with one of them`,
        );
      }
      homes.set(foldId(written), home ?? id);
    }
  }
}

function namesOf(data: unknown): readonly { readonly written: string; readonly pointer: string }[] {
  if (typeof data !== "object" || data === null) return [];
  const written = "alsoWritten" in data && Array.isArray(data.alsoWritten) ? data.alsoWritten : [];
  const names = written.map((name, index) => ({ written: String(name), pointer: `/alsoWritten/${index}` }));
  return [{ written: idOf(data) ?? "", pointer: "/id" }, ...names];
}

import { foldText, showText } from "../../base/index.js";
import type { LoadedFile } from "./loaded-file.js";
import { below } from "./source.js";

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

/** The id that a file states, or null. */
export function idOf(data: unknown): string | null {
  return typeof data === "object" && data !== null && "id" in data && typeof data.id === "string" ? data.id : null;
}

const HYPHENS = /[\u00ad\u2010-\u2015\u2212\ufe58\ufe63\uff0d]/gu;

/** An id without what people and file systems do not tell apart. */
export function foldId(id: string): string {
  return id.normalize("NFKC").toLowerCase().replace(HYPHENS, "-");
}

/** One way in which a survey may write a model. */
interface WrittenName {
  readonly kind: "id" | "title" | "other";
  readonly written: string;
  readonly pointer: string;
}

interface NameHome extends WrittenName {
  readonly file: LoadedFile;
}

/** A survey finds a model by its id, its title and its further names, so no two models may share any of them. */
function checkWrittenNames(loaded: readonly LoadedFile[]): void {
  const homes = new Map<string, NameHome>();
  for (const file of loaded) {
    if (file.role !== "model" || !file.fits) continue;
    for (const name of namesOf(file.source.data)) {
      const mark = foldText(name.written.replace(HYPHENS, "-"));
      const home = homes.get(mark);
      if (home) reportName(name, home, file);
      else homes.set(mark, { ...name, file });
    }
  }
}

function reportName(name: WrittenName, home: NameHome, file: LoadedFile): void {
  const shown = showText(name.written);
  if (home.file !== file) {
    // Ids that are alike have been reported already.
    if (name.kind === "id" && home.kind === "id") return;
    const text = `the model "${idOf(home.file.source.data)}" is found by "${shown}" already; keep it with one of them`;
    file.report.atValue(name.pointer, "duplicate-name", text);
  } else if (name.kind === "other") {
    const what = home.kind === "other" ? `"${showText(home.written)}"` : `its ${home.kind}`;
    const text = `the model is found by ${what} already, which reads the same as "${shown}"; leave it out here`;
    file.report.atValue(name.pointer, "said-twice", text);
  }
}

function namesOf(data: unknown): readonly WrittenName[] {
  if (typeof data !== "object" || data === null) return [];
  const title = "title" in data ? String(data.title) : "";
  const others = "alsoWritten" in data && Array.isArray(data.alsoWritten) ? data.alsoWritten : [];
  return [
    { kind: "id", written: idOf(data) ?? "", pointer: "/id" },
    { kind: "title", written: title, pointer: "/title" },
    ...others.map((name, index) => ({
      kind: "other" as const,
      written: String(name),
      pointer: below("/alsoWritten", index),
    })),
  ];
}

import type { TextFile } from "../base/index.js";
import { loadRulebook, type OverlayFiles, type Rulebook, type RulebookLoading } from "../rulebook/index.js";

/** The texts of a rulebook folder, and of what is laid over it. */
interface BookTexts extends OverlayFiles {
  readonly over: readonly OverlayFiles[];
}

interface Remembered {
  readonly texts: BookTexts;
  readonly rulebook: Rulebook;
}

/** A comparison of two rulebooks needs as many. */
const MOST = 2;

let remembered: readonly Remembered[] = [];

/**
 * Loads a rulebook, or gives back the one that the very same texts gave before: a program that screens survey after
 * survey in one process checks its rules once. A loaded rulebook is never changed, so that it can be shared.
 */
export function loadRemembered({ root, files, over }: BookTexts): RulebookLoading {
  const texts = { root, files, over };
  const known = remembered.find((one) => isSame(one.texts, texts));
  if (known) return { ok: true, rulebook: known.rulebook };
  const loading = loadRulebook(files, { root, over });
  if (loading.ok) remembered = [{ texts, rulebook: loading.rulebook }, ...remembered].slice(0, MOST);
  return loading;
}

function isSame(one: BookTexts, other: BookTexts): boolean {
  return (
    one.over.length === other.over.length &&
    hasSameFiles(one, other) &&
    one.over.every((overlay, index) => hasSameFiles(overlay, other.over[index]))
  );
}

function hasSameFiles(one: OverlayFiles, other: OverlayFiles | undefined): boolean {
  const isSameFile = ({ path, text }: TextFile, index: number): boolean =>
    path === other?.files[index]?.path && text === other.files[index].text;
  return one.root === other?.root && one.files.length === other.files.length && one.files.every(isSameFile);
}

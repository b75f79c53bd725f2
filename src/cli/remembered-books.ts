import type { TextFile } from "../base/index.js";
import { loadRulebook, type Rulebook, type RulebookLoading } from "../rulebook/index.js";

interface Remembered {
  readonly root: string;
  readonly files: readonly TextFile[];
  readonly rulebook: Rulebook;
}

/** A comparison of two rulebooks needs as many. */
const MOST = 2;

let remembered: readonly Remembered[] = [];

/**
 * Loads a rulebook, or gives back the one that the very same texts gave before: a program that screens survey after
 * survey in one process checks its rules once. A loaded rulebook is never changed, so that it can be shared.
 */
export function loadRemembered(files: readonly TextFile[], root: string): RulebookLoading {
  const known = remembered.find((one) => one.root === root && isSame(one.files, files));
  if (known) return { ok: true, rulebook: known.rulebook };
  const loading = loadRulebook(files, { root });
  if (loading.ok) remembered = [{ root, files, rulebook: loading.rulebook }, ...remembered].slice(0, MOST);
  return loading;
}

function isSame(one: readonly TextFile[], other: readonly TextFile[]): boolean {
  return (
    one.length === other.length &&
    one.every(({ path, text }, index) => path === other[index]?.path && text === other[index].text)
  );
}

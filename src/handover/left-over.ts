import type { PlainDay } from "../base/index.js";
import { fileNameOf } from "./file-name.js";
import type { Target } from "./mapping.js";

/**
 * Parts of an earlier, longer export that stand beside those to be written: they would be loaded again.
 *
 * @param there - names of the files in the folder
 * @param written - names of the files that are to be written
 */
export function leftOverParts(
  targets: readonly Target[],
  asOf: PlainDay,
  there: readonly string[],
  written: readonly string[],
): readonly string[] {
  const fresh = new Set(written);
  const parted = targets.filter(({ rowLimit }) => rowLimit !== null);
  return there.filter((name) => {
    if (fresh.has(name)) return false;
    return parted.some((target) => {
      const [, before = "", after = ""] = /^(.*)\{part\}(.*)$/.exec(target.file) ?? [];
      const start = fileNameOf({ ...target, file: before }, 1, asOf);
      const end = fileNameOf({ ...target, file: after }, 1, asOf);
      const part =
        name.startsWith(start) && name.endsWith(end) ? name.slice(start.length, name.length - end.length) : "";
      return /^\d+$/.test(part);
    });
  });
}

import type { FileFinding } from "../book/rulebook.js";
import type { LoadedFile } from "../text/loaded-file.js";
import type { RawChange } from "../text/raw.js";
import { below, Report, type Source, type Spots } from "../text/source.js";

/** A change file whose form is right. */
export interface ChangeFile {
  readonly raw: RawChange;
  readonly source: Source;
  readonly report: Report;
}

/**
 * A file with whole keys replaced, taken away, or with cases added. Each value keeps the place in the file that says
 * it. What is found wrong with an inherited value is reported at the change, since the file alone was right.
 *
 * @param target - as it stands below the overlay
 * @param findings - the list that reports about the merged file add to
 */
export function mergedFile(
  target: LoadedFile,
  { raw, source, report }: ChangeFile,
  findings: FileFinding[],
): LoadedFile {
  const data = new Map(Object.entries(target.source.data as object));
  const spots = new Map(target.source.spots);
  for (const [key, value] of Object.entries(raw.replaces ?? {})) {
    takeAway(below("", key), spots);
    if (value === null) data.delete(key);
    else {
      data.set(key, value);
      takeOver(source, below("/replaces", key), below("", key), spots);
    }
  }
  const added = raw.addsCases ?? [];
  const inherited: readonly unknown[] = [data.get("cases") ?? []].flat();
  for (const [index, one] of added.entries()) {
    const place = inherited.length + index;
    data.set("cases", [...inherited, ...added.slice(0, index), one]);
    takeOver(source, below("/addsCases", index), below("/cases", place), spots);
  }
  const merged: Source = {
    path: target.source.path,
    data: Object.fromEntries(data),
    spots,
    changedAt: report.placeOfKey("/changes"),
  };
  return { ...target, source: merged, report: new Report(merged, findings) };
}

function isAtOrBelow(pointer: string, around: string): boolean {
  return pointer === around || pointer.startsWith(`${around}/`);
}

function takeAway(around: string, spots: Map<string, Spots>): void {
  for (const pointer of [...spots.keys()]) if (isAtOrBelow(pointer, around)) spots.delete(pointer);
}

function takeOver(source: Source, from: string, to: string, spots: Map<string, Spots>): void {
  for (const [pointer, spot] of source.spots) {
    if (isAtOrBelow(pointer, from)) spots.set(`${to}${pointer.slice(from.length)}`, { ...spot, file: source.path });
  }
}

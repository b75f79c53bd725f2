import { didYouMean, type PlainDay } from "../../base/index.js";
import type { Basis, Citation } from "../book/rule.js";
import type { RawCitations, RawDated } from "../text/raw.js";
import { below, type Report } from "../text/source.js";

/** Whether something with these dates is in force on a day; `until` is the first day that it is not. */
export function inForce(dated: { readonly from: PlainDay; readonly until: PlainDay | null }, day: PlainDay): boolean {
  return dated.from <= day && (dated.until === null || day < dated.until);
}

/** Reports entries that end before they begin, overlap, leave a gap, or stand out of order. */
export function checkDates(entries: readonly RawDated[], pointer: string, report: Report): void {
  let before: RawDated | null = null;
  for (const [index, entry] of entries.entries()) {
    const at = below(pointer, index);
    if (entry.until !== null && entry.until <= entry.from) {
      report.atValue(
        below(at, "until"),
        "ends-before-start",
        `until ${entry.until} is not after from ${entry.from}; it is the first day not in force`,
      );
    } else if (before !== null) {
      reportSeam(before, entry, below(at, "from"), report);
    }
    before = entry;
  }
}

function reportSeam(before: RawDated, entry: RawDated, at: string, report: Report): void {
  if (entry.from <= before.from) {
    report.atValue(
      at,
      "out-of-order",
      `from ${entry.from} does not come after the entry before, from ${before.from}; put them in order`,
    );
  } else if (before.until === null) {
    report.atValue(at, "overlap", `the entry before has no end; set its until to ${entry.from}`);
  } else if (entry.from < before.until) {
    report.atValue(at, "overlap", `the entry before holds until ${before.until}; let this one begin then`);
  } else if (entry.from > before.until) {
    report.atValue(
      at,
      "gap",
      `nothing holds from ${before.until} to ${entry.from}; let one entry begin where the other ends`,
    );
  }
}

/** Reports an entry that is to be reviewed before it holds. */
export function checkReview(
  { from, reviewBy = null }: Pick<RawDated, "from"> & { readonly reviewBy?: string | null },
  pointer: string,
  report: Report,
): void {
  if (reviewBy === null || reviewBy > from) return;
  const text = `reviewBy ${reviewBy} is not after from ${from}; set it to a later day`;
  report.atValue(below(pointer, "reviewBy"), "review-before-start", text);
}

/** Citations by id, in the order of the file. */
export function readCitations(raw: RawCitations): ReadonlyMap<string, Citation> {
  return new Map(Object.entries(raw).map(([id, citation]) => [id, { id, ...citation }]));
}

/**
 * Reports cites of citations that are not there, and citations that nothing cites.
 *
 * @param uses - every list of cites with the pointer to it
 */
export function checkCites(
  raw: RawCitations,
  uses: readonly { readonly pointer: string; readonly cites: readonly string[] }[],
  report: Report,
): void {
  const known = Object.keys(raw);
  const used = new Set<string>();
  for (const { pointer, cites } of uses) {
    for (const [index, id] of cites.entries()) {
      used.add(id);
      if (known.includes(id)) continue;
      const near = didYouMean(id, known) || "; add it to citations";
      report.atValue(below(pointer, index), "unknown-citation", `there is no citation "${id}"${near}`);
      for (const meant of known) if (near.includes(`"${meant}"`)) used.add(meant);
    }
  }
  for (const id of known) {
    if (used.has(id)) continue;
    report.atKey(below("/citations", id), "unused-citation", `nothing cites "${id}"; cite it or leave it out`);
  }
  checkSources(raw, report);
  for (const [id, citation] of Object.entries(raw)) {
    if (citation.clause === undefined || citation.readOn !== undefined) continue;
    const text = "a clause is named only by someone who has read it; add readOn, or leave the clause out";
    report.atKey(below("/citations", id, "clause"), "clause-not-read", text);
  }
}

/** What rests on something that others can look up must say what that is. */
const WITH_TITLE: Readonly<Partial<Record<Basis, string>>> = {
  standard: "the standard",
  handbook: "the book",
  "data-set": "the data set",
  "maker-data": "the data sheet",
};

function checkSources(raw: RawCitations, report: Report): void {
  for (const [id, { basis, source }] of Object.entries(raw)) {
    const what = WITH_TITLE[basis];
    const at = below("/citations", id);
    if (source !== undefined && (source.match(/\p{L}/gu)?.length ?? 0) < 3) {
      const text = "the source is no title that anyone could look up; write the title, or leave the source out";
      report.atValue(below(at, "source"), "no-title", text);
    } else if (what !== undefined && source === undefined) {
      const text = `the basis "${basis}" needs the title of ${what}; add source, or name a basis without one`;
      report.atValue(below(at, "basis"), "missing-source", text);
    }
  }
}

import type { RunCompared, RunDifferences } from "../../comparing/index.js";
import { paragraph } from "../terminal/layout.js";
import { bookInWords } from "../wording/overlays.js";

/** Digits of a digest that are shown. */
const SHOWN = 12;

/** One side of a comparison: its rulebook, and the stored result that stands for it. */
export function sideLines(first: string, { rulebook, stored, digest, set, asOf }: RunCompared): readonly string[] {
  const book = `${bookInWords(rulebook)} (digest ${rulebook.digest.slice(0, SHOWN)})`;
  if (stored === null) return paragraph(book, first);
  const { file, digest: ofFile } = stored;
  return [
    ...paragraph(`${file} (digest ${ofFile.slice(0, SHOWN)}), run ${digest.slice(0, SHOWN)}`, first),
    ...paragraph(`by ${book}, set ${set}, limits as of ${asOf}; its reasons are the texts stored in it`, "        "),
  ];
}

/** Where a stored result is compared: what the two sides rest on that is not the same. */
export function runLines({
  before,
  after,
  differences,
}: {
  readonly before: RunCompared;
  readonly after: RunCompared;
  readonly differences: RunDifferences;
}): readonly string[] {
  const { rulebook, asOf, set, site, surveysOnlyBefore, surveysOnlyAfter } = differences;
  const lines = [
    rulebook ? "the rulebooks are not the same" : "both rest on the same rulebook",
    ...(set ? [`set ${before.set} becomes ${after.set}; a rule that one of them lacks is not listed there`] : []),
    ...(asOf ? [`limits as of ${before.asOf} become those as of ${after.asOf}`] : []),
    ...(site ? [`site ${named(before.site)} becomes ${named(after.site)}, which is part of every point id`] : []),
    ...(surveysOnlyBefore.length > 0 ? [`only before, byte for byte: ${surveysOnlyBefore.join(", ")}`] : []),
    ...(surveysOnlyAfter.length > 0 ? [`only after, byte for byte: ${surveysOnlyAfter.join(", ")}`] : []),
  ];
  return ["What the results rest on", ...lines.flatMap((line) => paragraph(line, "  ")), ""];
}

function named(site: string | null): string {
  return site === null ? "without a name" : `"${site}"`;
}

/** Separators that survey files use, the surer ones first: commas also stand in numbers and in sentences. */
const CANDIDATES = ["\t", ";", "|", ","] as const;
const SAMPLE_RECORDS = 400;
const SAMPLE_CHARACTERS = 400_000;
const QUOTE = 34;
const LINE_FEED = 10;
const CARRIAGE_RETURN = 13;

/** The separator of a text, and how it was found. */
export interface FoundSeparator {
  readonly separator: string;
  readonly by: "named in the file" | "evidence" | "none found";
  /** Where the records begin: behind a first line that only names the separator. */
  readonly from: number;
}

/**
 * Finds the separator: a first line "sep=;" names it, else the candidate wins that cuts the most records into the
 * same number of columns. Title lines above the heading and short rows weigh against all candidates alike.
 */
export function findSeparator(text: string): FoundSeparator {
  const named = /^"?sep=([^"\r\n])"?(?:\r\n|\r|\n|$)/i.exec(text);
  if (named) return { separator: named[1] ?? ",", by: "named in the file", from: named[0].length };
  const judged = CANDIDATES.map((separator) => ({ separator, ...judge(columnCounts(text, separator)) }));
  const best = judged.reduce((a, b) => (b.weight > a.weight ? b : a));
  const comma = judged.find(({ separator }) => separator === ",");
  if (best.weight === 0 || !comma) return { separator: ",", by: "none found", from: 0 };
  // Decimal commas cut a table as regularly as a separator does, but not from its heading on.
  const rival = judged.find(({ separator, share, first }) => separator !== "," && share >= 0.6 && first <= comma.first);
  const chosen = best.separator === "," && rival && comma.share < 2 * rival.share ? rival : best;
  return { separator: chosen.separator, by: "evidence", from: 0 };
}

interface Evidence {
  /** Share of the records, from the first of them on, that have the usual number of columns. */
  readonly share: number;
  readonly first: number;
  readonly weight: number;
}

function judge(counts: readonly number[]): Evidence {
  const tally = new Map<number, number>();
  for (const count of counts) if (count > 1) tally.set(count, (tally.get(count) ?? 0) + 1);
  let usual = 0;
  for (const [count, times] of tally) {
    const before = tally.get(usual) ?? 0;
    if (times > before || (times === before && count > usual)) usual = count;
  }
  if (usual === 0) return { share: 0, first: Number.POSITIVE_INFINITY, weight: 0 };
  const first = counts.indexOf(usual);
  const share = (tally.get(usual) ?? 0) / (counts.length - first);
  const covered = (tally.get(usual) ?? 0) / counts.length;
  return { share, first, weight: covered * (1 - 1 / usual) };
}

/** Columns of each record that is not blank, as far as the sample goes; quotes hide separators and line ends. */
function columnCounts(text: string, separator: string): readonly number[] {
  const code = separator.charCodeAt(0);
  const end = Math.min(text.length, SAMPLE_CHARACTERS);
  const counts: number[] = [];
  let columns = 1;
  let filled = false;
  let inQuotes = false;
  let atFieldStart = true;
  const finishRecord = (): void => {
    if (filled) counts.push(columns);
    columns = 1;
    filled = false;
    atFieldStart = true;
  };
  for (let i = 0; i < end && counts.length < SAMPLE_RECORDS; i++) {
    const c = text.charCodeAt(i);
    if (inQuotes) {
      if (c !== QUOTE) continue;
      if (text.charCodeAt(i + 1) === QUOTE) i++;
      else inQuotes = false;
    } else if (c === LINE_FEED || c === CARRIAGE_RETURN) finishRecord();
    else if (c === code) {
      columns += 1;
      atFieldStart = true;
    } else {
      inQuotes = c === QUOTE && atFieldStart;
      atFieldStart = false;
      filled ||= c !== 32;
    }
  }
  if (end === text.length) finishRecord();
  return counts;
}

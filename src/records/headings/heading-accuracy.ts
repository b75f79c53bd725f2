import { dimensionsSpelled, unitSpelled } from "../../base/index.js";
import {
  accuracyOfWay,
  type FactDefinition,
  type MeasuringWay,
  type StatedAccuracy,
  statedAccuracy,
} from "../../facts/index.js";
import { type NumberStyle, readDigits } from "../cells/number-style.js";
import type { Vocabulary } from "../words/vocabulary.js";

/** An accuracy as a heading writes it. */
interface Written {
  readonly digits: string;
  /** Empty where none stands behind the number. */
  readonly unit: string;
}

/** A heading without what it says of accuracy, and what that is. */
export interface OpenedHeading {
  readonly rest: string;
  readonly written: Written | null;
  /** Id of the way of measuring that it names; null where it names none. */
  readonly way: string | null;
}

const PLUS_MINUS = /(?:±|\+\s?\/\s?[-−–]|\+[-−–])\s*(\d[\d.,]*)\s*([^\s()[\]{},;:|]*)/u;
/** Parts of a heading that are not words: blanks, brackets, commas. */
const SEPARATORS = /([\s()[\]{},;:|]+)/u;
/** Words in front of a way of measuring (mit Messschieber, by tape, au pied à coulisse). */
const BY: ReadonlySet<string> = new Set(
  "with w by using via per mit per mittels durch con por mediante avec au par à a".split(" "),
);
/** Most words of a listed way. */
const LONGEST_WAY = 5;

/** Takes off a heading what it says of accuracy: ± and a number, or a way of measuring. */
export function openHeading(text: string, vocabulary: Vocabulary): OpenedHeading {
  const plusMinus = withoutPlusMinus(text);
  const way = withoutWay(plusMinus.rest, vocabulary);
  return { rest: way.rest, written: plusMinus.written, way: way.way };
}

/** A ± behind a number speaks of that number: it is a demand, and says nothing of how the column was measured. */
export function withoutPlusMinus(text: string): Pick<OpenedHeading, "rest" | "written"> {
  const found = /[±+]/.test(text) ? PLUS_MINUS.exec(text) : null;
  const before = found ? text.slice(0, found.index) : "";
  if (!found || endsInNumber(before)) return { rest: text, written: null };
  const [all, digits = "", behind = ""] = found;
  const isUnit = behind === "%" || dimensionsSpelled(behind).length > 0;
  const after = text.slice(found.index + all.length - (isUnit ? 0 : behind.length));
  return {
    rest: tidied(`${before} ${after}`),
    written: { digits: digits.replace(/[.,]$/, ""), unit: isUnit ? behind : "" },
  };
}

/** "15" and "24 V" in front of a ±. */
function endsInNumber(text: string): boolean {
  const unit = /\d[.,]?\s*([^\s\d.,()[\]{}]{0,8})\s*$/u.exec(text.slice(-40))?.[1];
  return unit !== undefined && (unit === "" || dimensionsSpelled(unit).length > 0);
}

function withoutWay(text: string, vocabulary: Vocabulary): Pick<OpenedHeading, "rest" | "way"> {
  if (!vocabulary.mentionsWay(text)) return { rest: text, way: null };
  const parts = text.split(SEPARATORS);
  for (let length = LONGEST_WAY; length >= 1; length--) {
    for (let at = 0; at + 2 * (length - 1) < parts.length; at += 2) {
      const end = at + 2 * length - 1;
      // A phrase does not reach over a comma or a bracket.
      const words = parts.slice(at, end);
      if (words.some((part, i) => i % 2 === 1 && part.trim() !== "")) continue;
      const way = vocabulary.wayNamed(words.join(""));
      if (!way) continue;
      const from =
        at >= 2 && BY.has((parts[at - 2] ?? "").toLowerCase()) && (parts[at - 1] ?? "").trim() === "" ? at - 2 : at;
      const rest = tidied([...parts.slice(0, from), ...parts.slice(end)].join(""));
      // A heading that is nothing but a way says nothing of what was measured.
      if (rest !== "") return { rest, way: way.id };
    }
  }
  return { rest: text, way: null };
}

/** The way of measuring that a text names, and nothing else with it (Messschieber, by tape measure). */
export function wayAlone(text: string, vocabulary: Vocabulary): MeasuringWay | undefined {
  const [first = "", ...rest] = text.trim().split(/\s+/);
  return vocabulary.wayNamed(text) ?? (BY.has(first.toLowerCase()) ? vocabulary.wayNamed(rest.join(" ")) : undefined);
}

/** Brackets that hold nothing any more, and commas that part nothing, taken out. */
function tidied(text: string): string {
  return text
    .replace(/\s+/g, " ")
    .replace(/[,;:|]\s*(?=[)\]}]|$)/g, "")
    .replace(/([([{])\s*[,;:|]\s*/g, "$1")
    .replace(/[([{]\s*[)\]}]/g, "")
    .replace(/[,;:|]\s*(?=[,;:|])/g, "")
    .replace(/\s+/g, " ")
    .replace(/\s+(?=[)\]}])/g, "")
    .trim();
}

/** How accurate the numbers of a column are, with what says so; `stated` is null where that cannot be made out. */
export type ColumnAccuracy =
  | { readonly stated: StatedAccuracy; readonly why: string }
  | { readonly stated: null; readonly why: string };

/** What the accuracy of a heading is read with. */
export interface AccuracyContext {
  readonly field: FactDefinition;
  /** Id of the unit of bare numbers; null where it is not settled. */
  readonly unit: string | null;
  readonly style: NumberStyle;
  readonly vocabulary: Vocabulary;
}

/** How accurate a heading says that the numbers below it are; null where it says nothing of it. */
export function accuracyOfHeading(
  { written, way }: Pick<OpenedHeading, "written" | "way">,
  context: AccuracyContext,
): ColumnAccuracy | null {
  if (written !== null) return accuracyWritten(written, context);
  const named = way === null ? undefined : context.vocabulary.ways.get(way);
  if (!named) return null;
  const accuracy = accuracyOfWay(named, context.field);
  if (accuracy === "cannot-measure") return null;
  if (accuracy !== "not-in-force") return { stated: accuracy, why: "way of measuring in the heading" };
  return { stated: null, why: `the heading names "${named.title}", of which no accuracy is in force` };
}

function accuracyWritten({ digits, unit }: Written, { field, unit: bare, style }: AccuracyContext): ColumnAccuracy {
  const said = `the heading states an accuracy of ± ${digits}${unit === "" ? "" : ` ${unit}`}`;
  const open = (why: string): ColumnAccuracy => ({ stated: null, why: `${said}, ${why}` });
  const number = readDigits(digits, style);
  if (typeof number !== "number") return open("which can be read in two ways; write it into a column file");
  const why = "stated in the heading";
  if (unit === "%" && field.dimension !== "ratio") {
    if (field.dimension === "temperature") return open("and a temperature has no percent");
    return { stated: statedAccuracy(number, null, field), why };
  }
  if (unit === "") {
    if (bare === null) return open("and no unit is settled for it; write it into a column file");
    return { stated: statedAccuracy(number, bare, field), why };
  }
  const found = field.dimension ? unitSpelled(unit, field.dimension) : null;
  if (!found || found.leads) return open(`which is none of ${field.name}; write it into a column file`);
  return { stated: statedAccuracy(number, found.id, field), why };
}

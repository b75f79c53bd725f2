import { foldText, type Interval, showText, single } from "../../base/index.js";
import { accuracyOfWay, factOf, type Said, withAccuracy } from "../../facts/index.js";
import type { CellValue } from "../../workbook/index.js";
import { noChoice, type PhraseReading, readPhrase } from "../cells/cell-choice.js";
import type { CellReading, CellTrouble, NumberRead } from "../cells/cell-reading.js";
import { trouble } from "../cells/cell-reading.js";
import { shownText } from "../cells/grid.js";
import type { ProblemCode } from "../cells/problems.js";
import { type CellContext, isEmptyCell, readCell, readWholeCell } from "../cells/read-cell.js";
import type { ColumnPlan } from "../headings/columns.js";
import { type ColumnAccuracy, wayAlone } from "../headings/heading-accuracy.js";
import { saysCoating, saysPaint, saysShaft } from "../headings/languages.js";
import { driveBesideSpeed } from "./drive-beside-speed.js";
import { type Entry, knownAs, reasonOf, unknownAs } from "./entries.js";
import { placeMentioned } from "./place-mention.js";

/** Everything that one cell says: facts, what it leaves open, and what is to be reported. */
export interface CellSaid {
  readonly entries: readonly Entry[];
  /** Facts that the understood phrase of the cell does not speak of. */
  readonly unmentioned: readonly string[];
  readonly troubles: readonly (CellTrouble & { readonly fact: string })[];
  /** Things taken for granted or left out, said once per column. */
  readonly remarks: readonly CellRemark[];
  /** A speed in Hz under a heading that does not say whose. */
  readonly hertz: boolean;
}

/** Something that is said once per column, however many cells give cause for it. */
export interface CellRemark {
  readonly code: ProblemCode;
  readonly fact: string;
  readonly text: string;
}

/** Reads a cell as its column's field, and as the other fields that such columns speak of; alike in every row. */
export function readColumnCell(plan: ColumnPlan, value: CellValue | undefined, context: CellContext): CellSaid {
  if (value === undefined || isEmptyCell(value)) {
    return said([{ fact: context.field.id, said: unknownAs("missing"), empty: true, mention: false }]);
  }
  const read = readFilledCell(plan, value, context);
  if (value.kind !== "text") return read;
  const places = placeMentioned(context.field.id, value.text, context.vocabulary);
  return places.length === 0 ? read : { ...read, entries: [...read.entries, ...places] };
}

function readFilledCell(plan: ColumnPlan, value: CellValue, context: CellContext): CellSaid {
  const own = plan.ownWords.size === 0 ? undefined : plan.ownWords.get(foldText(shownText(value)));
  if (own !== undefined) return wordSaid({ ok: true, kind: "word", value: own, remarks: [] }, context.field.id);
  const coating = coatingAsked(plan, value, context);
  if (coating !== null) {
    return said([{ fact: context.field.id, said: knownAs(coating), empty: false, mention: false }]);
  }
  const voltage = voltageBesideKind(plan, value, context);
  if (voltage) return voltage;
  const phrase = sharedPhrase(plan, value, context);
  if (phrase) return phraseSaid(phrase, shownText(value), plan, context);
  const reading = readCell(value, context);
  if (!reading.ok) return failed(context.field.id, reading);
  return reading.kind === "number" ? numberSaid(reading, plan, context) : wordSaid(reading, context.field.id);
}

/** The cell as a phrase that may speak of several fields; null where the column, or what stands in it, is none. */
function sharedPhrase(plan: ColumnPlan, value: CellValue, context: CellContext): PhraseReading | null {
  const { field, vocabulary } = context;
  if (plan.also.length + plan.beside.length === 0 || field.kind !== "choice" || value.kind !== "text") return null;
  if (readWholeCell(value, context) !== null) return null;
  return readPhrase(value.text, [field, ...plan.also], vocabulary, plan.beside);
}

/** "Painted?" or "Coating" yes or no, "Coating" none. */
function coatingAsked(plan: ColumnPlan, value: CellValue, { field, vocabulary }: CellContext): string | null {
  if (field.id !== "surface_finish" || value.kind !== "text" || !saysCoating(plan.heading)) return null;
  if (vocabulary.isNo(value.text)) return "absent";
  if (!vocabulary.isYes(value.text)) return null;
  return saysPaint(plan.heading) ? "painted" : "coated";
}

/** "24 V DC" in a column for the kind of supply, where no column asks for the voltage. */
function voltageBesideKind(plan: ColumnPlan, value: CellValue, context: CellContext): CellSaid | null {
  const voltage = plan.also.find((field) => field.id === "supply_voltage");
  if (context.field.id !== "supply_kind" || !voltage || value.kind !== "text" || !/\d/.test(value.text)) return null;
  const whole = { ...context, field: voltage };
  const reading = readCell(value, whole);
  return reading.ok && reading.kind === "number" && reading.supply !== null ? numberSaid(reading, plan, whole) : null;
}

function said(entries: readonly Entry[], more: Partial<CellSaid> = {}): CellSaid {
  return { entries, unmentioned: [], troubles: [], remarks: [], hertz: false, ...more };
}

function failed(fact: string, reading: CellTrouble): CellSaid {
  const entry: Entry = { fact, said: unknownAs(reasonOf(reading)), empty: false, mention: false };
  return said([entry], { troubles: reading.code === "missing" ? [] : [{ ...reading, fact }] });
}

function wordSaid(reading: Extract<CellReading, { kind: "word" }>, fact: string): CellSaid {
  return said([{ fact, said: knownAs(reading.value), empty: false, mention: false }], {
    remarks: reading.remarks.map((remark) => dropped(fact, remark)),
  });
}

function dropped(fact: string, remark: string): CellRemark {
  return {
    code: "dropped-remark",
    fact,
    text: `"${showText(remark)}" was not needed to read the value and is left out`,
  };
}

function numberSaid(reading: NumberRead, plan: ColumnPlan, context: CellContext): CellSaid {
  const { field } = context;
  const way = reading.accuracy === null ? wayInRemarks(reading.remarks, context) : null;
  const accuracy = reading.accuracy !== null ? null : (way?.accuracy ?? plan.accuracy ?? null);
  if (accuracy !== null && accuracy.stated === null) return failed(field.id, trouble("doubtful", accuracy.why));
  const remarks: CellRemark[] = reading.remarks
    .filter((remark) => remark !== way?.remark)
    .map((remark) => dropped(field.id, remark));
  let assumed: string | undefined;
  if (reading.unitFrom === "field" && field.kind === "quantity") {
    assumed = `no unit stated, taken as ${field.unit}`;
    remarks.push({
      code: "assumed",
      fact: field.id,
      text: `neither heading nor cell states a unit; taken as ${field.unit}`,
    });
  }
  if (reading.hertz) {
    assumed = "Hz taken as turns of the shaft per second";
    remarks.push({ code: "assumed", fact: field.id, text: `${assumed}; write r/min if it is the mains or drive side` });
  }
  const knownNumber = (value: Interval, fact: string): Said => {
    const said = {
      value,
      ...(assumed === undefined ? {} : { assumed }),
      ...(reading.accuracy === null ? {} : { accuracy: reading.accuracy }),
    };
    const { value: kept, ...more } = accuracy
      ? withAccuracy({ known: true, ...said }, accuracy.stated, factOf(fact))
      : said;
    return knownAs(kept, more);
  };
  const hertz = reading.hertz && !saysShaft(plan.heading);
  if (reading.range) {
    const low = knownNumber(single(reading.interval.lowest), "lowest_speed");
    const high = knownNumber(single(reading.interval.highest), "highest_speed");
    return said(
      [
        { fact: "lowest_speed", said: low, empty: false, mention: false },
        { fact: "highest_speed", said: high, empty: false, mention: false },
        ...driveBesideSpeed(reading.remarks, context),
      ],
      { remarks, hertz },
    );
  }
  const { unit, rounding } = reading;
  const written = unit === null ? {} : { written: { unit, rounding } };
  const entries: Entry[] = [
    { fact: field.id, said: knownNumber(reading.interval, field.id), empty: false, mention: false, ...written },
  ];
  if (field.id === "supply_voltage" && reading.supply !== null) {
    entries.push({ fact: "supply_kind", said: knownAs(reading.supply), empty: false, mention: true });
  }
  entries.push(...driveBesideSpeed(reading.remarks, context));
  return said(entries, { remarks, hertz });
}

/** A way of measuring that stands beside the number, and nothing else with it (14,9 (Messschieber)). */
function wayInRemarks(
  remarks: readonly string[],
  { field, vocabulary }: CellContext,
): { readonly remark: string; readonly accuracy: ColumnAccuracy } | null {
  for (const remark of remarks) {
    const named = wayAlone(remark, vocabulary);
    if (!named) continue;
    const accuracy = accuracyOfWay(named, field);
    if (accuracy === "cannot-measure") continue;
    const why = `"${showText(remark)}" is a way of measuring of which no accuracy is in force`;
    return { remark, accuracy: accuracy === "not-in-force" ? { stated: null, why } : { stated: accuracy, why: "" } };
  }
  return null;
}

function phraseSaid(
  { byFact: readings }: PhraseReading,
  text: string,
  plan: ColumnPlan,
  context: CellContext,
): CellSaid {
  const spoken = [...readings].filter(([, reading]) => reading !== null);
  if (spoken.length === 0) {
    const nothing = noChoice(text, context.field, context.vocabulary);
    const first = failed(context.field.id, nothing);
    const others = isSeat(context.field.id) ? plan.also : [];
    const more = others.map(
      (field): Entry => ({
        fact: field.id,
        said: unknownAs(reasonOf(nothing)),
        empty: false,
        mention: true,
        weak: true,
      }),
    );
    return { ...first, entries: [...first.entries, ...more] };
  }
  const entries: Entry[] = [];
  const unmentioned: string[] = [];
  const troubles: CellSaid["troubles"][number][] = [];
  const remarks = new Map<string, CellRemark>();
  for (const [fact, reading] of readings) {
    const mention = fact !== context.field.id;
    if (reading === null) {
      if (isSeat(fact)) unmentioned.push(fact);
      else if (!mention) entries.push({ fact, said: unknownAs("missing"), empty: false, mention });
    } else if (reading.ok && reading.kind === "word") {
      entries.push({ fact, said: knownAs(reading.value), empty: false, mention });
      for (const remark of reading.remarks) remarks.set(remark, dropped(context.field.id, remark));
    } else if (!reading.ok) {
      entries.push({ fact, said: unknownAs(reasonOf(reading)), empty: false, mention });
      troubles.push({ ...reading, fact });
    }
  }
  return said(entries, { unmentioned, troubles, remarks: [...remarks.values()] });
}

/** The parts of a seat are taken as absent where a phrase about the seat does not mention them. */
export function isSeat(fact: string): boolean {
  return factOf(fact).choices?.includes("absent") ?? false;
}

/** A mark for "as above" with nothing above it. */
export function dittoOfNothing(fact: string): CellSaid {
  return failed(
    fact,
    trouble("unknown-choice", 'a mark for "as above", but no value stands above it; write the value'),
  );
}

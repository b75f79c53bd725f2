import { didYouMean, foldText, isPlainDay, STAGES, type Stage } from "../../base/index.js";
import { type FactState, factOf } from "../../facts/index.js";
import type { RuleCase } from "../book/rule.js";
import type { RawRule } from "../text/raw.js";
import { below, type Report } from "../text/source.js";
import type { BookNames } from "./condition-reading.js";
import { readGiven } from "./fact-values.js";

/** Keys of `given` and `casesGive` that are no facts but say how the case is run. */
const CASE_SETTINGS: ReadonlySet<string> = new Set(["model", "asOf", "stage"]);

/** Checks the cases of a rule: settings, values, and that every case has a day. */
export function readCases(raw: RawRule, report: Report, names: BookNames): readonly RuleCase[] {
  const shared = raw.casesGive ?? {};
  checkGiven(shared, "/casesGive", raw.stages, report, names);
  const without = shared.asOf === undefined ? raw.cases.findIndex(({ given }) => given.asOf === undefined) : -1;
  if (without >= 0) {
    const text = "the case has no day; add asOf to casesGive for all cases, or to given";
    report.atValue(below("/cases", without), "case-without-day", text);
  }
  checkCaseNames(raw, report);
  return raw.cases.map((written, index) => {
    const pointer = below("/cases", index);
    checkGiven(written.given, below(pointer, "given"), raw.stages, report, names);
    const { name, given, expect, missing = null } = written;
    return { name, given, expect, missing, at: report.placeOf(pointer) };
  });
}

/** A case that comes out differently is told by its name. */
function checkCaseNames(raw: RawRule, report: Report): void {
  const homes = new Map<string, number>();
  for (const [index, { name }] of raw.cases.entries()) {
    const home = homes.get(foldText(name));
    if (home === undefined) homes.set(foldText(name), index);
    else {
      const { line } = report.placeOf(below("/cases", home));
      const text = `the case in line ${line} has this name already; give every case a name of its own`;
      report.atValue(below("/cases", index, "name"), "case-name-twice", text);
    }
  }
}

function checkGiven(
  given: Readonly<Record<string, unknown>>,
  pointer: string,
  stages: readonly Stage[],
  report: Report,
  names: BookNames,
): void {
  const { model, stage } = given;
  if (typeof model === "string" && !names.models.has(model)) {
    const near = didYouMean(model, names.models) || `; write models/${model}.yaml or correct the name`;
    report.atValue(below(pointer, "model"), "unknown-model", `there is no model "${model}"${near}`);
  }
  if (STAGES.some((known) => known === stage) && !stages.some((known) => known === stage)) {
    const text = `the rule is not for the stage "${stage}"; its stages are ${stages.join(", ")}`;
    report.atValue(below(pointer, "stage"), "stage-of-no-use", text);
  }
  for (const [id, written] of Object.entries(given)) {
    if (CASE_SETTINGS.has(id)) continue;
    const reading = readGiven(written, factOf(id));
    if (!reading.ok) report.atValue(below(pointer, id), reading.mistake.code, reading.mistake.text);
  }
}

/** A case with its settings apart from its facts. */
export interface CaseGiven {
  readonly model: string | null;
  readonly asOf: string;
  readonly stage: Stage | null;
  readonly facts: ReadonlyMap<string, FactState>;
}

/**
 * What a checked case gives, on top of what all cases of its rule start from.
 *
 * @throws RangeError if the values were never checked
 */
export function takeGiven(
  shared: Readonly<Record<string, unknown>>,
  given: Readonly<Record<string, unknown>>,
): CaseGiven {
  const all = new Map([...Object.entries(shared), ...Object.entries(given)]);
  const model = all.get("model");
  const asOf = all.get("asOf");
  const stage = STAGES.find((known) => known === all.get("stage")) ?? null;
  if (typeof asOf !== "string" || !isPlainDay(asOf)) throw new RangeError("a case without a day was not checked");
  return { model: typeof model === "string" ? model : null, asOf, stage, facts: givenFacts(all) };
}

/**
 * The facts among what checked cases give (`given`, `casesGive`), settings left out.
 *
 * @throws RangeError if the values were never checked
 */
export function givenFacts(all: Iterable<readonly [string, unknown]>): ReadonlyMap<string, FactState> {
  const facts = new Map<string, FactState>();
  for (const [id, written] of all) {
    if (CASE_SETTINGS.has(id)) continue;
    const reading = readGiven(written, factOf(id));
    if (!reading.ok) throw new RangeError(`the value given for "${id}" was not checked: ${reading.mistake.text}`);
    facts.set(id, reading.value);
  }
  return facts;
}

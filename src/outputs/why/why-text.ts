import { formatNumber, type Interval, type Outcome, type Truth } from "../../base/index.js";
import { factName, findFact, plainWords } from "../../facts/index.js";
import type { Band, BandTrace, ConditionTrace, Rulebook } from "../../rulebook/index.js";
import {
  CAUTIONS,
  conditionInWords,
  type FactWhy,
  type NotAsked,
  type PointResult,
  type PointWhy,
  type ResultHead,
  type RuleWhy,
} from "../../screening/index.js";
import { reasonOf, remedyOf } from "../findings/reasons.js";
import { indexRules, type RuleIndex } from "../findings/rule-index.js";
import { paragraph } from "../terminal/layout.js";
import { acceptedInWords, markedFinding, markedPoint, standingInWords } from "../wording/deviations.js";
import { factValueInWords, missingInWords } from "../wording/facts.js";
import { overlaysInWords } from "../wording/overlays.js";
import { pointInWords, rowInWords } from "../wording/places.js";
import { sourceInWords } from "../wording/sources.js";
import type { CellsRead } from "./cells-read.js";

/** What the words rest on besides the point. */
export interface WhyContext {
  readonly head: Pick<ResultHead, "rules" | "models" | "tables" | "deviations" | "rulebook">;
  readonly rulebook: Pick<Rulebook, "conditions">;
  /** Looks cells up in the survey of a file; null where there is none. */
  readonly cells: (file: string) => CellsRead | null;
}

/** The whole way to the verdict of one point, for a person: rules that speak first, then those that do not. */
export function whyText(why: PointWhy, context: WhyContext): string {
  const { point, rules, open } = why;
  const index = indexRules(context.head);
  const lines = [
    `${pointInWords(point)}${point.point === null ? "" : ` (${point.point})`}`,
    rowInWords(point),
    markedPoint(point),
    ...(open.length > 0 ? paragraph(open.map(missingInWords).join(", "), "To find out so that nothing is open: ") : []),
    ...inOrder(rules).flatMap((rule) => ["", ...ruleLines(rule, point, index, context)]),
    ...notAskedLines(rules, index),
    ...switchedOffLines(context.head.rulebook),
    "",
    ...CAUTIONS.slice(0, 1).flatMap((caution) => paragraph(caution, "")),
  ];
  return lines.map((line) => `${line}\n`).join("");
}

/** What decides first, what does not apply last; rules that were not asked are only named. */
const ORDER: readonly Outcome[] = ["fail", "warn", "undecided", "no-limit-in-force", "pass", "not-applicable"];

function inOrder(rules: readonly RuleWhy[]): readonly RuleWhy[] {
  const asked = rules.filter(({ notAsked }) => notAsked === null);
  return ORDER.flatMap((outcome) => asked.filter(({ finding }) => finding.outcome === outcome));
}

function notAskedLines(rules: readonly RuleWhy[], index: RuleIndex): readonly string[] {
  const silent = rules.flatMap(({ notAsked }) => notAsked ?? []);
  const ofSurvey = silent.filter(({ model }) => model === null);
  const ofModel = silent.filter(({ model }) => model !== null);
  const lines = (why: string, unasked: readonly NotAsked[]): readonly string[] =>
    unasked.length === 0
      ? []
      : [
          "",
          why,
          ...unasked.flatMap(({ rule, facts }) =>
            paragraph(`${index.title(rule)} (${rule}); it needs ${facts.map(factName).join(", ")}`, "  "),
          ),
        ];
  return [
    ...lines("Not asked: the survey has no column for what these rules need, and the site states nothing", ofSurvey),
    ...lines("Not asked: the sensor model does not state what these rules need", ofModel),
  ];
}

function switchedOffLines({ switchedOff }: ResultHead["rulebook"]): readonly string[] {
  if (switchedOff.length === 0) return [];
  const lines = switchedOff.map(
    ({ rule, title, overlay, reason, by, on }) => `${title} (${rule}), by ${overlay}: ${reason} (${by}, ${on})`,
  );
  return ["", "Switched off", ...lines.flatMap((line) => paragraph(line, "  "))];
}

function ruleLines(rule: RuleWhy, point: PointResult, index: RuleIndex, context: WhyContext): readonly string[] {
  const { finding, trace, facts } = rule;
  const shown = index.rule(rule.rule);
  const title = paragraph(`${index.title(rule.rule)} (${rule.rule})`, `${markedFinding(finding)}  `);
  const remedy = remedyOf(finding, index);
  const isBad = finding.outcome !== "pass" && finding.outcome !== "not-applicable";
  return [
    ...title,
    ...(shown ? overlaysInWords(shown).flatMap((line) => paragraph(line, "  ")) : []),
    ...(isBad ? paragraph(reasonOf(finding, index), "  ") : []),
    ...(isBad && remedy !== "" ? paragraph(remedy, "  to do: ") : []),
    ...deviationLines(rule, point, context),
    ...(trace.applies === null ? ["  applies always"] : ["  applies if", ...conditionLines(trace.applies, context, 2)]),
    ...limitLines(rule, context),
    "  facts",
    ...facts.flatMap((fact) => factLines(fact, 2, context.cells(point.file))),
    "  sources",
    ...(shown?.citations ?? []).flatMap((citation) => paragraph(sourceInWords(citation), "    ")),
    ...tablesUnder(facts, context.head).flatMap(({ title, citations }) => [
      ...paragraph(`of the table "${title}":`, "    "),
      ...citations.flatMap((citation) => paragraph(sourceInWords(citation), "      ")),
    ]),
  ];
}

/** The tables in which facts were looked up, each once. */
function tablesUnder(facts: readonly FactWhy[], { tables }: WhyContext["head"]): WhyContext["head"]["tables"] {
  const ids = new Set(idsUnder(facts));
  return tables.filter(({ gives }) => gives.some((id) => ids.has(id)));
}

function idsUnder(facts: readonly FactWhy[]): readonly string[] {
  return facts.flatMap(({ shown, under }) => [shown.fact, ...idsUnder(under)]);
}

/** Who has accepted the finding, and deviations from this rule at this point that do not cover it today. */
function deviationLines({ rule, finding }: RuleWhy, point: PointResult, { head }: WhyContext): readonly string[] {
  const others = (head.deviations?.list ?? []).filter(
    (one) => one.rule === rule && one.pointId !== null && one.pointId === point.id && one.status !== "in-use",
  );
  return [
    ...(finding.accepted === null ? [] : paragraph(acceptedInWords(finding.accepted), "  ")),
    ...others.flatMap((one) => paragraph(`a deviation by ${one.acceptedBy}: ${standingInWords(one)}`, "  ")),
  ];
}

function limitLines({ trace, finding }: RuleWhy, context: WhyContext): readonly string[] {
  const { entry, bands } = trace;
  if (entry === null) return ["  no limit is in force on this day"];
  const until = entry.until === null ? "" : ` until ${entry.until}`;
  const review = entry.reviewBy === null ? "" : `, to be reviewed by ${entry.reviewBy}`;
  const judged = finding.facts[0]?.fact ?? null;
  return [
    `  limit in force from ${entry.from}${until}${review} (${entry.at.file}, line ${entry.at.line})`,
    ...bands.flatMap((band) => bandLines(band, judged, context)),
    ...(finding.margin === null ? [] : [`    distance to the nearest failing limit: ${marginInWords(finding)}`]),
  ];
}

function marginInWords({ margin, facts: [judged] }: RuleWhy["finding"]): string {
  const fraction = margin?.fraction ?? null;
  const share = fraction === null ? "" : ` (${formatNumber(Math.round(fraction * 1000) / 10, "%")} of it)`;
  return `${formatNumber(margin?.value ?? 0, judged?.unit ?? null)}${share}`;
}

const BREAKS: Readonly<Record<Exclude<Band["is"], "when">, string>> = {
  below: "below",
  above: "above",
  atOrBelow: "at or below",
  atOrAbove: "at or above",
  outside: "outside",
  oneOf: "one of",
  noneOf: "none of",
};

function bandLines(trace: BandTrace, judged: string | null, context: WhyContext): readonly string[] {
  const { band, truth, outcome, condition } = trace;
  const verb = outcome === "fail" ? "fails" : "warns";
  if (condition !== null) return [`    ${said(truth)}  ${verb} if`, ...conditionLines(condition, context, 4)];
  if (band.is === "when") return [];
  const what = judged === null ? "it" : factName(judged);
  const against = "choices" in band ? band.choices.map(plainWords).join(", ") : boundsInWords(trace, judged);
  return paragraph(`${verb} if ${what} is ${BREAKS[band.is]} ${against}`, `    ${said(truth)}  `);
}

function boundsInWords({ band, bounds }: BandTrace, judged: string | null): string {
  const unit = judged === null ? null : (findFact(judged)?.unit ?? null);
  const written = "bounds" in band ? band.bounds : "bound" in band ? [band.bound] : [];
  return written
    .map((bound, i) => {
      const value = intervalInWords(bounds[i] ?? null, unit);
      return bound.kind === "number" ? value : `${value} (${scaledInWords(bound)})`;
    })
    .join(" to ");
}

function scaledInWords({ fact, times, plus }: { fact: string; times: number; plus: number }): string {
  const shift = plus === 0 ? "" : ` ${plus < 0 ? "−" : "+"} ${formatNumber(Math.abs(plus))}`;
  return `${times === 1 ? "" : `${formatNumber(times)} × `}${factName(fact)}${shift}`;
}

function intervalInWords(interval: Interval | null, unit: string | null): string {
  if (interval === null) return "a value that is not known";
  const { lowest, highest } = interval;
  if (lowest === highest) return formatNumber(lowest, unit);
  if (!Number.isFinite(lowest)) return `at most ${formatNumber(highest, unit)}`;
  if (!Number.isFinite(highest)) return `at least ${formatNumber(lowest, unit)}`;
  return `${formatNumber(lowest)} to ${formatNumber(highest, unit)}`;
}

const SAID = new Map<Truth, string>([
  [true, "yes      "],
  [false, "no       "],
  [null, "undecided"],
]);

function said(truth: Truth): string {
  return SAID.get(truth) ?? "";
}

function conditionLines(trace: ConditionTrace, context: WhyContext, depth: number): readonly string[] {
  const { condition, truth, parts } = trace;
  const indent = "  ".repeat(depth);
  const inner = parts.flatMap((part) => conditionLines(part, context, depth + 1));
  const own = (words: string): readonly string[] => [...paragraph(words, `${indent}${said(truth)}  `), ...inner];
  switch (condition.kind) {
    case "all":
      return own("all of");
    case "any":
      return own("any of");
    case "not":
      return own("not");
    case "named":
      return own(plainWords(condition.name));
    case "comparison":
      return own(conditionInWords(condition, context.rulebook));
  }
}

function factLines(fact: FactWhy, depth: number, cells: CellsRead | null): readonly string[] {
  const { shown, reason, under } = fact;
  const indent = "  ".repeat(depth);
  const value = reason === null || reason === "too-close" ? factValueInWords(shown) : `not known (${reason})`;
  const assumed = shown.assumed === null ? "" : `; assumed: ${shown.assumed}`;
  const isOfTable = findFact(shown.fact)?.source === "table";
  const said = isOfTable ? lineOf(shown) : under.length > 0 ? [] : placesOf(fact, cells);
  const places = said.flatMap((line) => paragraph(line, `${indent}  `));
  return [
    ...paragraph(`${factName(shown.fact)}: ${value}${assumed}`, indent),
    ...places,
    ...under.flatMap((one) => factLines(one, depth + 1, cells)),
  ];
}

function placesOf({ shown }: FactWhy, cells: CellsRead | null): readonly string[] {
  const read = shown.cells.map((place) => {
    const where = place.sheet === null ? place.cell : `${place.cell} of "${place.sheet}"`;
    const cell = cells?.(place) ?? null;
    if (cell === null) return `from ${where}, which is empty`;
    const heading = cell.heading === null ? "" : ` under "${cell.heading}"`;
    const unit = cell.unit === null ? "" : `, bare numbers read as ${cell.unit}`;
    return `from ${where}: ${cell.text}${heading}${unit}`;
  });
  return read.length > 0 ? read : lineOf(shown);
}

function lineOf({ origin }: FactWhy["shown"]): readonly string[] {
  return origin === null ? [] : [`from ${origin.file}, line ${origin.line}`];
}

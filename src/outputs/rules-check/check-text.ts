import type { TextPlace } from "../../base/index.js";
import type { AlterationReport, CoverageReport } from "../../proving/index.js";
import { table } from "../terminal/layout.js";
import { countOf } from "../wording/numbers.js";
import { bookInWords } from "../wording/overlays.js";
import type { RulesCheck } from "./rules-check.js";

/** What was found wrong, a line per mistake, in the form that editors and shells can follow. */
export function checkMistakesText({ mistakes, cases }: RulesCheck): string {
  const lines = mistakes.flatMap(({ code, text, lineText, ...at }) => [
    `${place(at)}: ${text} [${code}]`,
    ...(lineText === null || lineText.trim() === "" ? [] : [`    ${lineText.trim()}`]),
  ]);
  const wrong = cases?.wrong ?? [];
  for (const { at, name, stage, difference } of wrong) {
    lines.push(`${place(at)}: case "${name}" (${stage}): ${difference} [case]`);
  }
  return joined(lines);
}

/** What the check of a rulebook that loads came to. */
export function checkText({ rulebook, cases, reviewsDue, coverage, alterations }: RulesCheck): string {
  if (rulebook === null || cases === null) return "";
  const lines = [
    `${bookInWords(rulebook)}: ${countOf(rulebook.rules, "rule")}, ` +
      `${countOf(rulebook.models, "sensor model")}, ${countOf(rulebook.tables, "table")}, ${countOf(cases.runs, "case run")}, ${cases.wrong.length} not as expected`,
    `digest ${rulebook.digest}`,
    ...(rulebook.switchedOff.length > 0 ? [`switched off: ${rulebook.switchedOff.join(", ")}`] : []),
    ...(reviewsDue.length > 0 ? ["", "Limits to be reviewed; their day has passed, and they still hold"] : []),
    ...reviewsDue.map(({ rule, reviewBy, at }) => `  ${place(at)}: ${rule}: to be reviewed by ${reviewBy}`),
    ...(coverage ? coverageLines(coverage) : []),
    ...(alterations ? alterationLines(alterations) : []),
  ];
  return joined(lines);
}

function coverageLines({ counts, items }: CoverageReport): readonly string[] {
  const missing = items.filter(({ isShown }) => !isShown);
  return [
    "",
    "What the cases show",
    ...table(
      [
        { heading: "", width: 20 },
        { heading: "asked", width: 8, align: "right" },
        { heading: "shown", width: 8, align: "right" },
      ],
      counts.map(({ kind, asked, shown }) => [kind, asked, shown]),
    ),
    ...(missing.length > 0 ? ["", "Not shown by any case"] : []),
    ...missing.flatMap(({ at, rule, what, suggestion }) => proposal(`${place(at)}: ${rule}: ${what}`, suggestion)),
  ];
}

function alterationLines({ counts, unnoticed }: AlterationReport): readonly string[] {
  const told = unnoticed.filter(({ suggestion }) => suggestion !== null);
  const alike = unnoticed.filter(({ suggestion }) => suggestion === null);
  const line = ({ rule, alteration }: (typeof unnoticed)[number]): string =>
    `${place(alteration.at)}: ${rule}: ${alteration.what}`;
  return [
    "",
    "Rules altered, one thing at a time",
    ...table(
      [
        { heading: "", width: 20 },
        { heading: "altered", width: 8, align: "right" },
        { heading: "noticed", width: 8, align: "right" },
        { heading: "alike", width: 8, align: "right" },
      ],
      counts.map(({ kind, altered, noticed, alike: same }) => [kind, altered, noticed, same]),
    ),
    ...(told.length > 0 ? ["", "Noticed by no case"] : []),
    ...told.flatMap((one) => proposal(line(one), one.suggestion)),
    ...(alike.length > 0 ? ["", "Alike: no facts were found on which the altered rule judges otherwise"] : []),
    ...alike.map((one) => `  ${line(one)}`),
  ];
}

function proposal(what: string, suggestion: { readonly yaml: string } | null): readonly string[] {
  return [`  ${what}`, ...(suggestion === null ? [] : ["    add below cases:", suggestion.yaml])];
}

function place({ file, line, column }: TextPlace): string {
  return `${file}:${line}:${column}`;
}

function joined(lines: readonly string[]): string {
  return lines.map((line) => `${line}\n`).join("");
}

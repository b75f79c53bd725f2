import type { Verdict } from "../../base/index.js";
import { factName, plainWords } from "../../facts/index.js";
import type { ResultHead, Summary } from "../../screening/index.js";
import { indexRules } from "../findings/rule-index.js";
import { factValueInWords, limitInForceInWords } from "../wording/facts.js";
import { markedOutcome } from "../wording/outcomes.js";
import { bookInWords, overlayLines, overlaysInWords } from "../wording/overlays.js";
import { sourceInWords } from "../wording/sources.js";
import { otherMethodRows, settlingRows } from "./advice-rows.js";
import { deviationRows } from "./deviation-rows.js";
import { BLANK_ROW, bodyRow, headingRow, type TextRow, titleRow } from "./text-sheet.js";

/** Widths of the sheet "Summary". */
export const SUMMARY_WIDTHS = [24, 62, 8, 8, 10, 8, 11, 10];

/** Points of one survey by verdict, where the run has others too. */
export type OwnVerdicts = Readonly<Record<Verdict, number>>;

/**
 * What was screened with what, the counts, what to find out first, and the cautions.
 *
 * @param own - verdicts of the survey that the workbook is of; null where it is of the whole run
 */
export function summaryRows(head: ResultHead, summary: Summary, own: OwnVerdicts | null): readonly TextRow[] {
  const verdicts = ["fail", "warn", "pass"] as const;
  return [
    titleRow("Screening of measurement points"),
    bodyRow("", "A verdict is a screening, not a permission."),
    BLANK_ROW,
    ...whatWasScreened(head),
    BLANK_ROW,
    ...(own
      ? [
          headingRow("verdict", "points of this survey"),
          ...verdicts.map((verdict) => bodyRow(markedOutcome(verdict), own[verdict])),
          BLANK_ROW,
          bodyRow("", "All that follows counts the points of every survey of the run."),
        ]
      : []),
    headingRow("verdict", "points"),
    ...verdicts.map((verdict) => bodyRow(markedOutcome(verdict), summary[verdict])),
    bodyRow("of those that warn", `${summary.warnOnlyUndecided} only because something is not known`),
    ...(summary.accepted === 0 ? [] : [bodyRow("of those that do not pass", `${summary.accepted} accepted`)]),
    ...deviationRows(head.deviations),
    BLANK_ROW,
    ...countsByRule(head, summary),
    BLANK_ROW,
    ...settlingRows(summary),
    headingRow("to find out", "points that it leaves open"),
    ...summary.toMeasure.map((open) => bodyRow(factName(open.fact), open.points)),
    ...otherMethodRows(summary),
    BLANK_ROW,
    headingRow("cautions", ""),
    ...head.cautions.map((caution, index) => bodyRow(`${index + 1}`, caution)),
  ];
}

function whatWasScreened(head: ResultHead): readonly TextRow[] {
  return [
    ...head.surveys.map((survey) => bodyRow("survey", `${survey.file}\nSHA-256 ${survey.digest}`)),
    ...head.skipped.map((left) => bodyRow("left out", `${left.file}: ${left.text}`)),
    bodyRow("site", [head.site.name ?? "not named", ...(head.site.file ? [head.site.file] : [])].join(", ")),
    ...readingRows(head.reading),
    ...(head.deviations ? [bodyRow("deviations", `${head.deviations.file}\nSHA-256 ${head.deviations.digest}`)] : []),
    bodyRow("rulebook", `${bookInWords(head.rulebook)}\nSHA-256 ${head.rulebook.digest}`),
    ...overlayLines(head.rulebook).flatMap(([book, lines]) => bodyRow("laid over it", [book, ...lines].join("\n"))),
    bodyRow("rules asked", `set "${head.set}", points ${head.stage}, limits as of ${head.asOf}`),
    bodyRow("program", `${head.program.name} ${head.program.version}\nresult ${head.digest}`),
  ];
}

function readingRows({ columnFile, wordFiles, options }: ResultHead["reading"]): readonly TextRow[] {
  const shown = ({ file, digest }: { readonly file: string; readonly digest: string }): string =>
    `${file}\nSHA-256 ${digest}`;
  return [
    ...(columnFile === null ? [] : [bodyRow("column file", shown(columnFile))]),
    ...wordFiles.map((file) => bodyRow("words of the site", shown(file))),
    ...(options.length === 0 ? [] : [bodyRow("read with", options.join(", "))]),
  ];
}

function countsByRule(head: ResultHead, summary: Summary): readonly TextRow[] {
  const rules = indexRules(head);
  return [
    headingRow("rule", "demands", "fail", "warn", "undecided", "pass", "not applicable", "no limit in force"),
    ...summary.byRule.map((c) =>
      bodyRow(c.rule, rules.title(c.rule), c.fail, c.warn, c.undecided, c.pass, c.notApplicable, c.noLimitInForce),
    ),
  ];
}

/** Widths of the sheet "Rules applied". */
export const RULES_WIDTHS = [18, 28, 28, 38, 30, 11, 9];

/** Each rule with its limits and sources, then the models with their values and the tables that were looked up. */
export function rulesRows(head: ResultHead): readonly TextRow[] {
  return [
    headingRow("rule", "demands", "limits in force", "sources", "what to do", "undecided counts as", "review"),
    ...head.rules.map((rule) =>
      bodyRow(
        rule.id,
        rule.title,
        [
          ...(rule.appliesWhen === null ? [] : [`applies when ${rule.appliesWhen}`]),
          ...(rule.releases === "never" ? ["no deviation from it is accepted"] : []),
          ...rule.limits.map((one) => limitInForceInWords(one, rule.judged)),
          ...overlaysInWords(rule),
        ].join("\n"),
        rule.citations.map(sourceInWords).join("\n"),
        rule.remedy,
        rule.undecided,
        rule.reviewOverdue ? "overdue" : "",
      ),
    ),
    ...switchedOffRows(head),
    BLANK_ROW,
    headingRow("sensor model", "value of", "is", "sources", "in force from"),
    ...head.models.flatMap((model) =>
      model.facts.map((fact) => {
        const shown = { ...fact, lowest: null, highest: null, accuracy: null, assumed: null, cells: [] };
        const sources = fact.cites.flatMap((id) => model.citations.find((one) => one.id === id) ?? []);
        const said = sources.map(sourceInWords).join("\n");
        return bodyRow(model.title, factName(fact.fact), factValueInWords(shown), said, fact.from);
      }),
    ),
    ...tableRows(head),
  ];
}

function switchedOffRows({ rulebook: { switchedOff } }: ResultHead): readonly TextRow[] {
  if (switchedOff.length === 0) return [];
  return [
    BLANK_ROW,
    headingRow("rule switched off", "would demand", "by overlay", "reason", "said by", "on"),
    ...switchedOff.map(({ rule, title, overlay, reason, by, on }) => bodyRow(rule, title, overlay, reason, by, on)),
  ];
}

function tableRows({ tables }: ResultHead): readonly TextRow[] {
  if (tables.length === 0) return [];
  return [
    BLANK_ROW,
    headingRow("table", "gives", "looked up by", "sources", "in force from", "file", "review"),
    ...tables.map((table) =>
      bodyRow(
        table.title,
        table.gives.map(factName).join("\n"),
        table.by.map(factName).join("\n"),
        table.citations.map(sourceInWords).join("\n"),
        table.from,
        table.origin.file,
        table.reviewOverdue ? "overdue" : "",
      ),
    ),
  ];
}

/** Widths of the sheet "Remarks". */
export const REMARKS_WIDTHS = [20, 14, 8, 22, 16, 24, 46, 8];

/** Problems of the import, how sheets and columns were taken, rules not asked, and what is to say of this workbook. */
export function remarksRows(head: Pick<ResultHead, "surveys">, ownRemarks: readonly string[]): readonly TextRow[] {
  const { surveys } = head;
  return [
    headingRow("file", "sheet", "cell", "heading", "kind", "found", "what was expected, what to do"),
    ...surveys.flatMap(({ problems }) =>
      problems.map((p) =>
        bodyRow(p.file, p.sheet ?? "", p.cell ?? "", p.heading ?? "", plainWords(p.code), p.found ?? "", p.text),
      ),
    ),
    ...ownRemarks.map((text) => bodyRow("this workbook", "", "", "", "", "", text)),
    BLANK_ROW,
    headingRow("file", "sheet", "column", "heading", "unit", "taken for", "why", "hidden"),
    ...surveys.flatMap(({ file, columns }) =>
      columns.map((c) => {
        const takenFor = c.facts.length === 0 ? "not used" : c.facts.map(factName).join(", ");
        return bodyRow(
          file,
          c.sheet ?? "",
          c.column,
          c.heading,
          c.unit ?? "",
          takenFor,
          c.why,
          c.hidden ? "hidden" : "",
        );
      }),
    ),
    BLANK_ROW,
    headingRow("file", "sheet", "points", "headings in rows", "language", "", "why", "hidden"),
    ...surveys.flatMap(({ file, sheets }) =>
      sheets.map((s) => {
        const rows = s.headingRows.join(", ");
        const why = `${s.why}; ${s.languageWhy}`;
        return bodyRow(file, s.sheet ?? "", s.pointRows, rows, s.language ?? "", "", why, s.hidden ? "hidden" : "");
      }),
    ),
    ...notAskedRows(head),
  ];
}

function notAskedRows(head: Pick<ResultHead, "surveys">): readonly TextRow[] {
  const rows = head.surveys.flatMap(({ file, notAsked }) =>
    notAsked.map((open) => bodyRow(file, open.rule, "", "", "", open.facts.map(factName).join(", "), open.text)),
  );
  return rows.length === 0
    ? []
    : [BLANK_ROW, headingRow("file", "rule not asked", "", "", "", "for lack of", "in words"), ...rows];
}

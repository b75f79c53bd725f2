import type { Citation, LimitSpoken, Margin } from "../../rulebook/index.js";
import type {
  ChangeFound,
  FactShown,
  Finding,
  GroupShown,
  LimitShown,
  ModelShown,
  ResultHead,
  RuleShown,
  Summary,
  SurveyShown,
  TableShown,
} from "../../screening/index.js";
import { acceptedShape, deviationsShape } from "./deviation-shapes.js";
import { openShape, otherMethodShape, stepShape } from "./method-shapes.js";
import { changedByShape, rulebookShape } from "./rulebook-shapes.js";
import type { Shape } from "./shape.js";
import { distributionsShape, freeingShape } from "./summary-shapes.js";

/** Numbers without a finite value have no JSON form; an end without a bound is null. */
function finite(value: number | null): number | null {
  return value !== null && Number.isFinite(value) ? value : null;
}

function citationShape(citation: Citation): Shape<Citation> {
  return {
    id: citation.id,
    basis: citation.basis,
    says: citation.says,
    source: citation.source ?? null,
    clause: citation.clause ?? null,
    readOn: citation.readOn ?? null,
  };
}

function originShape(origin: { readonly file: string; readonly line: number }) {
  return { file: origin.file, line: origin.line };
}

function fileShape({ file, digest }: { readonly file: string; readonly digest: string }) {
  return { file, digest };
}

/** A fact of a finding as documents write it. */
export function factShape(fact: FactShown): Shape<FactShown> {
  return {
    fact: fact.fact,
    value: typeof fact.value === "number" ? finite(fact.value) : fact.value,
    lowest: finite(fact.lowest),
    highest: finite(fact.highest),
    unit: fact.unit,
    accuracy: finite(fact.accuracy),
    assumed: fact.assumed,
    cells: fact.cells.map((place) => ({ sheet: place.sheet, cell: place.cell })),
    origin: fact.origin === null ? null : originShape(fact.origin),
  };
}

function limitShape(limit: LimitSpoken): Shape<LimitSpoken> {
  return {
    is: limit.is,
    value: typeof limit.value === "number" ? finite(limit.value) : limit.value,
    unit: limit.unit,
    from: limit.from,
    fact: limit.fact,
    origin: originShape(limit.origin),
    cites: limit.cites,
  };
}

function marginShape(margin: Margin): Shape<Margin> | null {
  return Number.isFinite(margin.value) ? { value: margin.value, fraction: finite(margin.fraction) } : null;
}

function changeShape(change: ChangeFound): Shape<ChangeFound> {
  const { fact, from, to, unit, breaks } = change;
  return { fact, from, to, unit, breaks };
}

/** A finding as documents write it. */
export function findingShape(finding: Finding): Shape<Finding> {
  return {
    rule: finding.rule,
    outcome: finding.outcome,
    atBest: finding.atBest,
    facts: finding.facts.map(factShape),
    limit: finding.limit === null ? null : limitShape(finding.limit),
    margin: finding.margin === null ? null : marginShape(finding.margin),
    missing: finding.missing.map((open) => ({ fact: open.fact, reason: open.reason, measureTo: open.measureTo })),
    message: finding.message,
    remedy: finding.remedy,
    changes: finding.changes.map(changeShape),
    group: finding.group,
    accepted: finding.accepted === null ? null : acceptedShape(finding.accepted),
  };
}

/** A group as documents write it. */
export function groupShape(group: GroupShown, findings: readonly Finding[] = group.findings): Shape<GroupShown> {
  return {
    id: group.id,
    kind: group.kind,
    title: group.title,
    key: group.key.map(({ fact, value }) => ({ fact, value })),
    rows: group.rows.map(({ file, sheet, row, point }) => ({ file, sheet, row, point })),
    disagreements: group.disagreements.map(({ fact, values }) => ({
      fact,
      values: values.map(({ value, rows, cells }) => ({
        value,
        rows,
        cells: cells.map(({ file, sheet, cell }) => ({ file, sheet, cell })),
      })),
    })),
    findings: findings.map(findingShape),
  };
}

function surveyShape(survey: SurveyShown): Shape<SurveyShown> {
  return {
    file: survey.file,
    digest: survey.digest,
    sheets: survey.sheets.map((sheet) => ({
      sheet: sheet.sheet,
      used: sheet.used,
      why: sheet.why,
      headingRows: sheet.headingRows,
      pointRows: sheet.pointRows,
      hidden: sheet.hidden,
      language: sheet.language,
      languageWhy: sheet.languageWhy,
    })),
    columns: survey.columns.map((column) => ({
      sheet: column.sheet,
      column: column.column,
      heading: column.heading,
      facts: column.facts,
      unit: column.unit,
      hidden: column.hidden,
      why: column.why,
    })),
    problems: survey.problems.map((problem) => ({
      code: problem.code,
      file: problem.file,
      sheet: problem.sheet,
      cell: problem.cell,
      heading: problem.heading,
      fact: problem.fact,
      found: problem.found,
      text: problem.text,
    })),
    notAsked: survey.notAsked.map((open) => ({
      rule: open.rule,
      model: open.model,
      facts: open.facts,
      text: open.text,
    })),
  };
}

function modelShape(model: ModelShown): Shape<ModelShown> {
  return {
    id: model.id,
    title: model.title,
    facts: model.facts.map((fact) => ({
      fact: fact.fact,
      value: typeof fact.value === "number" ? finite(fact.value) : fact.value,
      unit: fact.unit,
      from: fact.from,
      cites: fact.cites,
      origin: originShape(fact.origin),
    })),
    citations: model.citations.map(citationShape),
  };
}

function tableShape(table: TableShown): Shape<TableShown> {
  const { id, title, by, gives, from, until, reviewBy, reviewOverdue } = table;
  const citations = table.citations.map(citationShape);
  return { id, title, by, gives, from, until, reviewBy, reviewOverdue, citations, origin: originShape(table.origin) };
}

function limitInForceShape(limit: LimitShown): Shape<LimitShown> {
  return {
    outcome: limit.outcome,
    is: limit.is,
    unit: limit.unit,
    bounds: limit.bounds.map(({ value, fact, times, plus }) => ({ value, fact, times, plus })),
    choices: limit.choices,
    condition: limit.condition,
    from: limit.from,
    until: limit.until,
    reviewBy: limit.reviewBy,
    cites: limit.cites,
  };
}

function ruleShape(rule: RuleShown): Shape<RuleShown> {
  return {
    id: rule.id,
    title: rule.title,
    sets: rule.sets,
    undecided: rule.undecided,
    releases: rule.releases,
    judged: rule.judged,
    appliesWhen: rule.appliesWhen,
    limits: rule.limits.map(limitInForceShape),
    citations: rule.citations.map(citationShape),
    reviewOverdue: rule.reviewOverdue,
    remedy: rule.remedy,
    addedBy: rule.addedBy,
    changedBy: rule.changedBy.map(changedByShape),
  };
}

/** What stands before the points, in the order in which documents write it. */
export function headShape(head: ResultHead): Shape<ResultHead> {
  return {
    program: { name: head.program.name, version: head.program.version },
    digest: head.digest,
    asOf: head.asOf,
    stage: head.stage,
    set: head.set,
    rulebook: rulebookShape(head.rulebook),
    site: { name: head.site.name, file: head.site.file, digest: head.site.digest },
    reading: {
      columnFile: head.reading.columnFile === null ? null : fileShape(head.reading.columnFile),
      wordFiles: head.reading.wordFiles.map(fileShape),
      options: head.reading.options,
    },
    deviations: head.deviations === null ? null : deviationsShape(head.deviations),
    surveys: head.surveys.map(surveyShape),
    skipped: head.skipped.map((left) => ({ file: left.file, text: left.text })),
    models: head.models.map(modelShape),
    tables: head.tables.map(tableShape),
    rules: head.rules.map(ruleShape),
    groups: head.groups.map((group) => groupShape(group)),
    cautions: head.cautions,
  };
}

/** What stands after the points. */
export function summaryShape(summary: Summary): Shape<Summary> {
  return {
    points: summary.points,
    pass: summary.pass,
    warn: summary.warn,
    fail: summary.fail,
    warnOnlyUndecided: summary.warnOnlyUndecided,
    accepted: summary.accepted,
    problems: summary.problems,
    byRule: summary.byRule.map((counts) => ({
      rule: counts.rule,
      pass: counts.pass,
      warn: counts.warn,
      fail: counts.fail,
      undecided: counts.undecided,
      notApplicable: counts.notApplicable,
      noLimitInForce: counts.noLimitInForce,
    })),
    byCriticality: summary.byCriticality.map(({ criticality, machines, points }) => ({
      criticality,
      machines,
      points,
    })),
    toMeasure: summary.toMeasure.map((open) => ({ fact: open.fact, points: open.points })),
    settling: summary.settling.map(stepShape),
    openPoints: openShape(summary.openPoints),
    otherMethods: summary.otherMethods.map(otherMethodShape),
    freeing: freeingShape(summary.freeing),
    distributions: distributionsShape(summary.distributions),
  };
}

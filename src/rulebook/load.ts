import { sha256OfData, type TextFile } from "../base/index.js";
import { checkSchema } from "./check-schema.js";
import { type BookNames, readCondition } from "./condition-reading.js";
import { findCycle, MOST_COMPARISONS, sizeOf } from "./conditions-graph.js";
import { type FileLimits, RULEBOOK_LIMITS } from "./file-limits.js";
import { type FileRole, type RoledFile, roleOf } from "./file-roles.js";
import { conditionsOfGroups, readGroups } from "./group-reading.js";
import { checkIds } from "./ids.js";
import type { LoadedFile } from "./loaded-file.js";
import { checkManifest } from "./manifest.js";
import { readWays } from "./measuring-reading.js";
import { readModel } from "./model-reading.js";
import { checkOutcomesInCases, checkRemedy, namesOfRule } from "./names-in-use.js";
import { checkQuotes } from "./quotes.js";
import type { RawConditionFile, RawGroup, RawManifest, RawModel, RawRule, RawTable, RawWay, RawWords } from "./raw.js";
import { readYaml } from "./read-yaml.js";
import type { Condition, Rule } from "./rule.js";
import { checkGroupNames } from "./rule-of-group.js";
import { readRule } from "./rule-reading.js";
import type { FileFinding, Rulebook, RulebookLoading, SensorModel } from "./rulebook.js";
import {
  CONDITION_SCHEMA,
  GROUP_SCHEMA,
  type JsonSchema,
  MEASURING_SCHEMA,
  MODEL_SCHEMA,
  RULE_SCHEMA,
  RULEBOOK_SCHEMA,
  TABLE_SCHEMA,
  WORDS_SCHEMA,
} from "./schemas/index.js";
import { Report } from "./source.js";
import { readTable } from "./table-reading.js";
import { checkTablesOfRule, checkTablesThere, factsGiven, type ReportedTable } from "./tables-in-use.js";
import { joinWords } from "./word-reading.js";

/** How a rulebook is loaded. */
export interface LoadOptions {
  /** Folder that the given paths begin with, such as "rules"; left out where they begin at the manifest. */
  readonly root?: string;
  /** Other limits than the usual ones, for tests. */
  readonly limits?: FileLimits;
}

const SCHEMAS: Readonly<Record<FileRole, JsonSchema>> = {
  manifest: RULEBOOK_SCHEMA,
  rule: RULE_SCHEMA,
  condition: CONDITION_SCHEMA,
  model: MODEL_SCHEMA,
  table: TABLE_SCHEMA,
  group: GROUP_SCHEMA,
  words: WORDS_SCHEMA,
  measuring: MEASURING_SCHEMA,
};

/**
 * Loads and checks a rulebook folder as a whole. Bad files are values, not errors: every finding over all files is
 * gathered, in the order of paths, lines and columns. A rulebook with a single finding does not load, and neither
 * does one without a rule, so that no point ever passes because nothing was asked.
 *
 * @param files - every YAML (or JSON) file of the folder; files with another ending are passed over
 */
export function loadRulebook(files: readonly TextFile[], options: LoadOptions = {}): RulebookLoading {
  const limits = options.limits ?? RULEBOOK_LIMITS;
  const findings: FileFinding[] = [];
  if (files.length > limits.files) {
    const text = `the folder has ${files.length} files, at most ${limits.files} are allowed`;
    return { ok: false, findings: [{ file: options.root ?? "", line: 1, column: 1, code: "too-many-files", text }] };
  }
  const roled = takeRoles(files, options.root ?? "", findings);
  const loaded = roled.flatMap((file) => loadFile(file, limits, findings));
  checkIds(loaded);
  const rulebook = readBook(roled, loaded, options.root ?? "", findings);
  if (rulebook !== null && findings.length === 0) return { ok: true, rulebook };
  return { ok: false, findings: findings.sort(byPlace) };
}

function takeRoles(files: readonly TextFile[], root: string, findings: FileFinding[]): readonly RoledFile[] {
  const roled: RoledFile[] = [];
  for (const file of [...files].sort((a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0))) {
    const role = roleOf(file, root);
    if (role === null) continue;
    if ("role" in role) roled.push(role);
    else findings.push({ file: file.path, line: 1, column: 1, ...role });
  }
  return roled;
}

function loadFile(roled: RoledFile, limits: FileLimits, findings: FileFinding[]): LoadedFile[] {
  const reading = readYaml(roled.file, limits);
  if (!reading.ok) {
    findings.push(...reading.findings);
    return [];
  }
  const report = new Report(reading.source, findings);
  const fits = checkSchema(reading.source, SCHEMAS[roled.role], report);
  if (fits && roled.role !== "words") checkQuotes(report);
  return [{ ...roled, source: reading.source, report, fits }];
}

/** Data of all files of a role whose form is right; the schema vouches for the type. */
function dataOf<T>(loaded: readonly LoadedFile[], role: FileRole): readonly (LoadedFile & { readonly raw: T })[] {
  return loaded
    .filter((file) => file.role === role && file.fits)
    .map((file) => ({ ...file, raw: file.source.data as T }));
}

function readBook(
  roled: readonly RoledFile[],
  loaded: readonly LoadedFile[],
  root: string,
  findings: FileFinding[],
): Rulebook | null {
  const [manifest] = dataOf<RawManifest>(loaded, "manifest");
  const inFolder = (role: FileRole): ReadonlySet<string> =>
    new Set(roled.filter((file) => file.role === role).map((file) => file.name));
  const names: BookNames = {
    sets: manifest ? new Set(manifest.raw.sets) : null,
    conditions: inFolder("condition"),
    models: inFolder("model"),
  };
  checkManifest(roled, manifest, names, root, findings);
  const conditions = readConditions(loaded, names);
  const models = new Map<string, SensorModel>();
  for (const { raw, report } of dataOf<RawModel>(loaded, "model")) models.set(raw.id, readModel(raw, report));
  const tables = readTables(loaded);
  const conditionData = new Map(
    dataOf<RawConditionFile>(loaded, "condition").map(({ raw }): readonly [string, unknown] => [raw.id, raw.when]),
  );
  const groupFiles = dataOf<RawGroup>(loaded, "group");
  const groups = readGroups(groupFiles, names, conditionData);
  const bookGroups = { read: groups, named: inFolder("group") };
  const rules: Rule[] = [];
  for (const { raw, report } of dataOf<RawRule>(loaded, "rule")) {
    const rule = readRule(raw, report, names);
    checkSize(rule, conditions, report);
    checkGroupNames(raw, bookGroups, conditionData, report);
    checkRemedy(raw, conditionData, groups.get(raw.group ?? "")?.key ?? [], report);
    checkOutcomesInCases(raw, conditionData, report);
    rules.push(rule);
  }
  checkTablesUsed(loaded, tables, roled);
  checkConditionsUsed(loaded, conditionData, conditionsOfGroups(groupFiles, conditionData), findings);
  const { words, placeOfWord } = joinWords(
    dataOf<RawWords>(loaded, "words").map(({ raw, report, file }) => ({ raw, report, path: file.path })),
  );
  const ways = readWays(dataOf<RawWay>(loaded, "measuring"), words.common);
  if (!manifest) return null;
  const { name, version, language, sets, defaultSet, baselineModel, methods } = manifest.raw;
  const digest = sha256OfData(loaded.map(({ inside, source }) => ({ path: inside, data: source.data })));
  return {
    name,
    version,
    language,
    sets,
    defaultSet,
    baselineModel,
    methods: methods ? { lasting: methods.lasting, gates: methods.gates } : null,
    rules,
    conditions,
    models,
    tables: new Map(tables.map(({ table }) => [table.id, table])),
    groups,
    words,
    ways,
    placeOfWord,
    digest,
    signedBy: null,
  };
}

function readTables(loaded: readonly LoadedFile[]): readonly ReportedTable[] {
  return dataOf<RawTable>(loaded, "table").map(({ raw, report }) => ({ table: readTable(raw, report), report }));
}

/** Left alone while a table has no right form: what it would give cannot be said. */
function checkTablesUsed(
  loaded: readonly LoadedFile[],
  tables: readonly ReportedTable[],
  roled: readonly RoledFile[],
): void {
  const given = factsGiven(tables);
  if (tables.length < roled.filter(({ role }) => role === "table").length) return;
  for (const { raw, report } of dataOf<RawConditionFile>(loaded, "condition")) {
    checkTablesThere(raw.when, "/when", given, report);
  }
  for (const { raw, report } of dataOf<RawRule>(loaded, "rule")) checkTablesOfRule(raw, given, report);
}

function readConditions(loaded: readonly LoadedFile[], names: BookNames): ReadonlyMap<string, Condition> {
  const conditions = new Map<string, Condition>();
  const files = dataOf<RawConditionFile>(loaded, "condition");
  for (const { raw, report } of files) {
    const condition = readCondition(raw.when, "/when", report, names);
    if (condition) conditions.set(raw.id, condition);
  }
  const cycle = findCycle(conditions);
  if (cycle) {
    const text = `the condition comes back to itself: ${cycle.slice(0, 10).join(" needs ")}; break the circle`;
    files.find(({ raw }) => raw.id === cycle[0])?.report.atKey("/when", "condition-cycle", text);
    return new Map();
  }
  return conditions;
}

/** Left alone while a rule, condition or group has mistakes: the name that is missed may be among them. */
function checkConditionsUsed(
  loaded: readonly LoadedFile[],
  conditionData: ReadonlyMap<string, unknown>,
  ofGroups: ReadonlySet<string>,
  findings: readonly FileFinding[],
): void {
  const rules = dataOf<RawRule>(loaded, "rule");
  const others = new Set(
    loaded
      .filter(({ role }) => !["manifest", "rule", "condition", "group"].includes(role))
      .map(({ file }) => file.path),
  );
  if (rules.length === 0 || findings.some(({ file }) => !others.has(file))) return;
  const used = new Set([...ofGroups, ...rules.flatMap(({ raw }) => [...namesOfRule(raw, conditionData).conditions])]);
  for (const { raw, report } of dataOf<RawConditionFile>(loaded, "condition")) {
    if (used.has(raw.id)) continue;
    report.atValue("/id", "unused-condition", `no rule uses the condition "${raw.id}"; use it or remove the file`);
  }
}

/** Named conditions that name others can multiply; what a rule comes to is limited before any is written out. */
function checkSize(rule: Rule, conditions: ReadonlyMap<string, Condition>, report: Report): void {
  const parts = [
    rule.appliesWhen,
    ...rule.limits
      .flatMap((limit) => [...limit.fail, ...limit.warn])
      .map((band) => (band.is === "when" ? band.condition : null)),
  ];
  const sizes = new Map<string, number>();
  const size = parts.reduce((sum, part) => sum + (part ? sizeOf(part, conditions, sizes) : 0), 0);
  if (size <= MOST_COMPARISONS) return;
  const text = `with its named conditions the rule comes to ${size} comparisons, at most ${MOST_COMPARISONS} are allowed`;
  report.atKey("/id", "rule-too-large", text);
}

function byPlace(a: FileFinding, b: FileFinding): number {
  if (a.file !== b.file) return a.file < b.file ? -1 : 1;
  return a.line - b.line || a.column - b.column;
}

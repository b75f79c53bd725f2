import { sha256OfData, type TextFile } from "../../base/index.js";
import type { OverlayFiles } from "../book/overlay.js";
import type { Condition, Rule } from "../book/rule.js";
import type { FileFinding, Rulebook, RulebookLoading, SensorModel } from "../book/rulebook.js";
import { type BookNames, readCondition } from "../reading/condition-reading.js";
import { findCycle, MOST_COMPARISONS, sizeOf } from "../reading/conditions-graph.js";
import { conditionsOfGroups, readGroups } from "../reading/group-reading.js";
import { readWays } from "../reading/measuring-reading.js";
import { readModel } from "../reading/model-reading.js";
import { checkGroupNames } from "../reading/rule-of-group.js";
import { readRule } from "../reading/rule-reading.js";
import { readTable } from "../reading/table-reading.js";
import { checkTablesOfRule, checkTablesThere, factsGiven, type ReportedTable } from "../reading/tables-in-use.js";
import { joinWords } from "../reading/word-reading.js";
import { type FileLimits, RULEBOOK_LIMITS } from "../text/file-limits.js";
import { type FileRole, manifestBelow, manifestIn, type RoledFile, roleOf } from "../text/file-roles.js";
import { checkIds } from "../text/ids.js";
import type { LoadedFile } from "../text/loaded-file.js";
import { checkOutcomesInCases, checkRemedy, namesOfRule } from "../text/names-in-use.js";
import type {
  RawConditionFile,
  RawGroup,
  RawManifest,
  RawModel,
  RawRule,
  RawTable,
  RawWay,
  RawWords,
} from "../text/raw.js";
import type { Report } from "../text/source.js";
import { dataOfFiles, inheritedFirst, type LaidBook, layOverlays } from "./lay-overlays.js";
import { loadFolder } from "./load-files.js";
import { checkManifest } from "./manifest.js";

/** How a rulebook is loaded. */
export interface LoadOptions {
  /** Folder that the given paths begin with, such as "rules"; left out where they begin at the manifest. */
  readonly root?: string;
  /** Overlays of sites, each laid over the rulebook and those before it. */
  readonly over?: readonly OverlayFiles[];
  /** Other limits than the usual ones, for tests. */
  readonly limits?: FileLimits;
}

/**
 * Loads and checks a rulebook folder as a whole. Bad files are values, not errors: every finding over all files is
 * gathered, in the order of paths, lines and columns. A rulebook with a single finding does not load, and neither
 * does one without a rule, so that no point ever passes because nothing was asked. Overlays are looked at only where
 * the rulebook alone has no mistake; the book with them merged in is then checked in the same way.
 *
 * @param files - every YAML (or JSON) file of the folder; files with another ending are passed over
 */
export function loadRulebook(files: readonly TextFile[], options: LoadOptions = {}): RulebookLoading {
  const { root = "", limits = RULEBOOK_LIMITS, over = [] } = options;
  const findings: FileFinding[] = [];
  const stray = manifestIn(files, root, "rulebook") ? null : manifestIn(files, root, "overlay");
  if (stray) {
    const text = "this is an overlay; give it with --over, and the rulebook that it lies over with --rules";
    return { ok: false, findings: [{ file: stray.path, line: 1, column: 1, code: "overlay-as-rulebook", text }] };
  }
  const elsewhere = manifestBelow(files, root);
  if (elsewhere !== null) return { ok: false, findings: [elsewhere] };
  const folder = loadFolder({ root, files, limits, roleOf }, findings);
  if (folder === null) return { ok: false, findings };
  checkIds(folder.loaded);
  const digest = sha256OfData(dataOfFiles(folder.loaded));
  const rulebook = readBook({ ...folder, digest, overlays: [], switchedOff: [], inherited: new Set() }, root, findings);
  if (rulebook === null || findings.length > 0) return { ok: false, findings: findings.sort(byPlace) };
  if (over.length === 0) return { ok: true, rulebook };
  const [manifest] = dataOf<RawManifest>(folder.loaded, "manifest");
  if (!manifest) throw new Error("a rulebook has loaded without a manifest");
  const laid = layOverlays({ ...folder, manifest: manifest.raw }, over, limits, findings);
  checkIds(inheritedFirst(laid));
  const whole = readBook(laid, root, findings);
  if (whole !== null && findings.length === 0) return { ok: true, rulebook: whole };
  return { ok: false, findings: sayWhence(findings, laid.inherited).sort(byPlace) };
}

/** The rulebook alone has no mistake, so what is wrong in its own files was brought about by an overlay. */
function sayWhence(findings: readonly FileFinding[], inherited: ReadonlySet<string>): FileFinding[] {
  return findings.map((finding) =>
    inherited.has(finding.file)
      ? { ...finding, text: `${finding.text} (an overlay brings this about; the rulebook alone is right)` }
      : finding,
  );
}

/** Data of all files of a role whose form is right; the schema vouches for the type. */
function dataOf<T>(loaded: readonly LoadedFile[], role: FileRole): readonly (LoadedFile & { readonly raw: T })[] {
  return loaded
    .filter((file) => file.role === role && file.fits)
    .map((file) => ({ ...file, raw: file.source.data as T }));
}

function readBook(book: LaidBook, root: string, findings: FileFinding[]): Rulebook | null {
  const { roled, loaded } = book;
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
  const wrongIn = (path: string): boolean => findings.some(({ file }) => file === path);
  const rules: Rule[] = [];
  for (const { raw, report, file } of dataOf<RawRule>(loaded, "rule")) {
    const rule = readRule(raw, report, names);
    checkSize(rule, conditions, report);
    // What a rule rests on cannot be said while something in it, or its group, could not be read.
    const group = raw.group === undefined ? null : groups.get(raw.group);
    if (!group || !wrongIn(group.at.file)) checkGroupNames(raw, bookGroups, conditionData, report);
    if (group !== undefined && !wrongIn(file.path) && !(group && wrongIn(group.at.file))) {
      checkRemedy(raw, conditionData, group?.key ?? [], report);
    }
    checkOutcomesInCases(raw, conditionData, report);
    rules.push(rule);
  }
  checkTablesUsed(loaded, tables, roled);
  checkConditionsUsed(book, conditionData, conditionsOfGroups(groupFiles, conditionData), findings);
  const { words, placeOfWord } = joinWords(
    dataOf<RawWords>(loaded, "words").map(({ raw, report, file }) => ({ raw, report, path: file.path })),
  );
  const ways = readWays(dataOf<RawWay>(loaded, "measuring"), words.common);
  if (!manifest) return null;
  const { name, version, language, sets, defaultSet, baselineModel, methods } = manifest.raw;
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
    overlays: book.overlays,
    switchedOff: book.switchedOff,
    digest: book.digest,
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

/**
 * Left alone while a rule, condition or group has mistakes: the name that is missed may be among them. A condition
 * below an overlay may lie idle: the rule that used it is changed or switched off.
 */
function checkConditionsUsed(
  { loaded, inherited }: LaidBook,
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
  for (const { raw, report, file } of dataOf<RawConditionFile>(loaded, "condition")) {
    if (used.has(raw.id) || inherited.has(file.path)) continue;
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

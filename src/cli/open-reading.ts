import { type PlainDay, showText } from "../base/index.js";
import { readTextFile } from "../disk/index.js";
import type { ColumnFile, ColumnGuide, MeasuringWays, WordLists } from "../facts/index.js";
import { wordClashes } from "../records/index.js";
import {
  type AddedWords,
  addWords,
  type FileFinding,
  type PlaceOfWord,
  type Rulebook,
  readColumnFile,
  readWordFile,
  waysOn,
} from "../rulebook/index.js";
import type { ReadingSettled } from "../screening/index.js";
import { LIMIT_NAMES, type ReadingOptions } from "../workbook/index.js";
import { findingOf, rulebookPaths } from "./open-rulebook.js";
import type { ReadingChosen } from "./reading-options.js";

/** Everything that surveys are read with beside the rulebook. */
export interface OpenedReading {
  readonly words: WordLists;
  readonly guide: ColumnGuide;
  readonly options: ReadingOptions;
  /** What the result tells of it. */
  readonly settled: ReadingSettled;
}

/** What surveys are read with, or the mistakes in its files. */
export type ReadingOpening =
  | { readonly ok: true; readonly reading: OpenedReading }
  | { readonly ok: false; readonly findings: readonly FileFinding[] };

/** Every file that a run reads beside the surveys; none is ever written over. */
export async function inputPaths(
  options: Pick<ReadingChosen, "columns" | "words"> & {
    readonly rules?: string | undefined;
    readonly over?: readonly string[] | undefined;
    readonly trust?: readonly string[] | undefined;
    readonly siteFile?: string | undefined;
    readonly deviations?: string | undefined;
  },
): Promise<readonly string[]> {
  const { columns, words, rules, over = [], trust = [], siteFile, deviations } = options;
  const given = [...words, ...trust, columns, siteFile, deviations].filter((path) => path !== undefined);
  return [...(await rulebookPaths(rules ?? null, over)), ...given];
}

/**
 * Opens the column file and the word files of a run.
 *
 * @param asOf - the day on which accuracies of ways of measuring are looked up
 */
export async function openReading(chosen: ReadingChosen, rulebook: Rulebook, asOf: PlainDay): Promise<ReadingOpening> {
  const ways = waysOn(rulebook.ways, asOf);
  const { columns, words } = chosen;
  const findings: FileFinding[] = [];
  const file = columns === undefined ? null : await openColumnFile(columns, ways, findings);
  const added = await openWordFiles(words, rulebook, findings);
  if (findings.length > 0) return { ok: false, findings };
  const { language, decimal, column, limit, encoding, separator } = chosen;
  const guide: ColumnGuide = {
    file,
    language: language === undefined ? null : { value: language, by: "option --language" },
    decimalSign: decimal === undefined ? null : { value: decimal, by: "option --decimal" },
    columns: column.map(({ word }) => word),
  };
  return {
    ok: true,
    reading: {
      words: { ...added.lists, ways },
      guide,
      options: { encoding, separator, limits: Object.fromEntries(limit) },
      settled: {
        columnFile: file === null ? null : { file: file.file, digest: file.digest },
        wordFiles: added.files.map(({ file: path, digest }) => ({ file: path, digest })),
        options: optionsShown(chosen),
      },
    },
  };
}

/** The options as a person writes them. */
function optionsShown({ language, decimal, column, limit, encoding, separator }: ReadingChosen): readonly string[] {
  const plain = { language, decimal, encoding, separator };
  return [
    ...Object.entries(plain).flatMap(([name, value]) => (value === undefined ? [] : [`--${name} ${showText(value)}`])),
    ...column.map(({ text }) => `--column ${showText(text, 400)}`),
    ...limit.map(([key, value]) => `--limit ${LIMIT_NAMES[key]}=${value}`),
  ];
}

async function openColumnFile(path: string, ways: MeasuringWays, findings: FileFinding[]): Promise<ColumnFile | null> {
  const text = await readTextFile(path);
  const reading = text.ok ? readColumnFile(text.file, ways) : { ok: false as const, findings: [findingOf(text.error)] };
  if (reading.ok) return reading.columns;
  findings.push(...reading.findings);
  return null;
}

async function openWordFiles(
  paths: readonly string[],
  rulebook: Rulebook,
  findings: FileFinding[],
): Promise<{ readonly lists: WordLists; readonly files: readonly AddedWords[] }> {
  let lists = rulebook.words;
  const files: AddedWords[] = [];
  const sources: { readonly fields: WordLists["fields"]; readonly placeOfWord: PlaceOfWord }[] = [
    { fields: rulebook.words.fields, placeOfWord: rulebook.placeOfWord },
  ];
  for (const path of paths) {
    const text = await readTextFile(path);
    const reading = text.ok ? readWordFile(text.file) : { ok: false as const, findings: [findingOf(text.error)] };
    if (!reading.ok) {
      findings.push(...reading.findings);
      continue;
    }
    const { words } = reading;
    for (const source of sources) findings.push(...clashesOf(source, words));
    sources.push(words);
    files.push(words);
    lists = addWords(lists, words);
  }
  return { lists, files };
}

/** Words that mean something else already, each with both places. */
function clashesOf(
  known: { readonly fields: WordLists["fields"]; readonly placeOfWord: PlaceOfWord },
  added: AddedWords,
): readonly FileFinding[] {
  const findings = new Map<string, FileFinding>();
  for (const clash of wordClashes(known.fields, added.fields)) {
    const at = added.placeOfWord(clash.added.fact, clash.added.steps);
    const before = (clash.within ? added : known).placeOfWord(clash.known.fact, clash.known.steps);
    if (!at) continue;
    const where = before === null ? "" : ` (${before.file}:${before.line}:${before.column})`;
    const text = `"${showText(clash.word)}" means ${clash.meaning} already${where}; a word means one thing, so leave it out here or change the rulebook`;
    findings.set(JSON.stringify(clash.added.steps.concat(clash.added.fact)), { ...at, code: "word-means-other", text });
  }
  return [...findings.values()];
}

import ExcelJS from "exceljs";
import { nodeInflating } from "../../src/disk/index.js";
import type { ColumnGuide, FactState, SiteStatements } from "../../src/facts/index.js";
import { type Survey, surveyReader } from "../../src/records/index.js";
import { readWorkbook } from "../../src/workbook/index.js";
import { shippedWords } from "./shipped.js";

/** Reads a survey that is written out as CSV in the test. */
export function surveyOfCsv(
  text: string,
  site: SiteStatements | null = null,
  guide: ColumnGuide | null = null,
): Promise<Survey> {
  return surveyOfBytes(new TextEncoder().encode(text), "survey.csv", site, guide);
}

/** Reads a workbook that the test builds. */
export async function surveyOfWorkbook(
  build: (workbook: ExcelJS.Workbook) => void,
  site: SiteStatements | null = null,
  guide: ColumnGuide | null = null,
): Promise<Survey> {
  const workbook = new ExcelJS.Workbook();
  build(workbook);
  return surveyOfBytes(new Uint8Array(await workbook.xlsx.writeBuffer()), "survey.xlsx", site, guide);
}

async function surveyOfBytes(
  bytes: Uint8Array,
  file: string,
  site: SiteStatements | null,
  guide: ColumnGuide | null,
): Promise<Survey> {
  const words = await shippedWords();
  const reading = await readWorkbook(bytes, nodeInflating);
  if (!reading.ok) throw new Error(reading.error.text);
  const survey = surveyReader(words, site, guide).read(reading.workbook, file, "0");
  if (!survey.ok) throw new Error(survey.text);
  return survey.survey;
}

/** A fact as tests write it: the number, the two ends, the word, or the reason why it is unknown in brackets. */
export function plainFact(state: FactState | undefined): unknown {
  if (state === undefined) return "(no fact)";
  if (!state.known) return `(${state.reason})`;
  if (typeof state.value !== "object") return state.value;
  const { lowest, highest } = state.value;
  return lowest === highest ? lowest : [lowest, highest];
}

/** The facts of all rows, in their order, each as tests write it. */
export function plainFacts(survey: Survey, ...facts: readonly string[]): readonly (readonly unknown[])[] {
  return survey.records.map((record) => facts.map((fact) => plainFact(record.facts.get(fact))));
}

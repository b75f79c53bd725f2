import { type Filling, fillMapping, type Mapping, readMapping } from "../../src/handover/index.js";
import { type HandoverFile, handoverFiles, handoverGroup, pointWording } from "../../src/outputs/index.js";
import type { ScreeningOptions } from "../../src/screening/index.js";
import { shippedRulebook } from "../tools/shipped.js";
import { surveyOfCsv } from "../tools/survey-of.js";
import { screenWith } from "../tools/with-deviations.js";

/** A mapping file of these targets (and more), as JSON, which is YAML. */
export function mappingText(targets: readonly object[], more: object = {}): string {
  return JSON.stringify({ mapping: "made", version: "1", title: "a trial", ...more, targets });
}

/** A mapping of one target of points with these columns. */
export function pointsMapping(columns: readonly object[], target: object = {}, more: object = {}): string {
  return mappingText([{ target: "points", columns, ...target }], more);
}

/** Where each finding of a mapping file stands and what it is about; empty where there are none. */
export async function findingsOf(text: string): Promise<readonly string[]> {
  const reading = readMapping({ path: "mapping.yaml", text }, await shippedRulebook());
  return reading.ok ? [] : reading.findings.map(({ line, column, code }) => `${line}:${column} ${code}`);
}

/** The mapping of a file that must be right. */
export async function mappingOf(text: string): Promise<Mapping> {
  const reading = readMapping({ path: "mapping.yaml", text }, await shippedRulebook());
  if (!reading.ok)
    throw new Error(reading.findings.map(({ line, column, text }) => `${line}:${column} ${text}`).join("\n"));
  return reading.mapping;
}

/** Fills a mapping with a survey that is written out as CSV in the test. */
export async function fill(mapping: string, survey: string, options: Partial<ScreeningOptions> = {}): Promise<Filling> {
  const rulebook = await shippedRulebook();
  const { screening } = screenWith(rulebook, [await surveyOfCsv(survey)], null, options);
  return fillMapping(await mappingOf(mapping), screening, pointWording(screening.head), rulebook);
}

/** All files of a filled mapping. */
export async function filesOf(filling: Filling, asOf = "2026-11-25"): Promise<readonly HandoverFile[]> {
  const files: HandoverFile[] = [];
  for (const { target, mapped } of filling.targets) {
    const input = { mapping: filling.mapping, target, mapped, asOf, program: "spotface" };
    for await (const file of handoverFiles(input)) files.push(file);
  }
  return files;
}

/** What describes all tables of a filled mapping together. */
export function groupOf(filling: Filling, isWhole = true, asOf = "2026-11-25"): HandoverFile | null {
  return handoverGroup({ mapping: filling.mapping, targets: filling.targets, asOf, isWhole });
}

/** The text tables of a filled mapping by their names; problems are an error. */
export async function tablesOf(filling: Filling): Promise<ReadonlyMap<string, string>> {
  if (filling.problemCount > 0) throw new Error(JSON.stringify(filling.problems, null, 1));
  const files = await filesOf(filling);
  return new Map(
    files.flatMap(({ name, bytes }) => (name.endsWith(".csv") ? [[name, new TextDecoder("utf-8").decode(bytes)]] : [])),
  );
}

/** What a mapping writes of a survey, or the codes and columns of its problems. */
export async function written(mapping: string, survey: string): Promise<string | readonly string[]> {
  const filling = await fill(mapping, survey);
  if (filling.problemCount > 0) return filling.problems.map(({ column, code }) => `${column}: ${code}`);
  return [...(await tablesOf(filling)).values()].join("");
}

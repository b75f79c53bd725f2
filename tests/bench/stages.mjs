/**
 * Runs the stages of a screening one after the other in this process and prints what each took, milliseconds, as JSON.
 * `node tests/bench/stages.mjs FILE`
 */
import { readFileSync } from "node:fs";

const [file] = process.argv.slice(2);
const taken = [];

/** Runs a stage and notes its time under its name. */
async function timed(name, work) {
  const start = performance.now();
  const result = await work();
  taken.push([name, performance.now() - start]);
  return result;
}

const library = await timed("load the program", () => import("../../dist/index.js"));
const { nodeInflating } = await import("../../dist/disk/index.js");
const { rulebook } = await timed("load the rulebook", () => library.openRulebook(null));
const bytes = readFileSync(file);
const reading = await timed("read the file", () => library.readWorkbook(bytes, nodeInflating));
if (!reading.ok) throw new Error(reading.error.text);
const survey = await timed("understand the survey", () => {
  const read = library.surveyReader(rulebook.words, null).read(reading.workbook, file, "0".repeat(64));
  if (!read.ok) throw new Error(read.text);
  return read.survey;
});
const screening = library.screen({
  program: { name: "spotface", version: "bench" },
  rulebook,
  surveys: [survey],
  skipped: [],
  site: null,
  options: {
    set: "core",
    stage: "proposed",
    asOf: "2026-11-25",
    siteName: "bench",
    allFindings: false,
  },
});
let points = [];
await timed("screen the points", () => {
  // The head is made once for the whole run and belongs to the screening.
  void screening.head;
  points = [...screening.points()];
});
const replayed = { head: screening.head, summary: () => screening.summary(), points: () => points[Symbol.iterator]() };
await timed("write JSON", () => {
  let length = 0;
  for (const piece of library.jsonDocument(replayed)) length += Buffer.byteLength(piece);
  return length;
});
await timed("write the screened workbook", async () => {
  const opened = { file, survey, workbook: reading.workbook };
  const editing = await library.screenedSurvey({ screening, survey: opened, bytes }, nodeInflating);
  if (!editing.ok) throw new Error(editing.reason.text);
  let length = 0;
  for await (const piece of editing.pieces) length += piece.length;
  return length;
});
console.log(JSON.stringify({ taken }));

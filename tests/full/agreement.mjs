/**
 * `npm run agreement`: how far the screening agrees with the surveys whose answers are known, rule by rule and for the
 * verdicts, set core. Ends with exit code 1 if anything disagrees. Needs the build.
 */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { screenFiles } from "../../dist/index.js";

const FOLDER = "tests/data/surveys";
const SURVEYS = ["quillmoor.xlsx", "dunkelforst.xlsx", "tallgrass.csv"];

process.chdir(fileURLToPath(new URL("../../", import.meta.url)));

/** What was expected and what was found for one survey: a list of comparisons by rule or "verdict". */
async function compared(file) {
  const { answers } = JSON.parse(readFileSync(`${FOLDER}/${file.replace(/\.\w+$/, ".answers.json")}`, "utf8"));
  const result = await screenFiles([`${FOLDER}/${file}`], { set: "core", asOf: "2026-11-25", allFindings: true });
  if (!result.ok) throw new Error([...result.findings, ...result.unreadable].map(({ text }) => text).join("\n"));
  const found = new Map();
  for (const point of result.screening.points()) {
    const outcomes = point.findings.map(({ rule, outcome }) => [rule, outcome === "not-applicable" ? "n/a" : outcome]);
    const row = point.sheet === null ? String(point.row) : `${point.sheet}!${point.row}`;
    found.set(point.point, { row, ...Object.fromEntries(outcomes), verdict: point.verdict });
  }
  const comparisons = Object.entries(answers).flatMap(([point, { row, expect }]) =>
    Object.entries({ row, ...expect }).map(([what, expected]) => {
      const got = found.get(point)?.[what] ?? "nothing";
      return { file, point, what, expected, got, agrees: expected === got };
    }),
  );
  const unexpected = [...found.keys()].filter((point) => !(point in answers));
  for (const point of unexpected) {
    comparisons.push({ file, point, what: "row", expected: "no point", got: "a point", agrees: false });
  }
  return comparisons;
}

const all = (await Promise.all(SURVEYS.map(compared))).flat();
const kinds = [...new Set(all.map(({ what }) => what))];
const cells = [["", ...SURVEYS, "all"]];
for (const what of kinds) {
  const counts = [...SURVEYS, null].map((file) => {
    const these = all.filter((one) => one.what === what && (file === null || one.file === file));
    return `${these.filter(({ agrees }) => agrees).length} of ${these.length}`;
  });
  cells.push([what === "row" ? "row found" : what, ...counts]);
}
const widths = cells[0].map((_, i) => Math.max(...cells.map((row) => row[i].length)));
for (const row of cells) {
  console.log(row.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]) : cell.padStart(widths[i]))).join("   "));
}
const wrong = all.filter(({ agrees }) => !agrees);
for (const { file, point, what, expected, got } of wrong) {
  console.log(`${file} ${point} ${what}: expected ${expected}, got ${got}`);
}
console.log(`${all.length - wrong.length} of ${all.length} agree`);
process.exitCode = wrong.length > 0 ? 1 : 0;

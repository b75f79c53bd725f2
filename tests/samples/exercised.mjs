/**
 * `npm run exercised`: screens samples/survey-full.xlsx with every rule at both stages and prints how often each rule
 * passed, warned, failed, was undecided or did not apply. Ends with exit code 1 if a rule lacks an outcome that it can
 * give. Needs the build.
 */
import { fileURLToPath } from "node:url";
import { screenFiles } from "../../dist/index.js";
import { exercisedBy } from "./exercised-rules.mjs";

process.chdir(fileURLToPath(new URL("../../", import.meta.url)));

async function exercisedAt(stage) {
  const options = { set: "full", stage, asOf: "2026-11-25", siteName: "Vellamoor starch works", allFindings: true };
  const run = await screenFiles(["samples/survey-full.xlsx"], options);
  if (!run.ok) throw new Error([...run.findings, ...run.unreadable].map(({ text }) => text).join("\n"));
  for (const _ of run.screening.points());
  const summary = run.screening.summary();
  const { points, pass, warn, fail } = summary;
  console.log(`${stage}: ${points} points, ${pass} pass, ${warn} warn, ${fail} fail`);
  return exercisedBy(run.screening.head, summary);
}

const rows = [...(await exercisedAt("proposed")), ...(await exercisedAt("installed"))].sort((a, b) =>
  a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0,
);
const cells = rows.map(({ rule, stage, counts, lacking }) => [
  rule,
  stage,
  ...Object.values(counts).map(String),
  lacking.length > 0 ? `lacks ${lacking.join(", ")}` : "",
]);
const table = [["rule", "stage", "pass", "warn", "fail", "undecided", "does not apply", ""], ...cells];
const widths = table[0].map((_, i) => Math.max(...table.map((row) => row[i].length)));
for (const row of table) {
  console.log(
    row
      .map((cell, i) => (i < 2 ? cell.padEnd(widths[i]) : i < 7 ? cell.padStart(widths[i]) : cell))
      .join("  ")
      .trimEnd(),
  );
}
const lacking = rows.filter((row) => row.lacking.length > 0);
console.log(`${rows.length - lacking.length} of ${rows.length} rules and stages exercised in full`);
process.exitCode = lacking.length > 0 ? 1 : 0;

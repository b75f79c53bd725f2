import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { openRulebook } from "../../src/cli/open-rulebook.js";
import { nodeInflating } from "../../src/disk/index.js";
import { jsonDocument } from "../../src/outputs/index.js";
import { type Survey, surveyReader } from "../../src/records/index.js";
import { type PointResult, repeatedBy } from "../../src/screening/index.js";
import { readWorkbook } from "../../src/workbook/index.js";
import { screenRows } from "../tools/make-record.js";
import { surveyOfCsv } from "../tools/survey-of.js";

async function surveyIn(path: string): Promise<Survey> {
  const loading = await openRulebook(null);
  if (!loading.ok) throw new Error("the rulebook does not load");
  const reading = await readWorkbook(new Uint8Array(readFileSync(path)), nodeInflating);
  if (!reading.ok) throw new Error(reading.error.text);
  const survey = surveyReader(loading.rulebook.words, null).read(reading.workbook, path, "0");
  if (!survey.ok) throw new Error(survey.text);
  return survey.survey;
}

/** The same survey with facts of which it cannot be told that they are equal, so that every point is judged anew. */
function unshared(survey: Survey): Survey {
  return { ...survey, records: survey.records.map((record) => ({ ...record, facts: new Map(record.facts) })) };
}

/** Rows that say few different things in many combinations, in several cells, and with gaps. */
function madeSurvey(): Promise<Survey> {
  const pick = (from: readonly string[], i: number): string => from[i % from.length] ?? "";
  const rows = Array.from({ length: 400 }, (_, i) =>
    [
      `P-${i}`,
      pick(["1485", "590", "tbc", "", "600 ± 5"], i),
      pick(["no", "yes", "?"], i >> 1),
      pick(["", "500"], i >> 2),
      pick(["cast iron, painted", "sheet steel", "bearing housing", "cooling fin"], i),
      pick(["tapped hole", "bonded pad", ""], i >> 3),
      pick(["15", "14.9", "16 mm", "tbc"], i),
      pick(["24 V DC", "230 V AC", "24"], i >> 1),
    ].join(";"),
  );
  return surveyOfCsv(
    `Point ID;Speed (rpm);Variable speed;Lowest speed (rpm);Mounted on;Mounting method;Hole depth (mm);Supply voltage\n${rows.join("\n")}\n`,
  );
}

describe("a finding that is repeated", () => {
  const surveys: Readonly<Record<string, () => Promise<Survey>>> = {
    "the sample": () => surveyIn("samples/survey.xlsx"),
    "a survey that repeats itself": madeSurvey,
  };
  it.each(Object.keys(surveys))("is the same as one made anew: %s", async (name) => {
    const loading = await openRulebook(null);
    const survey = await surveys[name]?.();
    if (!loading.ok || !survey) throw new Error("nothing to screen");
    for (const allFindings of [false, true]) {
      const options = { allFindings } as const;
      const repeated = screenRows(loading.rulebook, [survey], options);
      const anew = screenRows(loading.rulebook, [unshared(survey)], options);
      expect(repeated.points).toEqual(anew.points);
      expect([...jsonDocument(shown(repeated))].join("")).toBe([...jsonDocument(shown(anew))].join(""));
      const findings = repeated.points.flatMap((point) => point.findings);
      expect(findings.some((finding) => repeatedBy(finding) !== finding)).toBe(true);
      expect(anew.points.flatMap((p) => p.findings).every((finding) => repeatedBy(finding) === finding)).toBe(true);
    }
  });
});

function shown({ screening, points }: ReturnType<typeof screenRows>) {
  const kept: readonly PointResult[] = points;
  return { ...screening, summary: () => screening.summary(), points: () => kept[Symbol.iterator]() };
}

import ExcelJS from "exceljs";
import { describe, expect, it } from "vitest";
import { type BuiltPoint, checkBuilt } from "../../../src/built/index.js";
import { nodeInflating } from "../../../src/disk/index.js";
import { asBuiltWorkbook } from "../../../src/outputs/index.js";
import { type Survey, surveyReader } from "../../../src/records/index.js";
import { readWorkbook } from "../../../src/workbook/index.js";
import { workPacks } from "../../../src/workpacks/index.js";
import { known, surveyOf } from "../../tools/make-record.js";
import { shippedRulebook, shippedWords } from "../../tools/shipped.js";
import { plainFact } from "../../tools/survey-of.js";
import { screenWith } from "../../tools/with-deviations.js";
import { type Row, safePoint, without } from "../../workpacks/made.js";

const rulebook = await shippedRulebook();
const PLACE: Row = {
  asset_tag: known("=P-4101"),
  machine_name: known("Pulp pump 1"),
  component: known("bearing-housing"),
  bearing_position: known("drive-end"),
  direction: known("horizontal"),
};
const PROPOSED = surveyOf([
  safePoint("A", PLACE),
  without(
    safePoint("B", { ...PLACE, bearing_position: known("non-drive-end"), direction: known("axial") }),
    "point_id",
  ),
  safePoint("0017", { ...PLACE, asset_tag: known("17"), mounting_method: known("clamp") }),
]);
/** The clamped point stands alone on its machine, which the rules on groups mind, and clamps work loose. */
const MINDED = ["magnet", "both-bearings", "thrust-axial", "points-per-machine", "radial-directions"];
const { screening } = screenWith(
  rulebook,
  [PROPOSED],
  MINDED.map((rule) => ({ point: "0017", rule })),
  {
    set: "full",
    siteName: "Vellamoor",
  },
);
const packs = workPacks(screening, rulebook);
const bytes = await asBuiltWorkbook(packs, rulebook);

type Filled = Readonly<Record<string, string | number | Date>>;

/** Fills in the sheet as a fitter would: finds the row by what stands in it and the column by its heading. */
async function filledIn(rows: Readonly<Record<number, Filled>>): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.load(bytes.slice().buffer);
  const sheet = workbook.getWorksheet("As built");
  if (!sheet) throw new Error("no sheet");
  const headings = headingsOf(sheet);
  for (const [place, filled] of Object.entries(rows)) {
    for (const [heading, value] of Object.entries(filled)) {
      const column = headings.findIndex((text) => text.startsWith(heading));
      if (column < 0) throw new Error(`no column ${heading} in ${headings.join(", ")}`);
      sheet.getCell(FIRST + Number(place), column + 1).value = value;
    }
  }
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}

const FIRST = 6;

function headingsOf(sheet: ExcelJS.Worksheet): readonly string[] {
  return (sheet.getRow(FIRST - 1).values as readonly unknown[]).slice(1).map(String);
}

async function readBack(file: Uint8Array): Promise<Survey> {
  const reading = await readWorkbook(file, nodeInflating);
  if (!reading.ok) throw new Error(reading.error.text);
  const survey = surveyReader(await shippedWords(), null).read(reading.workbook, "as-built.xlsx", "1".repeat(64));
  if (!survey.ok) throw new Error(survey.text);
  return survey.survey;
}

async function compared(file: Uint8Array): Promise<readonly BuiltPoint[]> {
  const check = checkBuilt({
    program: { name: "spotface", version: "test" },
    rulebook,
    proposed: [PROPOSED],
    built: [await readBack(file)],
    site: null,
    issued: null,
    options: { set: "full", asOf: "2026-11-25", siteName: "Vellamoor" },
  });
  return [...check.points()];
}

const WELL = {
  "Installed on": new Date(Date.UTC(2026, 11, 14)),
  "Installed by": "O. T.",
  Serial: "0012345",
  "Applied torque": 8.2,
  "Hole depth": 16.2,
  "Thread depth": 10.1,
  "Flat diameter": 35,
  "Polarity checked": "yes",
  "Channel checked": "yes",
  "Unused sockets capped": "yes",
  "Voltage at sensor": 23.9,
  "Baseline date": new Date(Date.UTC(2026, 11, 16)),
  "Baseline velocity": 2.1,
  "Baseline acceleration": 6,
  "Load at baseline": 90,
  "Speed at baseline": 1485,
  "Warm and run in": "yes",
  "Velocity with the machine stopped": 0.2,
};

describe("the workbook of work packs", () => {
  it("has a row for every released point, and is read as these without any remark", async () => {
    const survey = await readBack(bytes);
    expect(survey.problems).toEqual([]);
    expect(survey.sheets.map(({ used }) => used)).toEqual([true, false, false]);
    const named = ["point_id", "asset_tag", "machine_name", "component", "bearing_position", "direction"];
    expect(survey.records.map(({ facts }) => named.map((fact) => plainFact(facts.get(fact))))).toEqual([
      ["0017", "17", "Pulp pump 1", "bearing-housing", "drive-end", "horizontal"],
      ["A", "=P-4101", "Pulp pump 1", "bearing-housing", "drive-end", "horizontal"],
      ["(missing)", "=P-4101", "Pulp pump 1", "bearing-housing", "non-drive-end", "axial"],
    ]);
  });

  it("says of each point that it is not built yet as long as nothing is filled in", async () => {
    const points = await compared(bytes);
    expect(points.map(({ status }) => status)).toEqual(["not-built", "not-built", "not-built"]);
  });

  it("is read back at the stage installed: what was done as planned, and what was not", async () => {
    const file = await filledIn({ 1: WELL, 2: { ...WELL, Serial: "0012346", "Applied torque": 12 } });
    const [first, second, third] = await compared(file);
    expect(first).toMatchObject({ status: "matched", recall: false, verdictThen: "pass" });
    expect(first?.differences.map(({ fact }) => fact).sort()).toEqual(["hole_depth", "thread_depth"]);
    expect(first?.turned.filter(({ now }) => now?.outcome === "fail")).toEqual([]);
    expect(second).toMatchObject({ status: "matched", verdictNow: "fail", recall: true });
    const failing = second?.turned.filter(({ now }) => now?.outcome === "fail").map(({ rule }) => rule);
    expect(failing).toEqual(["tightening-torque"]);
    expect(third?.status).toBe("not-built");
    const survey = await readBack(file);
    expect(survey.problems).toEqual([]);
    const facts = ["installed_on", "sensor_serial", "applied_torque", "polarity_checked"];
    expect(facts.map((fact) => plainFact(survey.records[1]?.facts.get(fact)))).toEqual([
      "2026-12-14",
      "0012345",
      8.2,
      true,
    ]);
  });

  it("shows the plan on each cell, checks against the band, and asks nothing that a point does not have", async () => {
    const workbook = new ExcelJS.Workbook();
    await workbook.xlsx.load(bytes.slice().buffer);
    const sheet = workbook.getWorksheet("As built");
    if (!sheet) throw new Error("no sheet");
    const at = (heading: string, row: number) =>
      sheet.getCell(FIRST + row, headingsOf(sheet).findIndex((text) => text.startsWith(heading)) + 1);
    expect(at("Applied torque", 1).dataValidation).toMatchObject({
      type: "custom",
      prompt: expect.stringContaining("Planned: 8 N·m. Allowed: 7.2 to 8.8 N·m."),
      errorStyle: "warning",
    });
    expect(at("Hole depth", 0).dataValidation).toBeUndefined();
    expect(at("Hole depth", 0).value).toBeNull();
  });

  it("carries the cautions, the run and the rulebook, and is the same bytes again", async () => {
    const workbook = new ExcelJS.Workbook();
    await workbook.xlsx.load(bytes.slice().buffer);
    const about = JSON.stringify(workbook.getWorksheet("About")?.getSheetValues());
    expect(about).toContain(packs.cautions[0]);
    expect(about).toContain(packs.basis.run);
    expect(about).toContain(rulebook.digest);
    expect(Buffer.from(await asBuiltWorkbook(packs, rulebook)).equals(Buffer.from(bytes))).toBe(true);
  });
});

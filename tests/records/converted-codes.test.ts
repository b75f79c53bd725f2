import { describe, expect, it } from "vitest";
import { readExample } from "../tools/read-example.js";
import { shippedRulebook } from "../tools/shipped.js";
import { plainFacts, surveyOfCsv, surveyOfWorkbook } from "../tools/survey-of.js";

const { words } = await shippedRulebook();

function read(field: string, heading: string, cell: string | number): unknown {
  const reading = readExample(field, { heading, cell, locale: null, expect: {} }, words);
  if (reading === "heading not matched") throw new Error(`"${heading}" is not matched to ${field}`);
  if (!reading.ok) return reading.code;
  return reading.kind === "word" ? reading.value : reading.interval.lowest;
}

describe("a code that a spreadsheet program made into something else", () => {
  it.each([
    "12-Oct",
    "01-Dec",
    "Dec-01",
    "Jan-28",
    "12. Okt",
    "01. Mrz",
    "Dez 01",
    "12-oct",
    "ene-28",
    "janv-28",
    "12-févr",
    "12.10.2026",
    "10/12/2026",
    "2026-10-12 00:00:00",
    "1.23457E+15",
    "1,23457E+15",
    "2.00E+05",
    "2E+05",
  ])("is seen in the text %s", (cell) => {
    expect(read("point_id", "Point ID", cell)).toBe("looks-converted");
    expect(read("sensor_serial", "S/N", cell)).toBe("looks-converted");
    expect(read("thread", "Thread", cell)).toBe("looks-converted");
    expect(read("flat_diameter", "Flat dia.", cell)).toBe("looks-converted");
  });

  it.each([
    "DEC-01",
    "SEP-12",
    "MAR 12",
    "2E5",
    "12E3",
    "P-2026-01",
    "2026-01",
    "10.12.14",
    "3-4",
    "10-12",
    "1/2",
    "00123",
    "12345678901234567890",
  ])("is not seen in the code %s", (cell) => expect(read("point_id", "Point ID", cell)).toBe(cell));

  it("keeps whole numbers as codes, unless digits are lost", () => {
    expect(read("asset_tag", "Tag", 4711)).toBe("4711");
    expect(read("asset_tag", "Tag", 0)).toBe("0");
    expect(read("asset_tag", "Tag", 999_999_999_999_999)).toBe("999999999999999");
    expect(read("asset_tag", "Tag", 1_000_000_000_000_000)).toBe("looks-converted");
    expect(read("asset_tag", "Tag", 1.5)).toBe("looks-converted");
    expect(read("asset_tag", "Tag", -3)).toBe("looks-converted");
    expect(read("thread", "Thread", "1/4-28")).toBe("1/4-28");
    expect(read("thread", "Thread", "M6x1")).toBe("M6x1");
  });

  it("is seen by the format of the cell, in every field but dates and notes", async () => {
    const day = new Date(Date.UTC(2026, 9, 12));
    const survey = await surveyOfWorkbook((workbook) => {
      const sheet = workbook.addWorksheet("S");
      sheet.addRow(["Point ID", "Machine", "Area", "Thread", "Flat dia.", "Survey date", "Notes"]);
      const row = sheet.addRow([day, day, day, day, day, day, day]);
      for (let i = 1; i <= 7; i++) row.getCell(i).numFmt = i % 2 === 0 ? "dd-mmm" : "d. mmm";
      const scientific = sheet.addRow([200_000, "Pump", "North", "M6", 35, day, "x"]);
      scientific.getCell(1).numFmt = "0.00E+00";
    });
    const facts = ["point_id", "machine_name", "plant_area", "thread", "flat_diameter", "surveyed_on", "notes"];
    const lost = "(unreadable)";
    expect(plainFacts(survey, ...facts)).toEqual([
      [lost, lost, lost, lost, lost, "2026-10-12", "2026-10-12"],
      [lost, "Pump", "North", "M6", 35, "2026-10-12", "x"],
    ]);
    const flat = survey.problems.find(({ code, fact }) => code === "looks-converted" && fact === "flat_diameter");
    expect(flat).toMatchObject({ cell: "E2", heading: "Flat dia." });
    expect(flat?.text).toContain("the date 2026-10-12; type it as text");
  });
});

describe("codes of one width with leading zeros", () => {
  const codes = async (...ids: readonly string[]): Promise<readonly unknown[]> =>
    plainFacts(await surveyOfCsv(`Point ID;Speed rpm\n${ids.map((id) => `${id};1480\n`).join("")}`), "point_id").map(
      ([id]) => id,
    );

  it("show which have lost their zeros", async () => {
    expect(await codes("0012", "0013", "14", "1234", "12345", "P-1")).toEqual([
      "0012",
      "0013",
      "(unreadable)",
      "1234",
      "12345",
      "P-1",
    ]);
    const survey = await surveyOfWorkbook((workbook) => {
      workbook.addWorksheet("S").addRows([
        ["Tag", "Machine", "Speed rpm"],
        ["00123", "Pump", 1480],
        ["00124", "Pump", 1480],
        [125, "Pump", 1480],
      ]);
    });
    expect(plainFacts(survey, "asset_tag")).toEqual([["00123"], ["00124"], ["(unreadable)"]]);
    expect(survey.problems.find(({ code }) => code === "looks-converted")).toMatchObject({ cell: "A4", found: "125" });
  });

  it("say nothing of plain numbers, of a single code, or of widths that differ", async () => {
    expect(await codes("1", "2", "14")).toEqual(["1", "2", "14"]);
    expect(await codes("0012", "14", "15")).toEqual(["0012", "14", "15"]);
    expect(await codes("0012", "00013", "14")).toEqual(["0012", "00013", "14"]);
  });
});

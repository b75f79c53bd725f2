import { describe, expect, it } from "vitest";
import type { KnownFact, SiteStatements } from "../../src/facts/index.js";
import { plainFacts, surveyOfCsv, surveyOfWorkbook } from "../tools/survey-of.js";

describe("the language of numbers", () => {
  it.each([
    ["Messstelle;Maschine;Drehzahl\nM1;Pumpe;1.485\n", 1485],
    ["Point;Machine;Speed\nM1;Pump;1,485\n", 1485],
    ["Point de mesure;Machine;Vitesse\nM1;Pompe;1 485\n", 1485],
    ["Punto de medida;Máquina;Velocidad\nM1;Bomba;1.485\n", 1485],
    ["Point de mesure;Machine;Vitesse\nM1;Pompe;1.485\n", "(unreadable)"],
    // Nothing but a unit tells no language.
    ["MP;RPM;kW\nM1;1.485;11\n", "(unreadable)"],
    ["MP;RPM;kW\nM1;1,485;11\n", "(unreadable)"],
    // Decimals that contradict the language leave the number open.
    ["Messstelle;Maschine;Drehzahl;Lochtiefe\nM1;Pumpe;1.485;15.5\n", "(unreadable)"],
    ["Point;Machine;Speed;Hole depth\nM1;Pump;1.485;15,5\n", "(unreadable)"],
    // The same column written both ways.
    ["Punto;Máquina;Velocidad\nM1;Bomba;1.485\nM2;Bomba;1,485\n", "(unreadable)"],
    // A hundred cells in rpm do not make a Spanish sheet English.
    [
      `Punto;Máquina;Montaje;RPM\n${Array.from({ length: 40 }, (_, i) => `M${i};Bomba;pegado;1.${400 + i} rpm`).join("\n")}\n`,
      1400,
    ],
  ])("%j", async (text, wanted) => {
    expect(plainFacts(await surveyOfCsv(text), "nominal_speed")[0]).toEqual([wanted]);
  });

  it("is settled column by column where two contractors shared a workbook", async () => {
    const survey = await surveyOfWorkbook((workbook) => {
      workbook.addWorksheet("Halle A").addRows([
        ["Messstelle", "Maschine", "Drehzahl"],
        ["M1", "Lüfter", "1.485"],
      ]);
      workbook.addWorksheet("Hall B").addRows([
        ["Point", "Machine", "Speed"],
        ["P1", "Fan", "1,485"],
      ]);
    });
    expect(plainFacts(survey, "nominal_speed")).toEqual([[1485], [1485]]);
    expect(survey.sheets.map(({ language }) => language)).toEqual(["de", "en"]);
  });

  it("plays no part in number cells", async () => {
    const survey = await surveyOfWorkbook((workbook) => {
      workbook.addWorksheet("A").addRows([
        ["Messstelle", "Maschine", "Drehzahl"],
        ["M1", "Lüfter", 1.485],
        ["M2", "Lüfter", 1485],
      ]);
    });
    expect(plainFacts(survey, "nominal_speed")).toEqual([[1.485], [1485]]);
  });
});

describe("speeds", () => {
  it("in hertz are the shaft's, unless they may be the mains' or the drive's", async () => {
    const open = await surveyOfCsv(
      "Point,Machine,Speed,Drive\nP1,P,50 Hz,DOL\nP2,P,24.75 Hz,DOL\nP3,F,25 Hz,VFD\nP4,F,20-50 Hz,VFD\n",
    );
    expect(plainFacts(open, "nominal_speed", "lowest_speed")).toEqual([
      ["(doubtful)", "(no fact)"],
      [1485, "(no fact)"],
      ["(doubtful)", "(no fact)"],
      ["(no fact)", "(doubtful)"],
    ]);
    const shaft = await surveyOfCsv("Point,Machine,Shaft speed (Hz),Drive\nP1,P,50,DOL\nP2,F,24.75,VFD\n");
    expect(plainFacts(shaft, "nominal_speed")).toEqual([[3000], [1485]]);
  });

  it("as a range give the lowest and the highest, and no other field takes a range", async () => {
    const survey = await surveyOfCsv(
      "Point,Machine,Speed,Hole depth\nP1,F,900 … 1500,15-20\nP2,F,600 to 1200 rpm,15\n",
    );
    expect(plainFacts(survey, "lowest_speed", "highest_speed", "hole_depth")).toEqual([
      [900, 1500, "(unreadable)"],
      [600, 1200, 15],
    ]);
  });
});

describe("what the file keeps beside the text", () => {
  it("dates in both systems, percent formats, rich text, results and errors of formulas", async () => {
    for (const date1904 of [false, true]) {
      const survey = await surveyOfWorkbook((workbook) => {
        workbook.properties.date1904 = date1904;
        const sheet = workbook.addWorksheet("A");
        sheet.addRows([
          ["Point", "Machine", "Surveyed on", "Speed", "Load %", "Hole depth"],
          ["P1", "Pump", new Date(Date.UTC(2026, 4, 1)), { richText: [{ text: "14" }, { text: "85 rpm" }] }, 0.85, 0.5],
          [
            "P2",
            "Pump",
            "31.4.26",
            { formula: "A1", result: { error: "#REF!" } },
            "85 %",
            { formula: "9*2", result: 18 },
          ],
          ["P3", "Pump", "3/4/26", new Date(Date.UTC(2026, 2, 15)), 85, "#N/A"],
        ]);
        sheet.getCell("E2").numFmt = "0%";
        sheet.getCell("F2").numFmt = "0%";
      });
      expect(plainFacts(survey, "surveyed_on", "nominal_speed", "baseline_load", "hole_depth")).toEqual([
        ["2026-05-01", 1485, 85, "(unreadable)"],
        ["(unreadable)", "(unreadable)", 85, 18],
        ["(unreadable)", "(unreadable)", 85, "(unreadable)"],
      ]);
    }
  });

  it("codes that the spreadsheet program turned into numbers or dates are not codes", async () => {
    const survey = await surveyOfWorkbook((workbook) => {
      workbook.addWorksheet("A").addRows([
        ["Point", "Machine"],
        [123, "Pump"],
        [1.5, "Pump"],
        [new Date(Date.UTC(2026, 3, 3)), "Pump"],
        ["00123", "Pump"],
      ]);
    });
    expect(plainFacts(survey, "point_id")).toEqual([["123"], ["(unreadable)"], ["(unreadable)"], ["00123"]]);
  });
});

describe("marks for as above", () => {
  it("take the value above, also across a section row, and nothing where nothing stands above", async () => {
    const survey = await surveyOfCsv(
      'Point;Machine;Speed;Torque\nP1;Pump;1485;8\nP2;"""";dito;\nArea B;;;\nP3;ditto;"""";""""\n',
    );
    expect(plainFacts(survey, "machine_name", "nominal_speed", "target_torque")).toEqual([
      ["Pump", 1485, 8],
      ["Pump", 1485, "(missing)"],
      ["Pump", 1485, "(unreadable)"],
    ]);
  });
});

describe("a unit that only the title states", () => {
  it("holds for lengths without one", async () => {
    const survey = await surveyOfCsv(
      "Survey 2026;;;\nAll dimensions in inches;;;\nPoint;Machine;Hole depth;Flat dia (mm)\nP1;Pump;0.75;35\nP2;Pump;18 mm;35\n",
    );
    expect(plainFacts(survey, "hole_depth", "flat_diameter")).toEqual([
      [19.05, 35],
      [18, 35],
    ]);
  });
});

describe("what the site states once", () => {
  const stated = (value: KnownFact["value"], line: number): KnownFact => ({
    known: true,
    value,
    origin: { kind: "statement", file: "site.yaml", line },
  });
  const site: SiteStatements = {
    file: "site.yaml",
    digest: "0",
    siteName: "North",
    wholeSite: new Map([
      ["supply_kind", stated("dc", 1)],
      ["mounting_method", stated("adhesive-pad", 2)],
    ]),
    byMachineType: new Map([["fan", new Map([["mounting_method", stated("clamp", 3)]])]]),
    byMachine: new Map([["F-1", new Map([["mounting_method", stated("magnet", 4)]])]]),
  };

  it("fills empty cells, the narrowest first; any filled cell wins", async () => {
    const survey = await surveyOfCsv(
      [
        "Tag;Machine;Machine type;Mounting",
        "F-1;Fan;fan;",
        "F-2;Fan;fan;",
        "P-1;Pump;pump;",
        "P-2;Pump;pump;tbc",
        "P-3;Pump;pump;?",
        "P-4;Pump;pump;tapped",
        "P-5;Odd;thing;",
      ].join("\n"),
      site,
    );
    expect(plainFacts(survey, "mounting_method", "supply_kind")).toEqual([
      ["magnet", "dc"],
      ["clamp", "dc"],
      ["adhesive-pad", "dc"],
      ["(missing)", "dc"],
      ["(missing)", "dc"],
      ["tapped-hole", "dc"],
      ["adhesive-pad", "dc"],
    ]);
  });
});

describe("words of the trade", () => {
  it("tell the zone of a place from the marking of equipment", async () => {
    const survey = await surveyOfCsv(
      "Point;Machine;Ex zone\nP1;P;II 2G\nP2;P;II 3 D\nP3;P;Zone 2\nP4;P;2\nP5;P;2 or 22\n",
    );
    expect(plainFacts(survey, "hazardous_area")).toEqual([
      ["(doubtful)"],
      ["(doubtful)"],
      ["zone-2"],
      ["zone-2"],
      ["(unreadable)"],
    ]);
  });

  it("keep a model that nobody lists, and say what is blank", async () => {
    const survey = await surveyOfCsv("Point;Machine;Sensor model\nP1;P;example-compact\nP2;P;XQ-9\nP3;P;\nP4;P;tbc\n");
    expect(plainFacts(survey, "sensor_model")).toEqual([["example-compact"], ["XQ-9"], ["(missing)"], ["(missing)"]]);
  });
});

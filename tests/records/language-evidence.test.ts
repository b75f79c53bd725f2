import { describe, expect, it } from "vitest";
import { plainFacts, surveyOfCsv, surveyOfWorkbook } from "../tools/survey-of.js";

const ASKED = "(unreadable)";

describe("the language of a sheet and of its columns", () => {
  it("is found sheet by sheet", async () => {
    const survey = await surveyOfWorkbook((workbook) => {
      workbook.addWorksheet("Nord").addRows([
        ["Messstelle", "Maschine", "Drehzahl", "Bohrtiefe"],
        ["A", "Pumpe", "1.485", "16,5"],
      ]);
      workbook.addWorksheet("South").addRows([
        ["Point ID", "Machine", "Speed", "Hole depth"],
        ["B", "Pump", "1,485", "16.5"],
      ]);
      workbook.addWorksheet("Ouest").addRows([
        ["Repère point", "Machine", "Vitesse", "Prof. perçage"],
        ["C", "Pompe", "1 485", "16,5"],
      ]);
      workbook.addWorksheet("Este").addRows([
        ["Punto", "Máquina", "Velocidad", "Prof. taladro"],
        ["D", "Bomba", "1.485", "16,5"],
      ]);
    });
    expect(survey.sheets.map(({ language }) => language)).toEqual(["de", "en", "fr", "es"]);
    expect(plainFacts(survey, "nominal_speed", "hole_depth")).toEqual([1, 2, 3, 4].map(() => [1485, 16.5]));
  });

  it("is that of the heading where a column differs from its sheet", async () => {
    const text = "Messstelle;Maschine;Werkstoff;Max. Drehzahl;Running speed\nA;Pumpe;Stahl;1.485;1,485\n";
    expect(plainFacts(await surveyOfCsv(text), "highest_speed", "nominal_speed")).toEqual([[1485, 1485]]);
  });

  it("is doubted where the numbers of column or sheet say else", async () => {
    const english =
      "Messstelle;Maschine;Werkstoff;Running speed;Bohrtiefe\nA;Pumpe;Stahl;1.485;16,5\nB;Pumpe;Stahl;990;17\n";
    expect(plainFacts(await surveyOfCsv(english), "nominal_speed")).toEqual([[ASKED], [990]]);
    const mixed = "Messstelle;Maschine;Drehzahl;Hole depth\nA;Pumpe;1.485;16.5\nB;Pumpe;1480,5;17\n";
    expect(plainFacts(await surveyOfCsv(mixed), "nominal_speed")).toEqual([[1485], [1480.5]]);
    const points = "Messstelle;Maschine;Drehzahl;Hole depth\nA;Pumpe;1.485;16.5\nB;Pumpe;1480.5;17\n";
    expect(plainFacts(await surveyOfCsv(points), "nominal_speed")).toEqual([[ASKED], [1480.5]]);
  });

  it("is read with decimal points where a Spanish file shows them, and asked for where it shows nothing", async () => {
    const read = async (speed: string, depth: string): Promise<unknown> =>
      plainFacts(
        await surveyOfCsv(`Tag equipo;Velocidad;Prof. taladro\nA;${speed};${depth}\nB;${speed};17\n`),
        "nominal_speed",
      )[0]?.[0];
    expect(await read("1,485", "16.5")).toBe(1485);
    expect(await read("1.485", "16,5")).toBe(1485);
    expect(await read("1.485", "16.5")).toBe(ASKED);
    expect(await read("1,485", "16")).toBe(ASKED);
    expect(await read("1,485", "16,5")).toBe(ASKED);
  });
});

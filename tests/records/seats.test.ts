import { describe, expect, it } from "vitest";
import { plainFacts, surveyOfCsv } from "../tools/survey-of.js";

async function seat(headings: string, cells: string): Promise<readonly unknown[]> {
  const survey = await surveyOfCsv(`${headings};Torque\n${cells};8\n`);
  const [row] = plainFacts(survey, "mounted_on", "surface_material", "surface_finish");
  return row ?? [];
}

describe("a place that is no solid seat, named in another column", () => {
  it.each([
    ["Point;Component;Surface", "P1;fan cover;cast iron", "fan-cover"],
    ["Point;Location;Material", "P1;coupling guard;cast iron", "guard"],
    ["Point;Position;Material", "P1;NDE cowl;cast iron", "fan-cover"],
    ["Point;Machine;Material", "Motor NDE, cooling fin;Pump;cast iron", "cooling-fin"],
    ["Messstelle;Bauteil;Werkstoff", "P1;Lüfterhaube;Grauguss", "fan-cover"],
    ["Punto;Parte;Material de la carcasa", "P1;tapa ventilador;fundición", "fan-cover"],
    ["Point de mesure;Organe;Matière carter", "P1;capot ventilateur;fonte", "fan-cover"],
    ["Point;Component;Mounted on", "P1;fan cover;bearing housing", "(conflicting)"],
    ["Point;Component;Material", "P1;fan cover?;cast iron", "(doubtful)"],
  ])("%s: %s", async (headings, cells, place) => {
    expect((await seat(headings, cells))[0]).toBe(place);
  });

  it("takes no solid place from there, and no short word in a name", async () => {
    expect(await seat("Point;Component;Surface", "P1;bearing housing;painted")).toEqual([
      "absent",
      "absent",
      "painted",
    ]);
    expect((await seat("Point;Location;Material", "P1;Paint hood 3;cast iron"))[0]).toBe("absent");
  });
});

describe("coatings and places that leave the seat open", () => {
  it.each([
    ["Surface", "housing, coated"],
    ["Surface", "steel chromed"],
    ["Surface", "anodised aluminium"],
    ["Surface", "Lagergehäuse beschichtet"],
    ["Oberfläche", "Lagergehäuse eloxiert"],
    ["Oberfläche", "Lagergehäuse, Epoxid"],
    ["Superficie", "acero cromado"],
    ["Surface de montage", "carter anodisé"],
    ["Coating", "coated"],
    ["Coating", "yes"],
    ["Beschichtung", "beschichtet"],
  ])("coated, under %s: %s", async (heading, cell) => {
    expect((await seat(`Point;${heading}`, `P1;${cell}`))[2]).toBe("coated");
  });

  it.each(["steel shroud", "air duct", "noise enclosure", "acoustic hood", "handrail", "Schallhaube", "Geländer"])(
    "a loose structure: %s",
    async (cell) => {
      expect((await seat("Point;Surface", `P1;${cell}`))[0]).toBe("guard");
    },
  );

  it.each([
    "Deckel, Guss",
    "housing near coupling",
    "Gehäuse neben Kupplung",
    "junto a la carcasa",
    "à côté du palier",
  ])("an open place: %s", async (cell) => {
    expect((await seat("Point;Surface", `P1;${cell}`))[0]).toBe("(unreadable)");
  });
});

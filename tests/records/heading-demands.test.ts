import { describe, expect, it } from "vitest";
import { readExample } from "../tools/read-example.js";
import { shippedRulebook } from "../tools/shipped.js";
import { plainFacts, surveyOfCsv } from "../tools/survey-of.js";

const { words } = await shippedRulebook();

function read(field: string, heading: string, cell = "16"): unknown {
  const reading = readExample(field, { heading, cell, locale: "en", expect: {} }, words);
  if (reading === "heading not matched") return null;
  return reading.ok && reading.kind === "number" ? reading.interval.lowest : reading;
}

describe("a heading that says what is demanded", () => {
  it.each([
    ["hot_work_allowed", "Hot work permit"],
    ["hot_work_allowed", "Hot work permit required"],
    ["hot_work_allowed", "Hot work needed"],
    ["hot_work_allowed", "Schweißerlaubnis"],
    ["hot_work_allowed", "Feuererlaubnis erforderlich"],
    ["hot_work_allowed", "Permiso de fuego"],
    ["hot_work_allowed", "Permis de feu requis"],
    ["isolation_possible", "LOTO required"],
    ["isolation_possible", "Freischaltung erforderlich"],
    ["isolation_possible", "Consignation nécessaire"],
    ["sensor_certified", "Certified sensor required"],
    ["sensor_certified", "Ex-Zulassung Sensor erforderlich"],
    ["maker_consent", "Maker's consent required"],
    ["maker_consent", "Herstellerfreigabe erforderlich"],
    ["speed_reference", "Speed signal required"],
    ["speed_reference", "Drehzahlsignal erforderlich"],
    ["speed_reference", "Señal de velocidad necesaria"],
    ["speed_reference", "Capteur de vitesse requis"],
    ["drip_loop", "Drip loop required"],
  ])("is not taken for leave or a precaution that is there: %s, %s", (field, heading) => {
    expect(read(field, heading, "yes")).toBeNull();
  });

  it.each([
    ["hot_work_allowed", "Hot work permitted", "allowed"],
    ["hot_work_allowed", "Heißarbeiten erlaubt", "allowed"],
    ["isolation_possible", "LOTO possible", true],
    ["sensor_certified", "Certified sensor", true],
    ["maker_consent", "Maker's consent", true],
    ["speed_reference", "Speed signal", "unspecified"],
    ["drip_loop", "Drip loop", true],
  ])("is told from one that says what is there: %s, %s", (field, heading, value) => {
    expect(read(field, heading, "yes")).toMatchObject({ value });
  });

  it.each([
    ["hole_depth", "Hole depth required"],
    ["hole_depth", "Hole depth (required)"],
    ["hole_depth", "Min. hole depth"],
    ["hole_depth", "Hole depth (min) [mm]"],
    ["hole_depth", "Bohrtiefe erforderlich [mm]"],
    ["hole_depth", "Mindestbohrtiefe"],
    ["hole_depth", "Profundidad de taladro requerida"],
    ["hole_depth", "Profondeur de perçage requise"],
    ["hole_depth", "Hole depth (incl. drill point)"],
    ["hole_depth", "Bohrtiefe inkl. Bohrspitze"],
    ["thread_depth", "Gewindetiefe (soll)"],
    ["thread_depth", "Required thread depth"],
    ["flat_diameter", "Flat area required"],
    ["target_torque", "Max. torque"],
    ["target_torque", "Torque (max)"],
    ["target_torque", "Max. Anzugsmoment [Nm]"],
    ["target_torque", "Couple de serrage maxi"],
    ["supply_voltage", "Required supply voltage"],
  ])("is not taken for what is there: %s, %s", (field, heading) => expect(read(field, heading)).toBeNull());

  it.each([
    ["hole_depth", "Hole depth available"],
    ["hole_depth", "Hole depth planned"],
    ["hole_depth", "Hole depth (min. 15 mm)"],
    ["hole_depth", "Hole depth ≥ 15"],
    ["hole_depth", "Hole depth without drill point"],
    ["hole_depth", "Hole depth min. 15"],
    ["hole_depth", "Kernloch [mm]"],
    ["flat_diameter", "Flat area (min. Ø 30 mm)"],
    ["target_torque", "Anzug [Nm]"],
    ["target_torque", "Torque required"],
    ["thread_depth", "Thread depth of foot"],
    ["thread_depth", "Thread depth (foot)"],
    ["cure_time", "Wartezeit [min]"],
    ["lowest_speed", "Speed (min)"],
    ["lowest_speed", "Drehzahl (min.) [1/min]"],
    ["lowest_speed", "Velocidad (mín)"],
    ["highest_speed", "Vitesse (maxi)"],
    ["highest_speed", "Speed [max]"],
  ])(
    "is told from one that a form adds its limit to, or that asks for a limit of its own: %s, %s",
    (field, heading) => {
      expect(read(field, heading)).toBe(16);
    },
  );

  it("is told to the user, with the field that its words name", async () => {
    const survey = await surveyOfCsv("Point;Machine;Hole depth required;Foo\nA;Pump;15;1\n");
    expect(survey.columns.map(({ why }) => why).slice(2)).toEqual([
      "some words mean hole depth, but the heading asks for something else, or for what is demanded",
      "heading not known",
    ]);
    expect(survey.problems.filter(({ code }) => code === "unknown-heading").map(({ cell }) => cell)).toEqual([
      "C1",
      "D1",
    ]);
  });

  it("leaves the column that says what is there beside it", async () => {
    const text = "Point;Hole depth required;Hole depth available;Speed (min);Speed (max)\nA;15;12;900;1800\n";
    expect(plainFacts(await surveyOfCsv(text), "hole_depth", "lowest_speed", "highest_speed")).toEqual([
      [12, 900, 1800],
    ]);
  });
});

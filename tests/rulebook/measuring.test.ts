import { describe, expect, it } from "vitest";
import { accuracyOfWay, factOf, SURVEY_FACTS } from "../../src/facts/index.js";
import { columnOption, loadRulebook, readColumnFile, readSiteFile, waysOn } from "../../src/rulebook/index.js";
import { shippedFiles, shippedRulebook, shippedWords } from "../tools/shipped.js";
import { smallFiles } from "./small-book.js";

const rulebook = await shippedRulebook();
const { ways = new Map() } = await shippedWords();

/** Place and code of every mistake. */
function placed(
  reading: { ok: true } | { ok: false; findings: readonly { line: number; column: number; code: string }[] },
) {
  return reading.ok ? [] : reading.findings.map(({ line, column, code }) => `${line}:${column} ${code}`);
}

describe("the ways of measuring that come with the program", () => {
  it("measure something that surveys hold, each with a source", () => {
    expect(rulebook.ways.size).toBeGreaterThan(12);
    for (const [id, way] of ways) {
      const measured = SURVEY_FACTS.filter((fact) => typeof accuracyOfWay(way, fact) === "object");
      expect(measured.length, id).toBeGreaterThan(0);
      expect(rulebook.ways.get(id)?.citations.size, id).toBeGreaterThan(0);
      expect(
        measured.every(({ kind }) => kind === "quantity"),
        id,
      ).toBe(true);
    }
  });

  it("have no word that is common beside numbers, whatever they measure", async () => {
    const files = (await shippedFiles()).map((file) =>
      file.path.endsWith("/caliper.yaml") ? { ...file, text: file.text.replace('"vernier"]', '"circa"]') } : file,
    );
    const loading = loadRulebook(files, { root: "rules" });
    expect(loading).toMatchObject({
      ok: false,
      findings: [
        { file: "rules/measuring/caliper.yaml", code: "word-twice", text: expect.stringContaining("(about)") },
      ],
    });
  });

  it("give their accuracy in the unit of the fact", () => {
    const rule = ways.get("steel-rule");
    const thermometer = ways.get("contact-thermometer");
    if (!rule || !thermometer) throw new Error("not there");
    expect(accuracyOfWay(rule, factOf("cable_length"))).toMatchObject({ accuracy: { plusMinus: 0.0005, percent: 0 } });
    expect(accuracyOfWay(thermometer, factOf("surface_temperature"))).toMatchObject({
      accuracy: { plusMinus: 2, percent: 0 },
      words: "± 2 °C of a contact thermometer",
    });
    expect(accuracyOfWay(rule, factOf("target_torque"))).toBe("cannot-measure");
    expect(accuracyOfWay(rule, factOf("blade_count"))).toBe("cannot-measure");
  });

  it("have none on a day before any is in force", () => {
    const before = waysOn(rulebook.ways, "2025-12-31").get("caliper");
    if (!before) throw new Error("not there");
    expect(accuracyOfWay(before, factOf("hole_depth"))).toBe("not-in-force");
  });

  it("take the value of the day", () => {
    const text = `id: rule
title: "rule"
measures:
  length:
    - { from: 2026-01-01, until: 2027-01-01, plusMinus: 0.5 mm, cites: [half] }
    - { from: 2027-01-01, until: null, percent: 1, cites: [half] }
citations:
  half: { basis: common-practice, says: "half a division" }
`;
    const loading = loadRulebook(smallFiles({ "measuring/rule.yaml": text }));
    if (!loading.ok) throw new Error(JSON.stringify(loading.findings));
    const on = (day: string) => waysOn(loading.rulebook.ways, day).get("rule")?.accuracies.get("length");
    expect(on("2026-12-31")).toMatchObject({ plusMinus: 0.5, percent: 0 });
    expect(on("2027-01-01")).toMatchObject({ plusMinus: 0, percent: 1 });
  });
});

describe("an accuracy in a column file", () => {
  const column = (more: string): string => `columns: [{ heading: "a", ${more} }]`;
  it.each([
    ["without a unit", "fact: hole_depth, accuracy: ▶0.5", "no-unit"],
    ["in a unit of something else", "fact: hole_depth, accuracy: ▶0.5 V", "wrong-dimension"],
    ["that is no number", "fact: hole_depth, accuracy: ▶good", "bad-accuracy"],
    ["below nothing", "fact: hole_depth, accuracy: ▶-1 mm", "bad-accuracy"],
    ["in wire gauge", "fact: conductor_size, accuracy: ▶1 AWG", "bad-accuracy"],
    ["in percent of a temperature", "fact: surface_temperature, accuracy: ▶2 %", "bad-accuracy"],
    ["of a choice", "fact: mounting_method, accuracy: ▶1 mm", "not-measured"],
    ["of a count", "fact: blade_count, accuracy: ▶2 %", "not-measured"],
    ["of a column that is not read", "fact: ignore, ▶accuracy: 1 mm", "not-needed"],
    ["by a way that is not there", "fact: hole_depth, measuredBy: ▶calliper", "unknown-way"],
    ["by a way that cannot measure it", "fact: target_torque, measuredBy: ▶caliper", "way-does-not-fit"],
    ["by a way for another fact", "fact: hole_depth, measuredBy: ▶roughness-plate", "way-does-not-fit"],
    ["said twice", "fact: hole_depth, accuracy: 1 mm, ▶measuredBy: caliper", "said-twice"],
  ])("%s is a mistake at its place", (_name, more, code) => {
    const at = column(more).indexOf("▶") + 1;
    const text = column(more.replace("▶", ""));
    expect(placed(readColumnFile({ path: "c.yaml", text }, ways))).toEqual([`1:${at} ${code}`]);
  });

  it("names what was probably meant, and what could measure it", () => {
    const sentence = (more: string): string => {
      const reading = readColumnFile({ path: "c.yaml", text: column(more) }, ways);
      return reading.ok ? "" : (reading.findings[0]?.text ?? "");
    };
    expect(sentence("fact: hole_depth, measuredBy: calliper")).toContain('did you mean "caliper"?');
    expect(sentence("fact: target_torque, measuredBy: caliper")).toBe(
      'a caliper does not measure "target_torque", a torque; name one that does: torque-wrench',
    );
  });

  it("is an amount, or a share of the value", () => {
    const text = `columns:
  - { heading: "a", fact: hole_depth, accuracy: "0.02 in" }
  - { heading: "b", fact: supply_voltage, accuracy: 2 % }
  - { heading: "c", fact: speed_change, accuracy: 2 % }
  - { heading: "d", fact: hole_depth, measuredBy: tape-measure }
`;
    const reading = readColumnFile({ path: "c.yaml", text }, ways);
    if (!reading.ok) throw new Error(JSON.stringify(reading.findings));
    expect(reading.columns.columns.map(({ accuracy }) => accuracy?.accuracy)).toEqual([
      { plusMinus: 0.508, percent: 0 },
      { plusMinus: 0, percent: 2 },
      { plusMinus: 2, percent: 0 },
      { plusMinus: 1, percent: 0.1 },
    ]);
  });
});

describe("an accuracy in an option", () => {
  it.each([
    ["Loch=hole_depth mm ±0.5", 0.5],
    ["Loch=hole_depth in +/- 0.02", 0.508],
    ["Loch=hole_depth ±0.5 mm", 0.5],
  ])("reads %s", (text, plusMinus) => {
    expect(columnOption(text)).toMatchObject({ ok: true, word: { accuracy: { accuracy: { plusMinus } } } });
  });

  it.each([
    ["Loch=hole_depth ±0.5", /has no unit/],
    ["Loch=hole_depth mm ±0,5", /is no accuracy/],
    ["Loch=hole_depth mm ±", /is no accuracy/],
    ["Loch=ignore ±0.5 mm", /write it as/],
    ["Art=mounting_method ±0.5", /is not measured/],
  ])("refuses %s", (text, like) => {
    expect(columnOption(text)).toMatchObject({ ok: false, text: expect.stringMatching(like) });
  });
});

describe("a way of measuring in a site file", () => {
  const site = (text: string) => readSiteFile({ path: "site.yaml", text }, rulebook.models, ways);

  it.each([
    ["that is not there", "measuredBy: { hole_depth: calliper }", "1:27 unknown-way"],
    [
      "that cannot measure it",
      "machines: { P-1: { measuredBy: { target_torque: caliper } } }",
      "1:49 way-does-not-fit",
    ],
    ["of what is not measured", "measuredBy: { direction: caliper }", "1:15 unknown-key"],
    ["of nothing", "machineTypes: { pump: { measuredBy: {} } }", "1:37 too-few-keys"],
    ["among what the whole site states", "states: { measuredBy: { hole_depth: caliper } }", "1:11 unknown-key"],
  ])("%s is a mistake at its place", (_name, text, mistake) => {
    expect(placed(site(text))).toEqual([mistake]);
  });

  it("may stand alone", () => {
    const reading = site(
      "measuredBy: { hole_depth: caliper }\nmachines: { P-1: { measuredBy: { hole_depth: steel-rule } } }",
    );
    if (!reading.ok) throw new Error(JSON.stringify(reading.findings));
    const { wholeSite, byMachine } = reading.statements.measuredBy ?? {};
    expect(wholeSite?.get("hole_depth")?.way).toBe("caliper");
    expect(byMachine?.get("P-1")?.get("hole_depth")?.way).toBe("steel-rule");
  });
});

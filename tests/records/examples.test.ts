import { existsSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type FieldWords, factOf } from "../../src/facts/index.js";
import { asExpected, type Example, readExample } from "../tools/read-example.js";
import { projectPath, shippedWords } from "../tools/shipped.js";

const words = await shippedWords();

/** Numbers agree within 1e-6, all else exactly. */
function expectRead(field: string, example: Example): void {
  const reading = readExample(field, example, words);
  if (reading === "heading not matched") throw new Error(`"${example.heading}" is not matched to ${field}`);
  const { expect: wanted } = example;
  const found = asExpected(reading, wanted);
  expect(Object.keys(found).sort()).toEqual(
    Object.keys(wanted)
      .filter((key) => key !== "unit" || wanted[key] !== null)
      .sort(),
  );
  for (const [key, value] of Object.entries(wanted)) {
    if (typeof value === "number")
      expect(Math.abs(Number(found[key]) - value)).toBeLessThanOrEqual(1e-6 * Math.abs(value));
    else if (key !== "unit" || value !== null) expect(found[key]).toEqual(value);
  }
}

describe.each([...words.fields] as [string, FieldWords][])("examples of %s", (field, { examples = [] }) => {
  it.each(examples.map((example) => [JSON.stringify(example.cell), example.heading, example] as const))(
    "%s under %s",
    (_cell, _heading, example) => expectRead(field, example),
  );
  it("are in the unit of the field", () => {
    const definition = factOf(field);
    for (const { expect: wanted } of examples) {
      if (typeof wanted.unit === "string") expect(wanted.unit).toBe(definition.unit);
    }
  });
});

const NOTES = projectPath("../shared/domain/columns.json");

// The notes of the trade that the word lists began from; held against them where they are at hand. Two examples
// there round the factor of the wire gauge to five digits, which is 2.5e-5 away from its definition (ASTM B258).
describe.skipIf(!existsSync(NOTES))("the notes that the word lists began from", () => {
  const notes = existsSync(NOTES)
    ? (JSON.parse(readFileSync(NOTES, "utf8")) as { fields: { id: string; examples: Example[] }[] })
    : { fields: [] };
  const all = notes.fields.flatMap(({ id, examples }) => examples.map((example) => ({ id, example })));
  const gauge = all.filter(({ example }) => /AWG/.test(`${example.heading} ${example.cell}`));
  it.each(
    all.filter((one) => !gauge.includes(one)).map((one) => [one.id, JSON.stringify(one.example.cell), one] as const),
  )("%s %s", (_id, _cell, { id, example }) => expectRead(id, example));
  it("differ in the wire gauge by less than 3e-5", () => {
    expect(gauge).toHaveLength(2);
    for (const { id, example } of gauge) {
      const reading = readExample(id, example, words);
      const value =
        reading !== "heading not matched" && reading.ok && reading.kind === "number"
          ? reading.interval.lowest
          : Number.NaN;
      expect(Math.abs(value / Number(example.expect.value) - 1)).toBeLessThan(3e-5);
    }
  });
});

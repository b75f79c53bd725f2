import { describe, expect, it } from "vitest";
import { movedBook, type NumberPlace, placesIn, type Stretch } from "../../src/moving/index.js";
import { loadRulebook, type Rulebook } from "../../src/rulebook/index.js";
import type { ScreeningInput } from "../../src/screening/index.js";
import { known, surveyOf } from "../tools/make-record.js";
import { readTestSurvey, shippedFiles, shippedRulebook } from "../tools/shipped.js";
import { inputOf, movedIn, SURVEYS, screenedCounts } from "./moved.js";

/** The shipped rulebook with one text in one file replaced, read as a person would have it read. */
async function bookWith(file: string, from: string, to: string): Promise<Rulebook> {
  const files = (await shippedFiles()).map((one) => {
    if (one.path !== `rules/${file}`) return one;
    if (!one.text.includes(from)) throw new Error(`${file} holds no "${from}"`);
    return { ...one, text: one.text.replace(from, to) };
  });
  const loading = loadRulebook(files, { root: "rules" });
  if (!loading.ok) throw new Error(loading.findings.map(({ text }) => text).join("\n"));
  return loading.rulebook;
}

/** Every number of every rule of single points with a run that asks the rule; at the second stage only what the first one does not ask. */
async function* everyNumber(rulebook: Rulebook) {
  const surveys = await Promise.all(SURVEYS.slice(0, 2).map((path) => readTestSurvey(path)));
  for (const stage of ["proposed", "installed"] as const) {
    const input = await inputOf(rulebook, { set: "full", stage }, surveys);
    for (const rule of rulebook.rules) {
      if (rule.group !== null || (stage === "installed" && rule.stages.includes("proposed"))) continue;
      for (const place of placesIn(rule, input.options)?.places ?? []) yield { input, rule, place };
    }
  }
}

/** The first model that states the value that a bound is. */
function modelStating(rulebook: Rulebook, { bound }: NumberPlace): string {
  const found = [...rulebook.models.values()].find(({ facts }) => bound.kind === "fact" && facts.has(bound.fact));
  if (!found) throw new Error(`no model states ${JSON.stringify(bound)}`);
  return found.id;
}

function holds({ from, fromIncluded, to, toIncluded }: Stretch, value: number): boolean {
  return (fromIncluded ? from <= value : from < value) && (toIncluded ? value <= to : value < to);
}

/** [rule, number, model, file, text to replace, the text with another value, values] */
const EDITS = [
  ["adhesive-cure", "fail below", null, "bond/adhesive-cure.yaml", "below: 15 min", "below: # min", [5, 12, 20]],
  ["seat-diameter", "fail below", "baseline", "models/baseline.yaml", "value: 30 mm", "value: # mm", [29.5, 31, 36]],
  ["thread-depth", "fail below", "baseline", "models/baseline.yaml", "value: 9 mm", "value: # mm", [8.9, 12]],
  ["min-speed", "fail atOrBelow", "baseline", "models/baseline.yaml", "600 r/min", "# r/min", [300, 1480]],
  ["supply-voltage", "fail outside low", "baseline", "models/baseline.yaml", "20.4 V", "# V", [18, 24]],
  ["flat-margin", "warn below", null, "seat/flat-margin.yaml", "times: 1.1 ", "times: # ", [1.2, 1.5]],
  ["seat-roughness", "warn above", null, "seat/seat-roughness.yaml", "above: 1.6 µm", "above: # µm", [0.8, 3.2]],
] as const;

describe("a limit that is moved", () => {
  it.each(EDITS)("counts what screening with such a file counts: %s, %s of %s", async (...edit) => {
    const [rule, bound, model, file, from, to, values] = edit;
    const input = await inputOf(await shippedRulebook(), { set: "full" });
    let different = 0;
    for (const value of values) {
      const book = await bookWith(file, from, to.replace("#", String(value)));
      const moved = movedIn(input, rule, { bound, model, from: value, to: value + 1, step: 1 });
      const [{ rule: counts, points } = { rule: null, points: null }] = moved.steps;
      expect({ value, rule: counts, points }).toEqual({ value, ...screenedCounts(input, book, rule) });
      const now = moved.steps.find((step) => step.inForce);
      if (now === undefined || JSON.stringify(now.rule) !== JSON.stringify(counts)) different += 1;
    }
    expect(different).toBeGreaterThan(0);
  });

  it("counts it for every number of every rule of the full set, in steps and between them", async () => {
    const rulebook = await shippedRulebook();
    let [numbers, moving] = [0, 0];
    for await (const { input, rule, place } of everyNumber(rulebook)) {
      numbers += 1;
      const model = place.moves === "model value" ? modelStating(rulebook, place) : null;
      const moved = movedIn(input, rule.id, { bound: place.name, model });
      for (const { value, rule: counts, points } of moved.steps) {
        const held = moved.stretches.filter((stretch) => holds(stretch, value));
        expect(held.map(({ counted }) => counted)).toEqual([{ rule: counts, points }]);
      }
      if (moved.stretches.length > 1) moving += 1;
      // Screening is slow beside it: of some numbers, the value at which most has moved.
      const last = moved.steps.at(numbers % 2 === 0 ? 0 : -1);
      if (!last || numbers % 5 !== 0) continue;
      const sensor = model === null ? null : (rulebook.models.get(model) ?? null);
      const book = movedBook(rulebook, { rule, place, model: sensor }, last.value, input.options.asOf);
      expect({ rule: last.rule, points: last.points }).toEqual(screenedCounts(input, book, rule.id));
    }
    expect(numbers).toBeGreaterThan(100);
    expect(moving).toBeGreaterThan(30);
  }, 120_000);

  it("asks a rule again that is only left out because no row decides it", async () => {
    const rulebook = await shippedRulebook();
    const rows = [350, 400, 420].map((distance) => ({ distance_to_bearing: known(distance) }));
    const input: ScreeningInput = await inputOf(rulebook, { set: "full" }, [surveyOf(rows)]);
    const moved = movedIn(input, "distance-to-bearing", {
      bound: "fail when distance_to_bearing greaterThan",
      from: 300,
      to: 500,
      step: 50,
    });
    expect(moved.steps.map(({ value, rule }) => [value, rule.notAsked, rule.warn, rule.undecided])).toEqual([
      [300, 3, 0, 0],
      [350, 0, 1, 2],
      [400, 0, 2, 1],
      [450, 0, 3, 0],
      [500, 0, 3, 0],
    ]);
    const rule = moved.rule;
    for (const { value, rule: counts, points } of moved.steps) {
      const book = movedBook(rulebook, { rule, place: moved.place, model: null }, value, input.options.asOf);
      expect({ rule: counts, points }).toEqual(screenedCounts(input, book, rule.id));
    }
  });
});

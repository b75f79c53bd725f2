import { expect, it } from "vitest";
import { fuzz } from "./fuzzing.js";

/** The full tests do the same with very many more. */
it("answers every damaged file with cells or a sentence, and hides no damage", async () => {
  const tally = await fuzz([1, 600]);
  expect(tally.opened).toBeGreaterThan(50);
  expect(tally.refused).toBeGreaterThan(200);
  expect(tally.codes.size).toBeGreaterThan(8);
});

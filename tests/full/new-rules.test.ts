import { describe, it } from "vitest";
import { bandsFor, bookWithoutRules, JUDGEABLE, provenRule } from "../proving/asked-rules.js";

const load = await bookWithoutRules();

describe("a new rule on every fact, with every kind of limit that fits it", () => {
  it.each(JUDGEABLE.map((definition) => [definition.id, definition] as const))("%s", (_id, definition) => {
    for (const band of bandsFor(definition)) provenRule(load, { judges: definition.id, fails: [band] });
  });
});

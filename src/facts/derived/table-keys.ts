import type { DerivedDefinition } from "../definition.js";
import { derivedIn } from "./entry.js";

/** Choices made of what a survey says, by which tables are looked up. */
export const TABLE_KEY_DERIVED: readonly DerivedDefinition[] = [
  key(
    "bolt_steel",
    "steel of the bolt",
    ["carbon-steel", "austenitic-stainless"],
    "bolt_class",
    "austenitic where the class begins with A, else carbon steel",
  ),
  key(
    "bolt_size",
    "size of the thread",
    ["up-to-16-mm", "16-to-24-mm", "24-to-39-mm"],
    "thread",
    "by the diameter of the thread",
  ),
  key(
    "conductor_listed",
    "nominal size of the conductor",
    ["0.5-mm2", "0.75-mm2", "1-mm2", "1.5-mm2", "2.5-mm2", "4-mm2", "6-mm2", "10-mm2", "not-listed"],
    "conductor_size",
    "the nominal size, where it is one of those",
  ),
  key(
    "bonded_with",
    "kind of adhesive",
    ["two-part-epoxy", "heat-resistant-epoxy", "two-part-acrylic", "instant", "polyurethane", "not-named"],
    "adhesive",
    "the adhesive where it is named, else none",
  ),
];

function key(id: string, name: string, choices: readonly string[], need: string, formula: string): DerivedDefinition {
  const formulaSource = "definition of the classes by which the tables of the rulebook are looked up";
  return derivedIn("mounting").choice(id, name, choices, { needs: [need], formula, formulaSource });
}

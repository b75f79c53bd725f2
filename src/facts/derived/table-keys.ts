import type { FactDefinition } from "../definition.js";

/** Choices made of what a survey says, by which tables are looked up. */
export const TABLE_KEY_DERIVED: readonly FactDefinition[] = [
  key("bolt_steel", "steel of the bolt", ["carbon-steel", "austenitic-stainless"], "bolt_class"),
  key("bolt_size", "size of the thread", ["up-to-16-mm", "16-to-24-mm", "24-to-39-mm"], "thread"),
  key(
    "conductor_listed",
    "nominal size of the conductor",
    ["0.5-mm2", "0.75-mm2", "1-mm2", "1.5-mm2", "2.5-mm2", "4-mm2", "6-mm2", "10-mm2", "not-listed"],
    "conductor_size",
  ),
  key(
    "bonded_with",
    "kind of adhesive",
    ["two-part-epoxy", "heat-resistant-epoxy", "two-part-acrylic", "instant", "polyurethane", "not-named"],
    "adhesive",
  ),
];

function key(id: string, name: string, choices: readonly string[], need: string): FactDefinition {
  return { id, name, kind: "choice", source: "derived", group: "mounting", choices, needs: [need] };
}

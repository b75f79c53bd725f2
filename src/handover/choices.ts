import { findFact } from "../facts/index.js";
import { FIELDS } from "./fields.js";
import type { Name } from "./mapping.js";

/** All words that a field or fact can have; null where it can have any. */
export function choicesOf(name: Name): readonly string[] | null {
  const yesNo = ["yes", "no"];
  if (name.of === "field") {
    const field = FIELDS[name.name];
    return field?.kind === "yes-no" ? yesNo : (field?.choices ?? null);
  }
  const definition = findFact(name.id);
  return definition?.kind === "yes-no" ? yesNo : (definition?.choices ?? null);
}

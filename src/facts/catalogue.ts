import type { FactDefinition } from "./definition.js";
import { DERIVED_FACTS, RUN_FACTS } from "./derived-facts.js";
import { GROUP_FACTS } from "./group-facts.js";
import { MODEL_FACTS } from "./model-facts.js";
import { AS_BUILT_FACTS } from "./survey-as-built.js";
import { ELECTRICAL_FACTS } from "./survey-electrical.js";
import { IDENTITY_FACTS } from "./survey-identity.js";
import { MACHINE_FACTS } from "./survey-machine.js";
import { OPERATION_FACTS } from "./survey-operation.js";
import { SURFACE_FACTS } from "./survey-surface.js";
import { SURROUNDINGS_FACTS } from "./survey-surroundings.js";
import { TABLE_FACTS } from "./table-facts.js";

/** Every survey field, in the order in which a survey is usually laid out. */
export const SURVEY_FACTS: readonly FactDefinition[] = [
  ...IDENTITY_FACTS,
  ...OPERATION_FACTS,
  ...MACHINE_FACTS,
  ...SURFACE_FACTS,
  ...SURROUNDINGS_FACTS,
  ...ELECTRICAL_FACTS,
  ...AS_BUILT_FACTS,
];

/** The one list of facts that import, rules, documents and checks read. */
export const CATALOGUE: readonly FactDefinition[] = [
  ...SURVEY_FACTS,
  ...MODEL_FACTS,
  ...TABLE_FACTS,
  ...DERIVED_FACTS,
  ...GROUP_FACTS,
  ...RUN_FACTS,
];

const byId = new Map(CATALOGUE.map((definition) => [definition.id, definition]));

/** The definition of a fact, or undefined for an id that the catalogue does not have. */
export function findFact(id: string): FactDefinition | undefined {
  return byId.get(id);
}

/**
 * The definition of a fact that must exist.
 *
 * @throws RangeError for an id that the catalogue does not have
 */
export function factOf(id: string): FactDefinition {
  const definition = byId.get(id);
  if (!definition) throw new RangeError(`no fact "${id}" in the catalogue`);
  return definition;
}

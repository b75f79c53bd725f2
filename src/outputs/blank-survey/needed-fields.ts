import { STAGES, type Stage } from "../../base/index.js";
import { type FactDefinition, findFact, SURVEY_FACTS } from "../../facts/index.js";
import type { Band, Condition, Rule, Rulebook } from "../../rulebook/index.js";

/** Fields that name a point and say who looked at it; every survey has them. */
const ALWAYS: ReadonlySet<string> = new Set([
  "point_id",
  "asset_tag",
  "machine_name",
  "machine_type",
  "surveyed_by",
  "surveyed_on",
  "photo",
  "notes",
  "component",
  "bearing_position",
  "direction",
  "sensor_model",
]);
/** What was built, and the first readings: every survey of installed points has them. */
const ALWAYS_BUILT: ReadonlySet<string> = new Set([
  "installed_on",
  "installed_by",
  "applied_torque",
  "voltage_at_sensor",
  "sensor_serial",
  "baseline_velocity",
  "baseline_acceleration",
  "baseline_load",
  "baseline_on",
]);

/**
 * The fields that a survey asks for, in the order of the catalogue: those that name the point, those that the rules
 * of the rulebook need at the stage, and of installed points what was built and what was proposed for them.
 */
export function neededFields(
  rulebook: Pick<Rulebook, "rules" | "conditions" | "groups">,
  stage: Stage,
): readonly FactDefinition[] {
  const stages = stage === "installed" ? STAGES : [stage];
  const needed = new Set(ALWAYS);
  for (const rule of rulebook.rules) {
    const facts = factsOfRule(rule, stages, rulebook);
    for (const fact of facts) addWithNeeds(fact, needed);
    for (const fact of keysOf(rule, facts, rulebook.groups)) addWithNeeds(fact, needed);
  }
  return SURVEY_FACTS.filter(({ id }) => needed.has(id) || (stage === "installed" && ALWAYS_BUILT.has(id)));
}

/** What puts rows into the groups that a rule speaks of. */
function keysOf(rule: Rule, facts: readonly string[], groups: Rulebook["groups"]): readonly string[] {
  if (facts.length === 0) return [];
  const meant = [...groups.values()].filter(
    ({ id, members }) => id === rule.group || facts.some((fact) => members.has(fact)),
  );
  return meant.flatMap(({ key }) => key);
}

function addWithNeeds(fact: string, needed: Set<string>): void {
  if (needed.has(fact)) return;
  needed.add(fact);
  for (const other of findFact(fact)?.needs ?? []) addWithNeeds(other, needed);
}

function factsOfRule(rule: Rule, stages: readonly Stage[], rulebook: Pick<Rulebook, "conditions">): readonly string[] {
  const judgedAt = stages.filter((stage) => rule.stages.includes(stage));
  if (judgedAt.length === 0) return [];
  return [
    ...judgedAt.flatMap((stage) => rule.judges[stage] ?? []),
    ...(rule.appliesWhen === null ? [] : factsOfCondition(rule.appliesWhen, rulebook)),
    ...rule.limits.flatMap(({ fail, warn }) => [...fail, ...warn].flatMap((band) => factsOfBand(band, rulebook))),
  ];
}

function factsOfBand(band: Band, rulebook: Pick<Rulebook, "conditions">): readonly string[] {
  if (band.is === "when") return factsOfCondition(band.condition, rulebook);
  const bounds = "bounds" in band ? band.bounds : "bound" in band ? [band.bound] : [];
  return bounds.flatMap((bound) => (bound.kind === "fact" ? [bound.fact] : []));
}

function factsOfCondition(condition: Condition, rulebook: Pick<Rulebook, "conditions">): readonly string[] {
  switch (condition.kind) {
    case "comparison": {
      const { fact, value } = condition;
      return typeof value === "object" && "fact" in value ? [fact, value.fact] : [fact];
    }
    case "not":
      return factsOfCondition(condition.part, rulebook);
    case "named": {
      const named = rulebook.conditions.get(condition.name);
      return named ? factsOfCondition(named, rulebook) : [];
    }
    default:
      return condition.parts.flatMap((part) => factsOfCondition(part, rulebook));
  }
}

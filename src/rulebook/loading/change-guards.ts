import type { BookThing } from "../book/overlay.js";
import { namesOfRule } from "../text/names-in-use.js";
import type { RawChange, RawRule } from "../text/raw.js";
import { below } from "../text/source.js";

/** Why a change is refused. */
export interface Refusal {
  readonly pointer: string;
  readonly code: string;
  readonly text: string;
}

/** The set that speaks of every row; the outcome of each of its rules must stand at each point. */
const CORE = "core";

/** Where the dated values of a kind of file stand; who replaces them says where they come from. */
const DATED: Readonly<Partial<Record<BookThing["kind"], string>>> = {
  rule: "limits",
  model: "facts",
  table: "entries",
  measuring: "measures",
};

/** What is said with a change, whatever it changes. */
export function refusalOfForm(raw: RawChange, { kind, id }: BookThing): Refusal | null {
  const { replaces, addsCases, switchedOff } = raw;
  if (kind !== "rule" && (switchedOff || addsCases)) {
    const key = switchedOff ? "switchedOff" : "addsCases";
    const what = switchedOff ? "only a rule is switched off" : "only a rule has cases";
    return { pointer: below("", key), code: "not-of-a-rule", text: `${what}; a ${kind} is changed by replaces` };
  }
  if (switchedOff && (replaces || addsCases)) {
    const text = "a rule that is switched off has nothing else changed; leave out one of the two";
    return { pointer: "/switchedOff", code: "two-in-one", text };
  }
  if (!switchedOff && !replaces && !addsCases) {
    const ways = kind === "rule" ? "replaces, addsCases or switchedOff" : "replaces";
    return { pointer: "/changes", code: "nothing-changed", text: `nothing is changed of "${id}"; add ${ways}` };
  }
  if (addsCases && replaces && "cases" in replaces) {
    const text = "the cases are replaced already; put these there";
    return { pointer: "/addsCases", code: "two-in-one", text };
  }
  const dated = DATED[kind];
  if (replaces && dated !== undefined && dated in replaces && !("citations" in replaces)) {
    const text = `whoever replaces ${dated} says what they rest on; replace citations, too`;
    return { pointer: below("/replaces", dated), code: "no-citation", text };
  }
  return null;
}

/**
 * Why a rule cannot be switched off.
 *
 * @param gates - rules that a method must have been asked before it is advised
 */
export function refusalToSwitchOff(rule: RawRule, gates: readonly string[]): Refusal | null {
  const refuse = (code: string, text: string): Refusal => ({ pointer: "/switchedOff", code, text });
  if (rule.releases === "never") {
    const text = `"${rule.id}" is marked releases: never, because somebody can be hurt, and is never switched off; leave this out`;
    return refuse("never-switched-off", text);
  }
  if (rule.sets.includes(CORE)) {
    const text = `"${rule.id}" belongs to the set core, whose rules speak of every point; replace its limits, with the reason, instead`;
    return refuse("core-switched-off", text);
  }
  if (gates.includes(rule.id)) {
    const text = `a method is advised only after "${rule.id}" was asked (methods.gates); it is never switched off, replace its limits instead`;
    return refuse("gate-switched-off", text);
  }
  return null;
}

/**
 * What the replaced keys of a rule may not do: let what can hurt somebody, or the core, be asked of fewer points. That
 * another condition speaks of no fewer cannot be seen in it, so none is taken; without one the rule speaks of all.
 */
export function refusalOfReplacing(rule: RawRule, replaces: Readonly<Record<string, unknown>>): Refusal | null {
  const at = (key: string): string => below("/replaces", key);
  const isNever = rule.releases === "never";
  if (isNever && "releases" in replaces && replaces.releases !== "never") {
    const text = `"${rule.id}" is marked releases: never, because somebody can be hurt; that cannot be taken away`;
    return { pointer: at("releases"), code: "releases-taken-away", text };
  }
  const isCore = rule.sets.includes(CORE);
  if (!isNever && !isCore) return null;
  const why = isNever ? "is marked releases: never" : "belongs to the set core";
  for (const key of ["sets", "stages"] as const) {
    const lost = lostOf(rule[key], replaces[key]);
    if (lost.length === 0) continue;
    const text = `"${rule.id}" ${why} and is asked of no fewer points; keep ${lost.join(", ")} in ${key}`;
    return { pointer: at(key), code: "asked-of-fewer", text };
  }
  if (replaces.appliesWhen !== undefined && replaces.appliesWhen !== null) {
    const text = `"${rule.id}" ${why} and is asked of no fewer points; take appliesWhen away (null), or write a rule of your own beside it`;
    return { pointer: at("appliesWhen"), code: "asked-of-fewer", text };
  }
  return null;
}

/**
 * Why a named condition cannot be replaced: a rule that can never be released applies by it.
 *
 * @param conditions - data of the condition files by id
 */
export function refusalOfCondition(
  id: string,
  rules: readonly RawRule[],
  conditions: ReadonlyMap<string, unknown>,
): Refusal | null {
  const never = rules.find(
    (rule) => rule.releases === "never" && namesOfRule({ ...rule, limits: [] }, conditions).conditions.has(id),
  );
  if (never === undefined) return null;
  const text = `"${never.id}" is marked releases: never and applies by this condition; write a condition of your own for other rules`;
  return { pointer: "/replaces", code: "asked-of-fewer", text };
}

/**
 * What a rule demanded that it no longer demands, as far as that shows without judging points; results say it. Of a
 * rule that protects people every change of what it demands is said, since it may be less.
 */
export function loosenedBy(rule: RawRule, replaces: Readonly<Record<string, unknown>>): readonly string[] {
  const lostSets = lostOf(rule.sets, replaces.sets);
  const lostStages = lostOf(rule.stages, replaces.stages);
  const lowered = rule.undecided === "fail" && "undecided" in replaces && replaces.undecided !== "fail";
  const isOther = ["limits", "judges", "group"].some((key) => key in replaces);
  return [
    ...(rule.releases === "never" && isOther ? ["what is demanded where somebody can be hurt may be less"] : []),
    ...(lowered ? ["what is open counts as warn instead of fail"] : []),
    ...(lostSets.length > 0 ? [`no longer in the set ${lostSets.join(", ")}`] : []),
    ...(lostStages.length > 0 ? [`no longer asked at the stage ${lostStages.join(", ")}`] : []),
  ];
}

function lostOf(before: readonly string[], after: unknown): readonly string[] {
  return Array.isArray(after) ? before.filter((one) => !after.includes(one)) : [];
}

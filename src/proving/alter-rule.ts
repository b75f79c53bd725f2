import { dayBefore, type PlainDay, STAGES } from "../base/index.js";
import type { Band, LimitEntry, Rule } from "../rulebook/index.js";
import { alterBand } from "./alter-bands.js";
import { alterCondition } from "./alter-conditions.js";
import type { Alteration } from "./alteration.js";

/**
 * Every rule that one slip of the pen could make of this one: limits moved by their last digit, operators and sides
 * swapped, choices lost or added, conditions bent or left out, days moved by one. The day of a review and the texts
 * are left alone, since no outcome rests on them.
 */
export function alterationsOf(rule: Rule): readonly Alteration[] {
  return [...alterApplies(rule), ...rule.limits.flatMap((entry, index) => alterEntry(rule, entry, index))];
}

function alterApplies(rule: Rule): readonly Alteration[] {
  const { appliesWhen, at } = rule;
  if (appliesWhen === null) return [];
  return [
    { kind: "condition", what: "appliesWhen is left out", at, rule: { ...rule, appliesWhen: null } },
    ...alterCondition(appliesWhen).map(
      ({ kind, what, thing }): Alteration => ({
        kind,
        what: `appliesWhen: ${what}`,
        at,
        rule: { ...rule, appliesWhen: thing },
      }),
    ),
  ];
}

function alterEntry(rule: Rule, entry: LimitEntry, index: number): readonly Alteration[] {
  const withEntry = (other: LimitEntry): Rule => ({ ...rule, limits: rule.limits.with(index, other) });
  const judged = STAGES.map((stage) => rule.judges[stage]).find((fact) => fact !== null) ?? null;
  const bands = (["fail", "warn"] as const).flatMap((side) =>
    entry[side].flatMap((band, at) => {
      const withBands = (other: readonly Band[]): Rule => withEntry({ ...entry, [side]: other });
      const swapped = side === "fail" ? "warn" : "fail";
      const moved = { ...entry, [side]: entry[side].toSpliced(at, 1), [swapped]: [...entry[swapped], band] };
      const others = alterBand(band, judged).map(
        ({ kind, what, thing }): Alteration => ({
          kind,
          what: `${side}: ${what}`,
          at: band.at,
          rule: withBands(entry[side].with(at, thing)),
        }),
      );
      const gone: Alteration = {
        kind: "limit",
        what: `${side}: ${band.is} is left out`,
        at: band.at,
        rule: withBands(entry[side].toSpliced(at, 1)),
      };
      const turned: Alteration = {
        kind: "limit",
        what: `${band.is} becomes ${swapped === "warn" ? "a warning" : "a failure"}`,
        at: band.at,
        rule: withEntry(moved),
      };
      return [gone, turned, ...others];
    }),
  );
  return [...bands, ...alterDates(entry, withEntry)];
}

function alterDates(entry: LimitEntry, withEntry: (entry: LimitEntry) => Rule): readonly Alteration[] {
  const { at, from, until } = entry;
  const moved = (key: "from" | "until", day: PlainDay): readonly Alteration[] =>
    [dayBefore(day), dayAfter(day)].map((other) => ({
      kind: "date",
      what: `${key} ${day} becomes ${other}`,
      at,
      rule: withEntry({ ...entry, [key]: other }),
    }));
  return [...moved("from", from), ...(until === null ? [] : moved("until", until))];
}

function dayAfter(day: PlainDay): PlainDay {
  return new Date(Date.parse(`${day}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10);
}

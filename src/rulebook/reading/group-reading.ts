import { didYouMean } from "../../base/index.js";
import { type FactDefinition, factOf, isNumeric } from "../../facts/index.js";
import type { Group, GroupMember, MemberKind } from "../book/group.js";
import { kindInWords } from "../text/kind-words.js";
import { gatherNames, type NamesWritten } from "../text/names-in-use.js";
import type { RawGroup, RawMember } from "../text/raw.js";
import { below, type Report } from "../text/source.js";
import { type BookNames, factsDiffer, readCondition } from "./condition-reading.js";

const KINDS: readonly MemberKind[] = ["sum", "minimum", "maximum", "distinct", "same", "count"];
/** Ways that every row has a part in: where the rows state one thing together, or `where` stands inside. */
const WITHOUT_WHERE: ReadonlySet<MemberKind> = new Set(["same", "count"]);

/** Stands for a member that has a mistake, so that rules which name it are not said to be wrong, too. */
const EVERY_ROW: GroupMember = { is: "count", fact: null, where: null };

/** A group file whose form is right. */
export interface GroupFile {
  readonly raw: RawGroup;
  readonly report: Report;
}

/**
 * Checks what the group files mean, their form being checked already.
 *
 * @param conditions - data of the condition files by id
 * @returns the groups by id; of use only if nothing was reported
 */
export function readGroups(
  files: readonly GroupFile[],
  names: BookNames,
  conditions: ReadonlyMap<string, unknown>,
): ReadonlyMap<string, Group> {
  const groups = new Map<string, Group>();
  const homes = new Map<string, string>();
  for (const { raw, report } of files) {
    checkKey(raw, report);
    const members = new Map<string, GroupMember>();
    for (const [id, written] of Object.entries(raw.members)) {
      const at = below("/members", id);
      const home = homes.get(id);
      if (home !== undefined) {
        const text = `the group "${home}" states "${id}" already; a fact belongs to one group, keep it in one of them`;
        report.atKey(at, "fact-of-two-groups", text);
      }
      homes.set(id, home ?? raw.id);
      members.set(id, readMember(factOf(id), written, at, report, names, conditions) ?? EVERY_ROW);
    }
    groups.set(raw.id, { id: raw.id, title: raw.title, key: raw.key, members, at: report.placeOf("/id") });
  }
  return groups;
}

/** The named conditions that group files use, and those that these use. */
export function conditionsOfGroups(
  files: readonly GroupFile[],
  conditions: ReadonlyMap<string, unknown>,
): ReadonlySet<string> {
  const names: NamesWritten = { facts: new Set(), conditions: new Set() };
  for (const { raw } of files) gatherNames(raw.members, names);
  for (const name of names.conditions) gatherNames(conditions.get(name), names);
  return names.conditions;
}

function checkKey(raw: RawGroup, report: Report): void {
  for (const [index, id] of raw.key.entries()) {
    const definition = factOf(id);
    if (!isNumeric(definition) && id !== "site") continue;
    const text =
      id === "site"
        ? "the site is part of every key; leave it out"
        : `"${id}" is ${kindInWords(definition)}, and rows are not put together by numbers that may be inexact; name another fact`;
    report.atValue(below("/key", index), "bad-key", text);
  }
}

function readMember(
  definition: FactDefinition,
  raw: RawMember,
  at: string,
  report: Report,
  names: BookNames,
  conditions: ReadonlyMap<string, unknown>,
): GroupMember | null {
  const [is, other] = KINDS.filter((kind) => raw[kind] !== undefined);
  if (is === undefined || other !== undefined) {
    const found = is === undefined ? "no way" : `${is} and ${other}`;
    report.atKey(
      at,
      "one-way-wanted",
      `found ${found}; a fact of a group is taken in one of the ways ${KINDS.join(", ")}`,
    );
    return null;
  }
  if (raw.where !== undefined && WITHOUT_WHERE.has(is)) {
    const text =
      is === "count"
        ? "the condition of a count stands inside it: count: { where: … }"
        : `"${is}" speaks of every row; leave where out`;
    report.atKey(below(at, "where"), "where-of-no-use", text);
    return null;
  }
  const fact = is === "count" ? null : (raw[is] ?? null);
  if (!fits(definition, is, fact, at, report)) return null;
  const inCount = typeof raw.count === "object" ? raw.count.where : undefined;
  const written = inCount ?? raw.where;
  const whereAt = inCount === undefined ? below(at, "where") : below(at, "count", "where");
  if (!onlyItsNeeds(definition, { fact, where: written }, is === "count" ? whereAt : at, report, conditions))
    return null;
  const where = written === undefined ? null : readCondition(written, whereAt, report, names);
  return written !== undefined && where === null ? null : { is, fact, where };
}

/** Whether what comes out is what the catalogue says that the fact of the group is. */
function fits(definition: FactDefinition, is: MemberKind, fact: string | null, at: string, report: Report): boolean {
  const wrong = (text: string): false => {
    report.atValue(below(at, is), "member-does-not-fit", text);
    return false;
  };
  if (is === "count" || is === "distinct") {
    if (definition.kind !== "count")
      return wrong(
        `"${is}" gives a number of rows or values, and "${definition.id}" is ${kindInWords(definition)}; take it by sum, minimum, maximum or same`,
      );
    if (fact !== null && isNumeric(factOf(fact)))
      return wrong(
        `"${fact}" is ${kindInWords(factOf(fact))}; only words are counted by their difference, so name a choice or a text`,
      );
    return true;
  }
  const of = factOf(fact ?? "");
  if (is !== "same" && !isNumeric(of))
    return wrong(
      `"${is}" is taken of numbers, and "${of.id}" is ${kindInWords(of)}; name a number, or take it by same`,
    );
  const mismatch = factsDiffer(definition, of);
  if (mismatch) return wrong(`${mismatch.difference}; name a fact of the same kind`);
  return (
    definition.unit === of.unit ||
    wrong(`"${of.id}" is kept in ${of.unit} and "${definition.id}" in ${definition.unit}`)
  );
}

/** The catalogue says of every fact of a group which facts of a row it rests on; columns are asked for by that. */
function onlyItsNeeds(
  definition: FactDefinition,
  { fact, where }: { readonly fact: string | null; readonly where: unknown },
  at: string,
  report: Report,
  conditions: ReadonlyMap<string, unknown>,
): boolean {
  const written: NamesWritten = { facts: new Set(fact === null ? [] : [fact]), conditions: new Set() };
  gatherNames(where, written);
  for (const name of written.conditions) gatherNames(conditions.get(name), written);
  const needs = definition.needs ?? [];
  const [strange] = [...written.facts].filter((id) => !needs.includes(id));
  if (strange === undefined) return true;
  const only = needs.length === 0 ? "rests on nothing but the key" : `rests on ${needs.join(", ")}`;
  const near = didYouMean(strange, needs) || (needs.length === 0 ? "; leave it out" : `; name ${needs.join(" or ")}`);
  report.atValue(at, "not-of-this-fact", `"${definition.id}" ${only}, and this names "${strange}"${near}`);
  return false;
}

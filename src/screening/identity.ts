import { parse, v5 as uuidV5 } from "uuid";
import type { Facts, Said } from "../facts/index.js";

/** Namespace of the point ids (RFC 9562, version 5). */
const NAMESPACE = parse("34c291d3-4c5c-41c5-8136-7c922dd583bf");
const PARTS = ["asset_tag", "component", "bearing_position", "direction"] as const;

/** How a point is called. */
export interface PointNames {
  /** The point as the survey names it; of a point without an ID of its own, its parts in words. */
  readonly point: string | null;
  readonly machine: string | null;
  /** The tag of the machine as the register has it. */
  readonly assetTag: string | null;
  readonly component: string | null;
  readonly bearingPosition: string | null;
  readonly direction: string | null;
}

/**
 * The id of a point: the UUID version 5 of site, line feed and point, the same on every machine and in every order
 * of rows. Null where the row says too little.
 *
 * @param siteName - the site as the run or the site file names it; a site column of the survey wins
 */
export function pointIdOf(facts: Facts, siteName: string | null): string | null {
  const name = textOf(facts, "point_id") ?? wholeName(facts);
  return name === null || siteUnclear(facts) ? null : pointUuid(siteOf(facts, siteName), name);
}

/** Tag and place on the machine, as one name; null where a part is not known. */
function wholeName(facts: Facts): string | null {
  const parts = PARTS.map((id) => textOf(facts, id));
  return parts.every((part) => part !== null) ? parts.join("/") : null;
}

/** Names a point for people. */
export function namesOf(facts: Facts): PointNames {
  const tag = textOf(facts, "asset_tag");
  const component = textOf(facts, "component");
  const bearingPosition = textOf(facts, "bearing_position");
  const direction = textOf(facts, "direction");
  return {
    point: textOf(facts, "point_id") ?? nameInWords([tag, component, bearingPosition, direction]),
    machine: textOf(facts, "machine_name") ?? tag,
    assetTag: tag,
    component,
    bearingPosition,
    direction,
  };
}

function nameInWords([tag = null, ...places]: readonly (string | null)[]): string | null {
  if (tag === null || places.some((part) => part === null)) return null;
  return [tag, ...places.map((part) => part?.replaceAll("-", " "))].join(", ");
}

/** The id of a point by its site's name and its own; both NFC, trimmed, inner blanks to one, case kept. */
export function pointUuid(site: string, point: string): string {
  return uuidOfNames([site, point]);
}

/**
 * The UUID version 5 of names, a line each, in the namespace of the point ids. A point has two (site and point), so
 * that whatever else is named by three or more can have the id of none.
 */
export function uuidOfNames(names: readonly string[]): string {
  return uuidV5(names.map(plainName).join("\n"), NAMESPACE);
}

/** A name as names are compared: NFC, trimmed, inner blanks to one, case kept. */
export function plainName(text: string): string {
  return text.normalize("NFC").replace(/\s+/gu, " ").trim();
}

function siteOf(facts: Facts, siteName: string | null): string {
  return textOf(facts, "site") ?? siteName ?? "";
}

/** The site as the row itself states it, as the run names it, or neither; null where the row's own word is unclear. */
export function siteOfRow(
  facts: Facts,
  siteName: string | null,
): { readonly name: string; readonly stated: boolean } | null {
  return siteUnclear(facts) ? null : { name: siteOf(facts, siteName), stated: textOf(facts, "site") !== null };
}

/** A site cell that cannot be read is no empty cell: the point's site is then not known. */
function siteUnclear(facts: Facts): boolean {
  const site = saidOf(facts, "site");
  return site !== undefined && !site.known && site.reason !== "missing";
}

function textOf(facts: Facts, id: string): string | null {
  const said = saidOf(facts, id);
  return said?.known && typeof said.value === "string" ? said.value : null;
}

/** What is said of a fact; where that stands does not matter here, and need not be looked up. */
export function saidOf(facts: Facts, id: string): Said | undefined {
  return facts.said?.(id) ?? facts.get(id);
}

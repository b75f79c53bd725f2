import { v5 as uuidV5 } from "uuid";
import type { FactState, Facts } from "../facts/index.js";

/** Namespace of the point ids (RFC 9562, version 5). */
const NAMESPACE = "34c291d3-4c5c-41c5-8136-7c922dd583bf";
const PARTS = ["asset_tag", "component", "bearing_position", "direction"] as const;

/** Who a point is. */
export interface PointIdentity {
  /** UUID of site and point, or null where the row says too little. */
  readonly id: string | null;
  /** The point as the survey names it; of a point without an ID of its own, its parts in words. */
  readonly point: string | null;
  readonly machine: string | null;
  readonly component: string | null;
  readonly bearingPosition: string | null;
  readonly direction: string | null;
}

/**
 * Names a point. The id is the UUID version 5 of site, line feed and point: the same on every machine and in every
 * order of rows.
 *
 * @param siteName - the site as the run or the site file names it; a site column of the survey wins
 */
export function identityOf(facts: Facts, siteName: string | null): PointIdentity {
  const [tag, component, bearingPosition, direction] = PARTS.map((id) => textOf(facts.get(id)));
  const pointId = textOf(facts.get("point_id"));
  const parts = [tag, component, bearingPosition, direction];
  const whole = parts.every((part) => part != null);
  const name = pointId ?? (whole ? parts.join("/") : null);
  const words = parts.map((part) => part?.replaceAll("-", " "));
  return {
    id: name === null || siteUnclear(facts) ? null : pointUuid(siteOf(facts, siteName), name),
    point: pointId ?? (whole ? [tag, ...words.slice(1)].join(", ") : null),
    machine: textOf(facts.get("machine_name")) ?? tag ?? null,
    component: component ?? null,
    bearingPosition: bearingPosition ?? null,
    direction: direction ?? null,
  };
}

/** The id of a point by its site's name and its own; both NFC, trimmed, inner blanks to one, case kept. */
export function pointUuid(site: string, point: string): string {
  return uuidV5(`${plainName(site)}\n${plainName(point)}`, NAMESPACE);
}

function plainName(text: string): string {
  return text.normalize("NFC").replace(/\s+/gu, " ").trim();
}

function siteOf(facts: Facts, siteName: string | null): string {
  return textOf(facts.get("site")) ?? siteName ?? "";
}

/** A site cell that cannot be read is no empty cell: the point's site is then not known. */
function siteUnclear(facts: Facts): boolean {
  const site = facts.get("site");
  return site !== undefined && !site.known && site.reason !== "missing";
}

function textOf(state: FactState | undefined): string | null {
  return state?.known && typeof state.value === "string" ? state.value : null;
}

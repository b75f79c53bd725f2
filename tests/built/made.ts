import {
  type BuiltCheck,
  type BuiltInput,
  type BuiltPoint,
  type BuiltSummary,
  checkBuilt,
} from "../../src/built/index.js";
import type { FactState } from "../../src/facts/index.js";
import type { Survey } from "../../src/records/index.js";
import { GOOD_POINT, known, surveyOf } from "../tools/make-record.js";
import { shippedRulebook } from "../tools/shipped.js";

/** A row as tests write it. */
export type Row = Readonly<Record<string, FactState>>;

/** A proposed point that passes, by its name. */
export function proposal(id: string, facts: Row = {}): Row {
  return { point_id: known(id), ...GOOD_POINT, ...facts };
}

/** A row of a built survey that lets every rule of the core pass and states nothing of the plan. */
export function done(id: string, facts: Row = {}): Row {
  return { point_id: known(id), applied_torque: known(8, "B2"), voltage_at_sensor: known(23.8, "C2"), ...facts };
}

/** What a comparison of made-up rows gives. */
export interface Checked {
  readonly check: BuiltCheck;
  readonly points: readonly BuiltPoint[];
  readonly summary: BuiltSummary;
  /** The point of that name. */
  of(name: string): BuiltPoint;
}

/** Compares surveys. */
export async function checkSurveys(
  proposed: readonly Survey[],
  built: readonly Survey[] | null,
  more: Partial<Pick<BuiltInput, "issued" | "site" | "rulebook">> & {
    readonly set?: string;
    readonly siteName?: string;
  } = {},
): Promise<Checked> {
  const { set = "core", siteName = "Vellamoor", issued = null, site = null, rulebook } = more;
  const check = checkBuilt({
    program: { name: "spotface", version: "test" },
    rulebook: rulebook ?? (await shippedRulebook()),
    proposed,
    built,
    site,
    issued,
    options: { set, asOf: "2026-11-25", siteName: siteName === "" ? null : siteName },
  });
  const points = [...check.points()];
  const of = (name: string): BuiltPoint => {
    const point = points.find((one) => one.point === name);
    if (point === undefined) throw new Error(`no point ${name} in ${points.map((one) => one.point).join(", ")}`);
    return point;
  };
  return { check, points, summary: check.summary(), of };
}

/** Compares made-up rows. */
export function checkRows(
  proposed: readonly Row[],
  built: readonly Row[] | null,
  more: Parameters<typeof checkSurveys>[2] = {},
): Promise<Checked> {
  const of = (rows: readonly Row[], file: string): Survey => surveyOf(rows, file);
  return checkSurveys([of(proposed, "proposed.xlsx")], built && [of(built, "built.csv")], more);
}

/** Rule and outcome then and now, as tests write them. */
export function turnedIn({ turned }: BuiltPoint): readonly string[] {
  return turned.map(({ rule, before, now }) => `${rule} ${before?.outcome ?? "-"} > ${now?.outcome ?? "-"}`);
}

import { plainWords } from "../facts/index.js";
import type { Rulebook } from "../rulebook/index.js";
import type { PointResult, Screening } from "../screening/index.js";
import { AllowedBands } from "./allowed-bands.js";
import { holdPointsOf, joinedHoldPoints } from "./hold-points.js";
import { JobFacts } from "./job-facts.js";
import type { HeldBackPoint, JobSection, OutageTotal, PackBasis, PointJob, WorkPack, WorkPacks } from "./pack.js";
import { PackIds } from "./pack-ids.js";
import { bondLines } from "./parts/bond.js";
import { fitLines } from "./parts/fit.js";
import { holeLines } from "./parts/hole.js";
import { placeLines } from "./parts/place.js";
import { seatLines } from "./parts/seat.js";
import { cableLines, supplyLines } from "./parts/wiring.js";
import { recordsOf } from "./records.js";
import type { PointOfRun } from "./release.js";
import { Releasing } from "./releasing.js";
import { suppliesOf, totalOf } from "./supplies.js";

/**
 * The work of a run, per machine and outage, as data: every instruction with its values and where they come from, what
 * to write down, tools and materials, permits and hold points, and what is held back with the reasons. Iterates the
 * points of the screening once.
 */
export function workPacks(screening: Screening, rulebook: Pick<Rulebook, "rules" | "conditions" | "sets">): WorkPacks {
  const { head } = screening;
  const releasing = new Releasing(rulebook, head);
  const bands = new AllowedBands(rulebook, head.set, head.asOf);
  const heldBack: HeldBackPoint[] = [];
  const gathered = new Map<string, JobOfMachine[]>();
  for (const run of screening.pointsWithFacts()) {
    const release = releasing.releaseOf(run);
    if (!release.released) {
      heldBack.push(heldBackOf({ ...run, release }));
      continue;
    }
    const job = new JobFacts(run.point, run.facts, bands);
    const made: JobOfMachine = { job, made: jobOf(job, { ...run, release }) };
    const key = JSON.stringify([job.word("site"), machineKey(job), job.word("next_outage")]);
    gathered.set(key, [...(gathered.get(key) ?? []), made]);
  }
  const ids = new PackIds();
  const packs = [...gathered.values()].map((jobs) => packOf(jobs, ids)).sort(inOrder);
  return {
    basis: basisOf(screening),
    cautions: head.cautions,
    allHeldBack: releasing.all,
    packs,
    outages: outagesOf(packs),
    heldBack,
  };
}

interface JobOfMachine {
  readonly job: JobFacts;
  readonly made: PointJob;
}

/** The tag says which machine it is; without one its name; without both every point is for itself. */
function machineKey(job: JobFacts): string {
  return job.word("asset_tag") ?? job.word("machine_name") ?? job.point.id ?? "";
}

function packOf(jobs: readonly JobOfMachine[], ids: PackIds): WorkPack {
  const [first] = jobs;
  if (!first) throw new RangeError("a pack without points");
  const { job, made } = first;
  const { machine, assetTag } = job.point;
  const name = machine ?? made.point;
  const outage = job.word("next_outage");
  const site = job.word("site");
  return {
    id: ids.of(outage, [...(site === null ? [] : [site]), assetTag ?? name]),
    machine: name,
    assetTag,
    where: job.known("site", "plant_area", "location_code", "machine_type", "criticality"),
    outage,
    holdPoints: joinedHoldPoints(jobs.map((one) => ({ name: one.made.point, needed: holdPointsOf(one.job) }))),
    points: jobs.map((one) => one.made),
    supplies: totalOf(jobs.flatMap((one) => one.made.supplies)),
  };
}

function jobOf(job: JobFacts, { point, release }: PointOfRun): PointJob {
  const { file, sheet, row, verdict } = point;
  return {
    id: point.id ?? "",
    point: nameOf(point),
    place: placeOf(point),
    assetTag: point.assetTag,
    component: point.component,
    bearingPosition: point.bearingPosition,
    direction: point.direction,
    siteStated: job.word("site"),
    pointId: job.word("point_id"),
    file,
    sheet,
    row,
    verdict,
    accepted: release.accepted.map(({ finding, reason, acceptedBy, from, until }) => ({
      rule: finding.rule,
      outcome: finding.outcome,
      message: finding.message ?? finding.rule,
      reason,
      acceptedBy,
      from,
      until,
      origin: finding.accepted?.origin ?? { file: "", line: 0 },
    })),
    method: job.word("mounting_method"),
    sections: sectionsOf(job),
    records: recordsOf(job),
    supplies: suppliesOf(job),
  };
}

function sectionsOf(job: JobFacts): readonly JobSection[] {
  const sections: readonly JobSection[] = [
    { part: "place", title: "Place", lines: placeLines(job) },
    { part: "seat", title: "Seat", lines: seatLines(job) },
    { part: "hole", title: "Hole and thread", lines: holeLines(job) },
    { part: "bond", title: "Pad", lines: bondLines(job) },
    { part: "fit", title: "Sensor", lines: fitLines(job) },
    { part: "cable", title: "Cable", lines: cableLines(job) },
    { part: "supply", title: "Supply and check", lines: supplyLines(job) },
  ];
  return sections.filter(({ lines }) => lines.length > 0);
}

function heldBackOf({ point, release }: PointOfRun): HeldBackPoint {
  const { id, machine, file, sheet, row, verdict } = point;
  const place = placeOf(point);
  return { id, point: nameOf(point), machine, place, file, sheet, row, verdict, reasons: release.reasons };
}

function nameOf({ point, sheet, row }: PointResult): string {
  return point ?? (sheet === null ? `line ${row}` : `${sheet}, row ${row}`);
}

function placeOf(point: PointResult): string {
  const parts = [point.component, point.bearingPosition, point.direction].filter((part) => part !== null);
  return parts.length > 0 ? parts.map(plainWords).join(", ") : nameOf(point);
}

function basisOf({ head }: Screening): PackBasis {
  const { deviations } = head;
  return {
    program: head.program,
    run: head.digest,
    asOf: head.asOf,
    set: head.set,
    rulebook: head.rulebook,
    site: head.site.name,
    surveys: head.surveys.map(({ file, digest }) => ({ file, digest })),
    deviations: deviations && { file: deviations.file, digest: deviations.digest },
  };
}

/** By outage, those without a day last; then by the name of the pack. */
function inOrder(a: WorkPack, b: WorkPack): number {
  const [first, second] = [a, b].map(({ outage, id }) => `${outage ?? "9999"} ${id}`);
  return (first ?? "") < (second ?? "") ? -1 : 1;
}

function outagesOf(packs: readonly WorkPack[]): readonly OutageTotal[] {
  const days = [...new Set(packs.map(({ outage }) => outage))];
  return days.map((outage) => {
    const own = packs.filter((pack) => pack.outage === outage);
    return {
      outage,
      packs: own.map(({ id }) => id),
      points: own.reduce((sum, { points }) => sum + points.length, 0),
      supplies: totalOf(own.flatMap(({ supplies }) => supplies)),
    };
  });
}

import { factName } from "../facts/index.js";
import type { PointResult, PointWithFacts, ResultHead } from "../screening/index.js";
import type { Release } from "../workpacks/index.js";
import { FIELDS } from "./fields.js";
import { foundOfFact, foundOfField, type Lookup } from "./found.js";
import type { Mapping } from "./mapping.js";

/** The finding of a point that leads in every output, in words. */
export interface LeadingWords {
  readonly rule: string;
  readonly severity: string;
  readonly message: string;
  readonly remedy: string;
}

/** How outputs put findings into words; handed in, so that a handover says the same as every other output. */
export interface PointWording {
  /** Null where nothing keeps the point from passing. */
  leading(point: PointResult): LeadingWords | null;
  /** Facts that would have to be known. */
  missing(point: PointResult): string;
  /** The mounting method that is advised; null where none is. */
  otherMethod(point: PointResult): string | null;
}

/** What all rows of a run share. */
export interface RunValues {
  readonly head: ResultHead;
  readonly mapping: Pick<Mapping, "id" | "version">;
  readonly wording: PointWording;
}

/**
 * Looks up what is known of one point.
 *
 * @param release - null where nothing of the mapping asks for it
 */
export function pointLookup({ point, facts }: PointWithFacts, release: Release | null, run: RunValues): Lookup {
  return (name) => {
    if (name.of === "fact") return foundOfFact(name.id, name.unit?.id ?? null, facts.get(name.id));
    if (name.name === "site") {
      const site = foundOfFact("site", null, facts.get("site"));
      return site.ok && site.found ? site : { ok: true, found: foundOfField("site", run.head.site.name) };
    }
    if (release !== null && name.name === "released")
      return { ok: true, found: { kind: "yes-no", yes: release.released } };
    if (release !== null && name.name === "heldBack") {
      const reasons = release.reasons.map(({ text }) => text).join("; ");
      return { ok: true, found: foundOfField(name.name, reasons) };
    }
    return { ok: true, found: foundOfField(name.name, fieldOf(name.name, point, run)) };
  };
}

/** A field of the run, of which no point need be asked. */
export function runLookup(run: RunValues): Lookup {
  return (name) => ({ ok: true, found: name.of === "field" ? foundOfField(name.name, ofRun(name.name, run)) : null });
}

function fieldOf(name: string, point: PointResult, run: RunValues): string | number | boolean | null {
  if (FIELDS[name]?.of === "run") return ofRun(name, run);
  return OF_POINT[name]?.(point, run) ?? null;
}

const OF_POINT: Readonly<Record<string, (point: PointResult, run: RunValues) => string | number | boolean | null>> = {
  id: ({ id }) => id,
  points: () => 1,
  worstVerdict: ({ verdict }) => verdict,
  point: ({ point }) => point,
  machine: ({ machine }) => machine,
  assetTag: ({ assetTag }) => assetTag,
  component: ({ component }) => component,
  bearingPosition: ({ bearingPosition }) => bearingPosition,
  direction: ({ direction }) => direction,
  verdict: ({ verdict }) => verdict,
  accepted: ({ accepted }) => accepted,
  acceptedBy: (point) => [...new Set(acceptedOf(point).map(({ acceptedBy }) => acceptedBy))].join("; "),
  acceptedUntil: (point) =>
    acceptedOf(point)
      .map(({ until }) => until)
      .sort()[0] ?? null,
  severity: (point, { wording }) => wording.leading(point)?.severity ?? "pass",
  leadingRule: (point, { wording }) => wording.leading(point)?.rule ?? null,
  message: (point, { wording }) => wording.leading(point)?.message ?? null,
  remedy: (point, { wording }) => wording.leading(point)?.remedy ?? null,
  missing: (point, { wording }) => wording.missing(point),
  methodAdvised: ({ methodAdvised }) => methodAdvised?.method ?? null,
  otherMethod: (point, { wording }) => wording.otherMethod(point),
  settledBy: ({ settledBy }) => settledBy?.map(factName).join(", ") ?? null,
  file: ({ file }) => file,
  fileName: ({ file }) => file.replace(/^.*\//s, ""),
  sheet: ({ sheet }) => sheet,
  row: ({ row }) => row,
  surveyDigest: ({ file }, { head }) => head.surveys.find((survey) => survey.file === file)?.digest ?? null,
};

function acceptedOf({ findings }: PointResult) {
  return findings.flatMap(({ accepted }) => (accepted === null ? [] : [accepted]));
}

function ofRun(name: string, { head, mapping }: RunValues): string | null {
  switch (name) {
    case "rulebook":
      return head.rulebook.name;
    case "rulebookVersion":
      return head.rulebook.version;
    case "rulebookDigest":
      return head.rulebook.digest;
    case "asOf":
      return head.asOf;
    case "stage":
      return head.stage;
    case "set":
      return head.set;
    case "runDigest":
      return head.digest;
    case "program":
      return head.program.name;
    case "programVersion":
      return head.program.version;
    case "mapping":
      return mapping.id;
    case "mappingVersion":
      return mapping.version;
    case "cautions":
      return head.cautions.join(" ");
    default:
      return null;
  }
}

import { didYouMean, foldText, sha256OfData, showText, type TextFile } from "../../base/index.js";
import {
  factOf,
  type KnownFact,
  type MeasuringWays,
  type MethodsAllowed,
  type SiteStatements,
  type StatedAccuracy,
  type StatedFacts,
  type StatedWays,
} from "../../facts/index.js";
import type { FileFinding, SensorModel } from "../book/rulebook.js";
import { readWayNamed } from "../reading/accuracy-reading.js";
import { factValueOf, readScalar } from "../reading/fact-values.js";
import { checkPlausible } from "../reading/plausible.js";
import { SITE_SCHEMA } from "../schemas/index.js";
import { checkSchema } from "../text/check-schema.js";
import { SITE_LIMITS } from "../text/file-limits.js";
import type { RawSite, RawStated, RawWaysNamed } from "../text/raw.js";
import { readYaml } from "../text/read-yaml.js";
import { below, Report } from "../text/source.js";

const METHODS_ALLOWED = "methodsAllowed";

/** What a site file states, or what is wrong with it. */
export type SiteReading =
  | { readonly ok: true; readonly statements: SiteStatements }
  | { readonly ok: false; readonly findings: readonly FileFinding[] };

/**
 * Reads a site file: facts that hold for the whole site, a type of machine, or a machine, stated once.
 *
 * @param models - models of the rulebook; a stated sensor model must be one of them, or a way one of them is written
 * @param ways - ways of measuring that it may name
 */
export function readSiteFile(
  file: TextFile,
  models: ReadonlyMap<string, SensorModel>,
  ways: MeasuringWays = new Map(),
): SiteReading {
  const reading = readYaml(file, SITE_LIMITS);
  if (!reading.ok) return reading;
  const findings: FileFinding[] = [];
  const report = new Report(reading.source, findings);
  if (!checkSchema(reading.source, SITE_SCHEMA, report)) return { ok: false, findings };
  const raw = reading.source.data as RawSite;
  const read = (stated: RawStated | undefined, pointer: string): StatedFacts =>
    readStated(stated ?? {}, pointer, models, report);
  const readAll = (all: RawSite["machines"], pointer: string) =>
    new Map(
      Object.entries(all ?? {}).map(([key, { measuredBy: _, ...stated }]) => [
        key,
        read(stated as RawStated, below(pointer, key)),
      ]),
    );
  const waysAt = (named: RawWaysNamed | undefined, pointer: string): StatedWays =>
    readWaysNamed(named ?? {}, pointer, ways, report);
  const waysOfAll = (all: RawSite["machines"], pointer: string) =>
    new Map(
      Object.entries(all ?? {}).map(([key, { measuredBy }]) => [
        key,
        waysAt(measuredBy, below(pointer, key, "measuredBy")),
      ]),
    );
  const statements: SiteStatements = {
    file: file.path,
    digest: sha256OfData(raw),
    siteName: raw.site ?? null,
    wholeSite: read(raw.states, "/states"),
    byMachineType: readAll(raw.machineTypes, "/machineTypes"),
    byMachine: readAll(raw.machines, "/machines"),
    ...methodsStated(raw, report),
    measuredBy: {
      wholeSite: waysAt(raw.measuredBy, "/measuredBy"),
      byMachineType: waysOfAll(raw.machineTypes, "/machineTypes"),
      byMachine: waysOfAll(raw.machines, "/machines"),
    },
  };
  return findings.length > 0 ? { ok: false, findings } : { ok: true, statements };
}

function readStated(
  stated: RawStated,
  pointer: string,
  models: ReadonlyMap<string, SensorModel>,
  report: Report,
): StatedFacts {
  const facts = new Map<string, KnownFact>();
  for (const [id, written] of Object.entries(stated)) {
    if (id === METHODS_ALLOWED) continue;
    const definition = factOf(id);
    const at = below(pointer, id);
    const reading = readScalar(written, definition);
    if (!reading.ok) {
      report.atValue(at, reading.mistake.code, reading.mistake.text);
      continue;
    }
    const value = factValueOf(reading.value);
    if (typeof value === "object") checkPlausible(value, definition, at, report);
    if (id === "sensor_model") checkModel(String(value), models, at, report);
    const { file, line } = report.placeOfKey(at);
    facts.set(id, { known: true, value, origin: { kind: "statement", file, line } });
  }
  return facts;
}

/** The lists of methods allowed, each with the line where it stands; nothing where there are none. */
function methodsStated(raw: RawSite, report: Report): Pick<SiteStatements, "methodsAllowed"> {
  const listIn = (stated: { readonly [key: string]: unknown } | undefined, pointer: string): MethodsAllowed | null => {
    const methods = stated?.[METHODS_ALLOWED];
    if (!Array.isArray(methods)) return null;
    const { file, line } = report.placeOfKey(below(pointer, METHODS_ALLOWED));
    return { methods: methods.map(String), file, line };
  };
  const listsIn = (all: RawSite["machines"], pointer: string) =>
    new Map(
      Object.entries(all ?? {}).flatMap(([key, stated]) => {
        const list = listIn(stated, below(pointer, key));
        return list ? [[key, list] as const] : [];
      }),
    );
  const methodsAllowed = {
    wholeSite: listIn(raw.states, "/states"),
    byMachineType: listsIn(raw.machineTypes, "/machineTypes"),
    byMachine: listsIn(raw.machines, "/machines"),
  };
  const isStated =
    methodsAllowed.wholeSite !== null || methodsAllowed.byMachineType.size + methodsAllowed.byMachine.size > 0;
  return isStated ? { methodsAllowed } : {};
}

function readWaysNamed(named: RawWaysNamed, pointer: string, ways: MeasuringWays, report: Report): StatedWays {
  const stated = new Map<string, StatedAccuracy>();
  for (const [id, way] of Object.entries(named)) {
    const read = readWayNamed(way, factOf(id), ways);
    if ("code" in read) report.atValue(below(pointer, id), read.code, read.text);
    else stated.set(id, read);
  }
  return stated;
}

function checkModel(written: string, models: ReadonlyMap<string, SensorModel>, at: string, report: Report): void {
  const known = [...models.values()].flatMap((model) => [model.id, ...model.alsoWritten]);
  if (known.some((name) => foldText(name) === foldText(written))) return;
  const near = didYouMean(written, known) || "; use the id of a model of the rulebook, or write a file for it";
  report.atValue(at, "unknown-model", `"${showText(written)}" is no model of the rulebook${near}`);
}

import { sha256OfData, type TextFile } from "../base/index.js";
import {
  below,
  type FileFinding,
  type FileLimits,
  type Report,
  RULEBOOK_LIMITS,
  type Rulebook,
  readCheckedFile,
} from "../rulebook/index.js";
import { BUILT_IN_RULES } from "../screening/index.js";
import { fileNameOf } from "./file-name.js";
import type { Mapping, Target } from "./mapping.js";
import { MAPPING_SCHEMA } from "./mapping-schema.js";
import type { RawMapping } from "./raw.js";
import { readTarget } from "./read-target.js";
import { tryChecks } from "./try-checks.js";

/** A mapping, or what is wrong with its file. */
export type MappingReading =
  | { readonly ok: true; readonly mapping: Mapping }
  | { readonly ok: false; readonly findings: readonly FileFinding[] };

/** Long lists of values of a large works. */
const MAPPING_LIMITS: FileLimits = { ...RULEBOOK_LIMITS, fileLength: 1_000_000, keys: 10_000 };

/** A day by which names of files are told apart; any does. */
const SOME_DAY = "2000-01-01";

/**
 * Reads a mapping file and tries its sample rows. Nothing in it can run code.
 *
 * @param rulebook - whose rules it may name, beside those that are built in
 */
export function readMapping(file: TextFile, rulebook: Pick<Rulebook, "rules">): MappingReading {
  const reading = readCheckedFile(file, MAPPING_SCHEMA, MAPPING_LIMITS);
  if (!reading.ok) return reading;
  const { report, findings } = reading;
  const raw = reading.data as RawMapping;
  const known = new Set([...rulebook.rules.map(({ id }) => id), ...BUILT_IN_RULES]);
  const targets: Target[] = [];
  for (const [index, target] of raw.targets.entries()) {
    const around = { form: raw.form ?? {}, rules: known, before: [...targets] };
    targets.push(readTarget(target, below("/targets", index), around, report));
  }
  checkNames(targets, report);
  const mapping: Mapping = {
    file: file.path,
    digest: sha256OfData(raw),
    id: raw.mapping,
    version: raw.version,
    title: raw.title,
    targets,
    checks: raw.checks?.length ?? 0,
  };
  // A column with a mistake would only bring further findings about the same slip.
  if (findings.length === 0) tryChecks(raw, mapping, report);
  return findings.length > 0 ? { ok: false, findings } : { ok: true, mapping };
}

function checkNames(targets: readonly Target[], report: Report): void {
  const ids = new Map<string, Target>();
  const names = new Map<string, Target>();
  for (const [index, target] of targets.entries()) {
    const same = ids.get(target.id);
    const at = below("/targets", index);
    if (same)
      report.atValue(
        below(at, "target"),
        "target-twice",
        `line ${same.at.line} has a target "${target.id}" already; choose another id`,
      );
    ids.set(target.id, target);
    // Parts are numbered alike, so that the first ones meet where any do.
    const name = fileNameOf(target, 1, SOME_DAY).toLowerCase();
    const other = names.get(name);
    if (other && !same)
      report.atValue(
        below(at, "file"),
        "file-twice",
        `the file of "${other.id}" has this name already; choose another, or put {number} into it`,
      );
    names.set(name, target);
  }
}

import { didYouMean, sha256OfData, showText, type TextFile, tidyText } from "../../base/index.js";
import { findFact, isNumeric } from "../../facts/index.js";
import type { DeviableRule, Deviation, Deviations, NumberAccepted } from "../book/deviation.js";
import type { SwitchedOff } from "../book/overlay.js";
import type { FileFinding } from "../book/rulebook.js";
import { readNumber } from "../reading/fact-values.js";
import { DEVIATIONS_SCHEMA } from "../schemas/index.js";
import { checkSchema } from "../text/check-schema.js";
import { DEVIATION_LIMITS } from "../text/file-limits.js";
import type { RawDeviation, RawDeviations } from "../text/raw.js";
import { readYaml } from "../text/read-yaml.js";
import { below, Report } from "../text/source.js";

/** Accepted deviations, or what is wrong with their file. */
export type DeviationsReading =
  | { readonly ok: true; readonly deviations: Deviations }
  | { readonly ok: false; readonly findings: readonly FileFinding[] };

/**
 * Reads a file of accepted deviations. Whether the points are there only a run can tell.
 *
 * @param rules - every rule from which a deviation can be named, those built into the screening included
 * @param switchedOff - rules that overlays have switched off, so that there is nothing to deviate from
 */
export function readDeviationFile(
  file: TextFile,
  rules: Iterable<DeviableRule>,
  switchedOff: readonly SwitchedOff[] = [],
): DeviationsReading {
  const reading = readYaml(file, DEVIATION_LIMITS);
  if (!reading.ok) return reading;
  const findings: FileFinding[] = [];
  const report = new Report(reading.source, findings);
  if (!checkSchema(reading.source, DEVIATIONS_SCHEMA, report)) return { ok: false, findings };
  const raw = reading.source.data as RawDeviations;
  const known: KnownRules = { byId: new Map([...rules].map((rule) => [rule.id, rule])), switchedOff };
  const entries = raw.deviations.map((entry, index) => readEntry(entry, below("/deviations", index), known, report));
  checkOverlaps(entries, report);
  if (findings.length > 0) return { ok: false, findings };
  return { ok: true, deviations: { file: file.path, digest: sha256OfData(raw), entries } };
}

/** The rules that a deviation can name, and those that it can no longer. */
interface KnownRules {
  readonly byId: ReadonlyMap<string, DeviableRule>;
  readonly switchedOff: readonly SwitchedOff[];
}

function readEntry(raw: RawDeviation, pointer: string, { byId, switchedOff }: KnownRules, report: Report): Deviation {
  const rule = byId.get(raw.rule);
  const at = below(pointer, "rule");
  const off = switchedOff.find((one) => one.rule === raw.rule);
  if (rule === undefined && off) {
    const text = `"${raw.rule}" is switched off by "${off.overlay}", so that nothing deviates from it; leave this out`;
    report.atValue(at, "rule-switched-off", text);
  } else if (rule === undefined) {
    const near =
      didYouMean(raw.rule, byId.keys()) ||
      "; use the id of a rule of the rulebook, or take this entry out if that rule is no more";
    report.atValue(at, "unknown-rule", `the rulebook has no rule "${showText(raw.rule)}"${near}`);
  } else if (rule.releases === "never") {
    const text = `no deviation from "${rule.id}" is accepted (releases: never): mend what it names, and leave this out`;
    report.atValue(at, "never-accepted", text);
  }
  if (raw.until <= raw.from) {
    const text = `until ${raw.until} is not after from ${raw.from}; it is the first day not in force`;
    report.atValue(below(pointer, "until"), "ends-before-start", text);
  }
  const numbers = (key: "limit" | "value") => readNumbers(raw[key], below(pointer, key), rule, report);
  return { ...raw, limit: numbers("limit"), value: numbers("value"), at: report.placeOf(pointer) };
}

/** One number or the two ends of a band, in the unit of the fact that the rule judges. */
function readNumbers(
  given: RawDeviation["limit"],
  pointer: string,
  rule: DeviableRule | undefined,
  report: Report,
): NumberAccepted | null {
  if (given === undefined || rule === undefined) return null;
  const judged = findFact(rule.judges.proposed ?? rule.judges.installed ?? "");
  if (!judged || !isNumeric(judged)) {
    report.atKey(pointer, "no-number", `"${rule.id}" judges no number; leave this out`);
    return null;
  }
  const written = typeof given === "object" ? given : [given];
  const values = written.flatMap((one, index) => {
    const reading = readNumber(one, judged);
    if (reading.ok) return [reading.value];
    const at = typeof given === "object" ? below(pointer, index) : pointer;
    report.atValue(at, reading.mistake.code, reading.mistake.text);
    return [];
  });
  const [low, high] = values;
  if (low !== undefined && high !== undefined && high <= low) {
    report.atValue(pointer, "out-of-order", "the second end of the band is not above the first; write the lower first");
  }
  return { written: written.join(" to "), values };
}

/** Two acceptances of one finding on one day would leave open which of them holds. */
function checkOverlaps(entries: readonly Deviation[], report: Report): void {
  const known = new Map<string, Deviation[]>();
  for (const [index, entry] of entries.entries()) {
    const key = JSON.stringify([tidyText(entry.point.normalize("NFC")), entry.rule]);
    const others = known.get(key) ?? [];
    const other = others.find((one) => one.from < entry.until && entry.from < one.until);
    if (other) {
      const text = `line ${other.at.line} accepts the same until ${other.until}; let one begin when the other ends, or leave one out`;
      report.atValue(below("/deviations", index), "overlapping-days", text);
    }
    known.set(key, [...others, entry]);
  }
}

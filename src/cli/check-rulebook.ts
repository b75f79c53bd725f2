import type { PlainDay, TextFile } from "../base/index.js";
import type { RulesCheck, WrongCase } from "../outputs/index.js";
import { alterBook, coverageOf } from "../proving/index.js";
import { type FileFinding, type Rule, type Rulebook, type RuleCase, runCase } from "../rulebook/index.js";
import { loadTrusted, readBookFiles } from "./open-rulebook.js";
import { lineOf, problemsSince } from "./problems-since.js";
import { loadRemembered } from "./remembered-books.js";

/** What to look at besides form, meaning and cases. */
export interface CheckOptions {
  /** Folders of sites to lay over the rulebook, the lowest first. */
  readonly over: readonly string[];
  readonly coverage: boolean;
  readonly alterations: boolean;
  /** An older rulebook or overlay, FOLDER or FOLDER@COMMIT: what changed must have a higher version and be recorded. */
  readonly since: string | null;
  /** Files of public keys, of which one must have signed the rulebook; none: no signature is asked for. */
  readonly trust: readonly string[];
  /** The day on which reviews are due. */
  readonly asOf: PlainDay;
}

/** Checks a rulebook folder as a whole; null for the one that comes with the program. */
export async function checkRulebook(folder: string | null, options: CheckOptions): Promise<RulesCheck> {
  const read = await readBookFiles(folder, options.over);
  if (!read.ok) return notLoaded(read.findings, []);
  const loading = await loadTrusted(read, folder, options);
  if (!loading.ok)
    return notLoaded(
      loading.findings,
      [read, ...read.over].flatMap(({ files }) => files),
    );
  const { rulebook } = loading;
  const below = options.over.length > 0 ? loadRemembered({ ...read, over: [] }) : null;
  const alone = below?.ok ? below.rulebook : null;
  const newer = { ...read, folder, rulebook: alone ?? rulebook };
  const unreleased = options.since === null ? [] : await problemsSince(options.since, newer);
  const { name, version, digest, rules, models, tables } = rulebook;
  const overlays = rulebook.overlays.map((one) => ({ name: one.name, version: one.version, digest: one.digest }));
  const switchedOff = rulebook.switchedOff.map(({ rule }) => rule);
  return {
    mistakes: unreleased,
    rulebook: {
      name,
      version,
      digest,
      overlays,
      switchedOff,
      rules: rules.length,
      models: models.size,
      tables: tables.size,
    },
    cases: runCases(rulebook, alone),
    reviewsDue: rulebook.rules.flatMap((rule) => reviewsDueOf(rule, options.asOf)),
    coverage: options.coverage ? coverageOf(rulebook) : null,
    alterations: options.alterations ? alterBook(rulebook) : null,
  };
}

function notLoaded(findings: readonly FileFinding[], files: readonly TextFile[]): RulesCheck {
  const mistakes = findings.map((finding) => ({ ...finding, lineText: lineOf(finding, files) }));
  return { mistakes, rulebook: null, cases: null, reviewsDue: [], coverage: null, alterations: null };
}

function reviewsDueOf({ id, limits }: Rule, asOf: PlainDay): RulesCheck["reviewsDue"] {
  return limits.flatMap(({ from, until, reviewBy, at }) => {
    const holds = from <= asOf && (until === null || asOf < until);
    return holds && reviewBy !== null && reviewBy < asOf ? [{ rule: id, reviewBy, at }] : [];
  });
}

/** What to do about a case that an overlay has inherited and made wrong. */
function inheritedWords(rule: Rule, ruleCase: RuleCase, alone: Rulebook | null): string {
  const before = alone?.rules.find(({ id }) => id === rule.id);
  const same = before?.cases.find(({ name, at }) => name === ruleCase.name && at.file === ruleCase.at.file);
  if (!alone || !before || !same || runCase(before, same, alone).some(({ difference }) => difference !== null))
    return "";
  return (
    "; the case is inherited and holds without the overlay: " +
    `replace the cases, changes: { rule: ${rule.id} } with replaces: { cases: [...] }`
  );
}

/** @param alone - the rulebook without what lies over it; null where nothing does */
function runCases(
  rulebook: Rulebook,
  alone: Rulebook | null,
): { readonly runs: number; readonly wrong: readonly WrongCase[] } {
  const wrong: WrongCase[] = [];
  let runs = 0;
  for (const rule of rulebook.rules) {
    for (const ruleCase of rule.cases) {
      for (const { stage, difference } of runCase(rule, ruleCase, rulebook)) {
        runs += 1;
        if (difference === null) continue;
        const text = difference + inheritedWords(rule, ruleCase, alone);
        wrong.push({ rule: rule.id, name: ruleCase.name, stage, difference: text, at: ruleCase.at });
      }
    }
  }
  return { runs, wrong };
}

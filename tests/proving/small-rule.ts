import type { TextFile } from "../../src/base/index.js";
import { loadRulebook, type Rulebook } from "../../src/rulebook/index.js";
import { smallFiles } from "../rulebook/small-book.js";

/** A rule about the thickness of a wall, with the cases given. */
export function wallRule(cases: readonly string[], more: Readonly<Record<string, string>> = {}): string {
  const parts: Readonly<Record<string, string>> = {
    id: "thin-wall",
    title: '"the wall is thick enough"',
    sets: "[full]",
    stages: "[proposed]",
    appliesWhen: "{ fact: mounting_method, operator: in, value: [tapped-hole, welded-pad] }",
    judges: "wall_thickness",
    limits: "[{ from: 2026-01-01, until: null, fail: { below: 3 mm }, cites: [rings] }]",
    citations: '{ rings: { basis: common-practice, says: "thin walls ring" } }',
    messages: '{ fail: "thin" }',
    remedy: '{ text: "elsewhere", change: [] }',
    casesGive: "{ mounting_method: tapped-hole, asOf: 2026-06-01 }",
    ...more,
  };
  const lines = Object.entries(parts).map(([key, value]) => `${key}: ${value}\n`);
  return `${lines.join("")}cases:\n${cases.map((line) => `  ${line.trim()}\n`).join("")}`;
}

/** A rulebook with this rule and a model alone. */
export function bookOf(rule: string, conditions: Readonly<Record<string, string>> = {}): Rulebook {
  const files: readonly TextFile[] = smallFiles({
    "hole/thread-depth.yaml": null,
    "speed/slow.yaml": null,
    "conditions/outdoors.yaml": null,
    "seat/thin-wall.yaml": rule,
    ...conditions,
  });
  const loading = loadRulebook(files);
  if (!loading.ok) throw new Error(loading.findings.map(({ text }) => text).join("\n"));
  return loading.rulebook;
}

/** Cases that show everything of the rule. */
export const GOOD_CASES = [
  '- { name: "thick enough", given: { wall_thickness: 3 mm }, expect: pass }',
  '- { name: "too thin", given: { wall_thickness: 2 mm }, expect: fail }',
  '- { name: "welded, too thin", given: { wall_thickness: 2 mm, mounting_method: welded-pad }, expect: fail }',
  '- { name: "not known", given: {}, expect: undecided, missing: [wall_thickness] }',
  '- { name: "method not known", given: { wall_thickness: 2 mm, mounting_method: null }, expect: undecided, missing: [mounting_method] }',
  '- { name: "bonded", given: { wall_thickness: 2 mm, mounting_method: adhesive-pad }, expect: not-applicable }',
  '- { name: "magnet", given: { wall_thickness: 2 mm, mounting_method: magnet }, expect: not-applicable }',
  '- { name: "clamp", given: { wall_thickness: 2 mm, mounting_method: clamp }, expect: not-applicable }',
  '- { name: "old hole", given: { wall_thickness: 2 mm, mounting_method: existing-hole }, expect: not-applicable }',
  '- { name: "before", given: { wall_thickness: 2 mm, asOf: 2025-12-31 }, expect: no-limit-in-force }',
  '- { name: "first day", given: { wall_thickness: 2 mm, asOf: 2026-01-01 }, expect: fail }',
] as const;

/** One case for each outcome that the rule can have, as loading asks for, and no more. */
export const ONE_OF_EACH = [
  '- { name: "thick", given: { wall_thickness: 30 mm }, expect: pass }',
  '- { name: "very thin", given: { wall_thickness: 1 mm }, expect: fail }',
  '- { name: "not known", given: {}, expect: undecided, missing: [wall_thickness] }',
  '- { name: "bonded", given: { wall_thickness: 1 mm, mounting_method: adhesive-pad }, expect: not-applicable }',
] as const;

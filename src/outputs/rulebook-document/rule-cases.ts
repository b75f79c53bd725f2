import { type FactState, factName, findFact, stateInWords } from "../../facts/index.js";
import { givenFacts, type Rule, type RuleCase } from "../../rulebook/index.js";
import { countOf } from "../wording/numbers.js";
import { type Block, type Line, type Row, text } from "./block.js";
import type { BookShown } from "./book-shown.js";

/** The cases of a rule as a table, what all of them start from said once above it. */
export function caseBlocks(rule: Rule, { cases }: BookShown): readonly Block[] {
  if (cases === "none" || rule.cases.length === 0) return [];
  const shared = givenInWords(rule.casesGive);
  const table: Block = {
    is: "table",
    caption: `Cases of ${rule.id}`,
    headings: ["case", "given", "comes out as"],
    rows: rule.cases.map(
      (one): Row => ({ cells: [[one.name], [givenInWords(one.given) || "nothing more"], expected(one)] }),
    ),
    kind: "cases",
  };
  return [
    {
      is: "fold",
      summary: `${countOf(rule.cases.length, "case")} of ${rule.id}, each run by the checks of the rulebook`,
      isOpen: cases === "open",
      blocks: [...(shared === "" ? [] : [text(`Unless a case says otherwise: ${shared}.`)]), table],
    },
  ];
}

function expected({ expect, missing }: RuleCase): Line {
  const open = missing === null || missing.length === 0 ? "" : `: ${missing.map(factName).join(", ")}`;
  return [{ outcome: expect }, open];
}

/** What a case gives ("hole depth 15 mm; sensor model baseline; on 2026-06-01"). */
function givenInWords(given: Readonly<Record<string, unknown>>): string {
  const facts = givenFacts(Object.entries(given));
  const parts = Object.entries(given).map(([id, written]) => {
    if (id === "asOf") return `on ${String(written)}`;
    if (id === "stage") return `stage ${String(written)}`;
    if (id === "model") return `model ${String(written)}`;
    // A number stands as it is written, in the unit that the case is about.
    const isMeasured = typeof written === "string" && findFact(id)?.kind === "quantity";
    return `${factName(id)}: ${isMeasured ? written : givenValue(id, facts.get(id))}`;
  });
  return parts.join("; ");
}

const UNKNOWN = {
  missing: "not known",
  doubtful: "in doubt",
  unreadable: "cannot be read",
  conflicting: "contradicts itself",
  "too-close": "not known",
} as const;

function givenValue(id: string, state: FactState | undefined): string {
  return state === undefined || state.known ? stateInWords(id, state) : UNKNOWN[state.reason];
}

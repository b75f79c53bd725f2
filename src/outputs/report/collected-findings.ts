import type { CellPlace } from "../../base/index.js";
import { factName } from "../../facts/index.js";
import { type FactShown, type Finding, repeatedBy } from "../../screening/index.js";
import { basesOf, missingOf, reasonOf, remedyOf, sourceOf } from "../findings/reasons.js";
import type { RuleIndex } from "../findings/rule-index.js";
import { acceptedInWords } from "../wording/deviations.js";
import { factValueInWords, limitInWords, marginInWords } from "../wording/facts.js";
import { type FindingData, type FindingsData, OUTCOMES } from "./list/data.js";
import type { Texts } from "./texts.js";

/** Findings of a report, each said once for all points that have the same but for its cells. */
export class CollectedFindings {
  readonly #rules: RuleIndex;
  readonly #texts: Texts;
  readonly #sheetOf: (sheet: string | null) => number;
  /** By what finding repeats, and by what it says of its own. */
  readonly #ofPattern = new WeakMap<Finding, Map<string, number>>();
  readonly #places = new Map<string, number>();
  readonly all: FindingData[] = [];

  /** @param sheetOf - the place of a sheet */
  constructor(rules: RuleIndex, texts: Texts, sheetOf: (sheet: string | null) => number) {
    this.#rules = rules;
    this.#texts = texts;
    this.#sheetOf = sheetOf;
  }

  /**
   * The findings with their cells, in the order given.
   *
   * @param sheet - cells of another sheet than this one are written with its place
   */
  of(findings: readonly Finding[], sheet: string | null): FindingsData {
    return findings.flatMap((finding) => [this.#placeOf(finding), this.#cellsOf(finding, sheet)]);
  }

  #placeOf(finding: Finding): number {
    const pattern = repeatedBy(finding);
    const own = `${finding.group ?? ""}\n${finding.message ?? ""}`;
    const places = this.#ofPattern.get(pattern) ?? new Map<string, number>();
    const known = places.get(own);
    if (known !== undefined) return known;
    const data = this.#dataOf(finding);
    const key = data.join();
    const place = this.#places.get(key) ?? this.all.length;
    if (place === this.all.length) {
      this.all.push(data);
      this.#places.set(key, place);
    }
    this.#ofPattern.set(pattern, places.set(own, place));
    return place;
  }

  #dataOf(finding: Finding): FindingData {
    const texts = this.#texts;
    const { limit, margin, accepted, group } = finding;
    return [
      this.#rules.order(finding.rule),
      OUTCOMES.indexOf(finding.outcome),
      texts.place(reasonOf(finding, this.#rules)),
      texts.place(limit === null ? "" : limitInWords(limit)),
      texts.place(sourceOf(finding, this.#rules)),
      texts.place(remedyOf(finding, this.#rules)),
      texts.place(margin === null ? "" : marginInWords(margin, limit?.unit ?? null)),
      texts.place(missingOf([finding])),
      texts.place(accepted === null ? "" : acceptedInWords(accepted)),
      texts.place(group ?? ""),
      margin?.fraction ?? null,
      texts.place(basesOf(finding, this.#rules)),
      ...finding.facts.map((fact) => texts.place(factInWords(fact))),
    ];
  }

  #cellsOf({ facts }: Finding, sheet: string | null): string {
    const spelled = ({ sheet: own, cell }: CellPlace): string =>
      own === sheet ? cell : `${this.#sheetOf(own)}!${cell}`;
    return facts
      .map(({ cells }) => cells.map(spelled).join())
      .join(";")
      .replace(/;+$/, "");
  }
}

/** A fact with its value, what was taken for granted, and the line where no cell states it. */
function factInWords(fact: FactShown): string {
  const notes = [
    ...(fact.assumed === null ? [] : [fact.assumed]),
    ...(fact.origin === null ? [] : [`${fact.origin.file}, line ${fact.origin.line}`]),
  ];
  return `${factName(fact.fact)}: ${factValueInWords(fact)}${notes.length === 0 ? "" : ` (${notes.join("; ")})`}`;
}

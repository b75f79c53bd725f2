import { factName, plainWords } from "../../facts/index.js";
import type { GroupShown, PointResult, ResultHead, RuleShown } from "../../screening/index.js";
import { rowsOfGroupInWords } from "../findings/group-findings.js";
import { gravestFirst } from "../findings/leading.js";
import { notCountedIn } from "../findings/rows-in-no-group.js";
import { indexRules, type RuleIndex } from "../findings/rule-index.js";
import { jsonText } from "../json/json-text.js";
import { otherMethodInWords, triedInWords } from "../wording/methods.js";
import { rowInWords } from "../wording/places.js";
import { CollectedFindings } from "./collected-findings.js";
import { type GroupData, OUTCOMES, type PointData, type ReportData } from "./list/data.js";
import { Texts } from "./texts.js";

/** Heading over points whose rows name no machine. */
const NO_MACHINE = "Machine not named";

/** Gathers the points of a report, so that texts and findings which many have in common stand once. */
export class CollectedPoints {
  readonly #texts = new Texts();
  readonly #rules: RuleIndex;
  readonly #shown: readonly RuleShown[];
  readonly #findings: CollectedFindings;
  readonly #files = new Places<string>();
  readonly #sheets = new Places<string | null>();
  readonly #machines = new Places<string>();
  readonly #points: PointData[] = [];
  readonly #groups: readonly GroupData[];

  constructor(head: ResultHead) {
    this.#rules = indexRules(head);
    this.#shown = head.rules;
    this.#findings = new CollectedFindings(this.#rules, this.#texts, (sheet) => this.#sheets.of(sheet));
    this.#groups = head.groups.map((group) => this.#group(group, head));
  }

  get size(): number {
    return this.#points.length;
  }

  /** How many machines the points are on; points without a machine on none. */
  get machines(): number {
    return this.#machines.all.filter((machine) => machine !== NO_MACHINE).length;
  }

  add(point: PointResult): void {
    const texts = this.#texts;
    const { verdict, accepted, settledBy, sheet } = point;
    this.#points.push([
      this.#machines.of(machineInWords(point)),
      texts.place(placeInWords(point)),
      texts.place(point.point ?? ""),
      point.id ?? "",
      this.#files.of(point.file),
      this.#sheets.of(sheet),
      point.row,
      OUTCOMES.indexOf(verdict),
      accepted ? 1 : 0,
      texts.placeInPieces(otherMethodInWords(point)),
      texts.placeInPieces(triedInWords(point)),
      texts.place(settledBy === null ? "" : settledBy.map(factName).join(", ")),
      ...this.#findings.of(this.#ordered(point.findings), sheet),
    ]);
  }

  data(): ReportData {
    const placesOf = (names: readonly (string | null)[]) => names.map((name) => this.#texts.place(name ?? ""));
    const [files, sheets, machines] = [this.#files, this.#sheets, this.#machines].map(({ all }) => placesOf(all));
    return {
      rules: this.#shown.map(({ id, title }) => [this.#texts.place(id), this.#texts.place(title)]),
      files: files ?? [],
      sheets: sheets ?? [],
      machines: machines ?? [],
      findings: this.#findings.all,
      points: this.#points,
      groups: this.#groups,
      texts: this.#texts.all,
    };
  }

  #group(group: GroupShown, head: ResultHead): GroupData {
    return [
      this.#texts.place(group.title),
      this.#texts.place(group.id),
      this.#texts.place(rowsOfGroupInWords(group.rows, head.surveys.length > 1)),
      this.#texts.place(disagreementsInWords(group)),
      this.#texts.place(notCountedIn(group, head)),
      ...this.#findings.of(this.#ordered(group.findings), null),
    ];
  }

  /** What keeps from passing first, then what was asked for beside it. */
  #ordered(findings: PointResult["findings"]): PointResult["findings"] {
    const grave = gravestFirst(findings, this.#rules);
    return grave.length === findings.length ? grave : [...grave, ...findings.filter((one) => !grave.includes(one))];
  }
}

/**
 * The data as JSON that can stand in an element of a page: no `<` is left in it. In pieces, since of a large survey it is long.
 */
export function* dataText(data: ReportData): Generator<string> {
  const { points, findings, ...rest } = data;
  const text = (value: unknown): string => jsonText(value).replaceAll("<", "\\u003c");
  yield `${text(rest).slice(0, -1)},"findings":[`;
  yield* listed(findings, text);
  yield '],"points":[';
  yield* listed(points, text);
  yield "]}";
}

const AT_ONCE = 500;

function* listed(items: readonly unknown[], text: (value: unknown) => string): Generator<string> {
  for (let at = 0; at < items.length; at += AT_ONCE) {
    yield (at === 0 ? "" : ",\n") + text(items.slice(at, at + AT_ONCE)).slice(1, -1);
  }
}

/** Things told by their place, in the order in which they first came. */
class Places<Thing> {
  readonly #places = new Map<Thing, number>();

  of(thing: Thing): number {
    const place = this.#places.get(thing) ?? this.#places.size;
    this.#places.set(thing, place);
    return place;
  }

  get all(): readonly Thing[] {
    return [...this.#places.keys()];
  }
}

function machineInWords({ machine, assetTag }: PointResult): string {
  if (machine === null) return assetTag ?? NO_MACHINE;
  return assetTag === null || assetTag === machine ? machine : `${machine} (${assetTag})`;
}

/** Where on its machine a point sits; else its name, else its row. */
function placeInWords(point: PointResult): string {
  const parts = [point.component, point.bearingPosition, point.direction].flatMap((choice) =>
    choice === null ? [] : [plainWords(choice)],
  );
  return parts.length > 0 ? parts.join(", ") : (point.point ?? rowInWords(point));
}

function disagreementsInWords({ disagreements }: GroupShown): string {
  return disagreements
    .map(({ fact, values }) => {
      const stated = values.map(({ value, rows, cells }) => {
        const where = cells.map(({ sheet, cell }) => (sheet === null ? cell : `${sheet}!${cell}`)).join(", ");
        return `${value} in ${where}${rows > cells.length ? " and more" : ""}`;
      });
      return `${factName(fact)}: ${stated.join("; ")}`;
    })
    .join("\n");
}

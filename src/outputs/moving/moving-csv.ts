import type { LimitMoved, MovedStep } from "../../moving/index.js";
import { csvRecord, type Field } from "../csv/record.js";
import { safeText } from "../csv/safe-text.js";
import { overlaysNamed } from "../wording/overlays.js";

type Columns = readonly (readonly [heading: string, field: (step: MovedStep) => Field])[];

function columnsFor({ head, rule, place, model }: LimitMoved): Columns {
  const { rulebook, set, stage, asOf } = head;
  const yesNo = (value: boolean): string => (value ? "yes" : "no");
  return [
    ["rule", () => rule.id],
    ["limit", () => place.name],
    ["moves", () => place.moves],
    ["model", () => model],
    ["value", ({ value }) => value],
    ["unit", () => place.unit],
    ["in force", ({ inForce }) => yesNo(inForce)],
    ["changes", ({ changes }) => yesNo(changes)],
    ["fail", (step) => step.rule.fail],
    ["warn", (step) => step.rule.warn],
    ["undecided", (step) => step.rule.undecided],
    ["pass", (step) => step.rule.pass],
    ["not applicable", (step) => step.rule.notApplicable],
    ["not asked", (step) => step.rule.notAsked],
    ["points fail", (step) => step.points.fail],
    ["points warn", (step) => step.points.warn],
    ["points pass", (step) => step.points.pass],
    ["rulebook", () => rulebook.name],
    ["rulebook version", () => rulebook.version],
    ["rulebook digest", () => rulebook.digest],
    ["overlays", () => overlaysNamed(rulebook)],
    ["set", () => set],
    ["stage", () => stage],
    ["as of", () => asOf],
    ["digest", () => head.digest],
  ];
}

/** A table with one row per value of the moved number, as RFC 4180 wants it; one record per piece, the headings first. */
export function* movingCsv(moved: LimitMoved): IterableIterator<string> {
  const columns = columnsFor(moved);
  yield csvRecord(columns.map(([heading]) => heading));
  for (const step of moved.steps) {
    yield csvRecord(
      columns.map(([, field]) => {
        const content = field(step);
        return typeof content === "string" ? safeText(content) : content;
      }),
    );
  }
}

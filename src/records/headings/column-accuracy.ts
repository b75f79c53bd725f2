import { unitOf } from "../../base/index.js";
import type { FactDefinition } from "../../facts/index.js";
import type { Vocabulary } from "../words/vocabulary.js";
import type { ColumnPlan } from "./columns.js";
import { listedNames } from "./heading.js";
import { accuracyOfHeading, type ColumnAccuracy, openHeading } from "./heading-accuracy.js";
import type { Table, TableHeading } from "./tables.js";

/**
 * Says how accurate the numbers of each column are: by what a person says of it, else by its heading or the row of
 * units under it. Asked last, when all that settles units has been looked at.
 */
export function withColumnAccuracy(
  plan: readonly ColumnPlan[],
  { headings }: Table,
  vocabulary: Vocabulary,
): readonly ColumnPlan[] {
  return plan.map((column) => {
    const field = [column.field, ...column.also].find((one) => one?.kind === "quantity") ?? null;
    const heading = headings.get(column.column);
    if (!field || !heading) return column;
    const accuracy = accuracyOf(column, field, heading, vocabulary);
    return accuracy === null ? column : { ...column, accuracy };
  });
}

function accuracyOf(
  column: ColumnPlan,
  field: FactDefinition,
  { own, above, unitBelow }: TableHeading,
  vocabulary: Vocabulary,
): ColumnAccuracy | null {
  const told = column.word?.accuracy;
  if (told) return { stated: told, why: column.word?.by ?? "" };
  const unit = column.unsettledUnit ? null : (column.unit?.id ?? field.unit ?? null);
  const even = unit !== null && field.dimension && unitOf(unit, field.dimension).leads ? null : unit;
  const context = { field, unit: even, style: column.style.style, vocabulary };
  const opened = [unitBelow, own, above].map((text) => {
    const { written, way } = openHeading(text, vocabulary);
    // Where a way belongs to the listed name itself (nameplate speed), it names what is asked for.
    const isName =
      way !== null && listedNames(text, vocabulary).some((name) => openHeading(name, vocabulary).way === way);
    return { written, way: isName ? null : way };
  });
  const stated = opened.find(({ written }) => written !== null) ?? opened.find(({ way }) => way !== null);
  return stated ? accuracyOfHeading(stated, context) : null;
}

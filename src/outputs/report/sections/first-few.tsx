import type { VNode } from "preact";

/** Rows that everybody should see; what comes after concerns few points. */
const SHOWN = 12;

interface FirstFewProps<Row> {
  readonly rows: readonly Row[];
  /** What the rows are ("rules"). */
  readonly what: string;
  /** @param name - tells the two tables of one kind apart */
  readonly table: (rows: readonly Row[], name: (first: string) => string) => VNode;
}

/** A table of the first few rows; the rest in one of its own that is opened when it is wanted. */
export function FirstFew<Row>({ rows, what, table }: FirstFewProps<Row>) {
  const rest = rows.slice(SHOWN);
  return (
    <>
      {table(rows.slice(0, SHOWN), (name) => name)}
      {rest.length === 0 ? null : (
        <details class="printed">
          <summary>
            {rest.length} further {what}
          </summary>
          {table(rest, (name) => `${name}, continued`)}
        </details>
      )}
    </>
  );
}

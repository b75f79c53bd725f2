import { countOf } from "../../wording/numbers.js";
import { type ReportData, textAt } from "../list/data.js";
import { type Entry, groupEntry, pointEntry } from "../list/entry.js";
import { EntryDetails, EntryLine } from "../list/entry-view.js";

/** Points or groups up to which a page without its script lists them; beyond, a page would be too long to be read. */
const MOST_LISTED = 300;

/** The points for a reader whose program runs no scripts. */
export function PlainPoints({ data }: { readonly data: ReportData }) {
  if (data.points.length > MOST_LISTED) return <TooMany what={countOf(data.points.length, "point")} />;
  return (
    <>
      {data.machines.map((machine, place) => (
        <section key={machine} class="machine">
          <h3>{textAt(data, machine)}</h3>
          <Entries entries={data.points.filter(([on]) => on === place).map((point) => pointEntry(data, point))} />
        </section>
      ))}
    </>
  );
}

/** The groups for the same reader. */
export function PlainGroups({ data }: { readonly data: ReportData }) {
  if (data.groups.length > MOST_LISTED) return <TooMany what={countOf(data.groups.length, "group")} />;
  return <Entries entries={data.groups.map((group) => groupEntry(data, group))} />;
}

function Entries({ entries }: { readonly entries: readonly Entry[] }) {
  return (
    <ul class="entries">
      {entries.map((entry) => (
        <li key={entry.label}>
          <p>
            <EntryLine entry={entry} />
          </p>
          <EntryDetails entry={entry} level={4} />
        </li>
      ))}
    </ul>
  );
}

function TooMany({ what }: { readonly what: string }) {
  return (
    <p>
      The list of {what} is made by the script of this page, which was not run here. The screened workbook, the tables
      and the result document of the run hold the same.
    </p>
  );
}

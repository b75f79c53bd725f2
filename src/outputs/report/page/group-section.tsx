import { type ReportData, textAt } from "../list/data.js";
import { groupEntry } from "../list/entry.js";
import { EntryDetails, EntryLine } from "../list/entry-view.js";

interface GroupSectionProps {
  readonly data: ReportData;
  /** How many groups are put on the page. */
  readonly listed: number;
  /** Groups that are open; null for all of them. */
  readonly open: ReadonlySet<number> | null;
  readonly onToggle: (group: number, open: boolean) => void;
  readonly onMore: () => void;
}

/** Groups, kind by kind, as far as they are listed. */
export function GroupSection({ data, listed, open, onToggle, onMore }: GroupSectionProps) {
  const first = data.groups.slice(0, listed);
  const kinds = [...new Set(first.map(([title]) => title))];
  const left = data.groups.length - first.length;
  return (
    <>
      {kinds.map((kind) => (
        <section key={kind} class="machine">
          <h3>{textAt(data, kind)}</h3>
          <ul class="entries">
            {first.map((group, place) => {
              if (group[0] !== kind) return null;
              const entry = groupEntry(data, group);
              const isOpen = open === null || open.has(place);
              return (
                <li key={place}>
                  <details open={isOpen} onToggle={(event) => onToggle(place, event.currentTarget.open)}>
                    <summary>
                      <EntryLine entry={entry} />
                    </summary>
                    {isOpen ? <EntryDetails entry={entry} level={4} /> : null}
                  </details>
                </li>
              );
            })}
          </ul>
        </section>
      ))}
      {left > 0 ? (
        <p class="screen-only">
          <button type="button" onClick={onMore}>
            List more ({left} left)
          </button>
        </p>
      ) : null}
    </>
  );
}

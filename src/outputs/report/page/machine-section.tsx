import { Component } from "preact";
import { type ReportData, textAt } from "../list/data.js";
import { pointEntry } from "../list/entry.js";
import { EntryDetails, EntryLine } from "../list/entry-view.js";

export interface MachineSectionProps {
  readonly data: ReportData;
  readonly machine: number;
  /** Places of the points that are listed. */
  readonly points: readonly number[];
  /** Those of them that are open. */
  readonly open: readonly number[];
  readonly onToggle: (point: number, open: boolean) => void;
}

/** A machine and its points. Drawn anew only when its points, or those open, are others: there may be thousands. */
export class MachineSection extends Component<MachineSectionProps> {
  override shouldComponentUpdate(next: MachineSectionProps): boolean {
    const { machine, points, open } = this.props;
    return machine !== next.machine || points.join() !== next.points.join() || open.join() !== next.open.join();
  }

  override render({ data, machine, points, open, onToggle }: MachineSectionProps) {
    return (
      <section class="machine">
        <h3>{textAt(data, data.machines[machine] ?? 0)}</h3>
        <ul class="entries">
          {points.map((point) => (
            <Point key={point} data={data} place={point} isOpen={open.includes(point)} onToggle={onToggle} />
          ))}
        </ul>
      </section>
    );
  }
}

interface PointProps {
  readonly data: ReportData;
  readonly place: number;
  readonly isOpen: boolean;
  readonly onToggle: MachineSectionProps["onToggle"];
}

function Point({ data, place, isOpen, onToggle }: PointProps) {
  const point = data.points[place];
  if (point === undefined) return null;
  const entry = pointEntry(data, point);
  return (
    <li>
      <details open={isOpen} onToggle={(event) => onToggle(place, event.currentTarget.open)}>
        <summary>
          <EntryLine entry={entry} />
        </summary>
        {isOpen ? <EntryDetails entry={entry} level={4} /> : null}
      </details>
    </li>
  );
}

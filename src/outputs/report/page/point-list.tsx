import type { ReportData } from "../list/data.js";
import type { MachinePoints, Selected } from "../list/selection.js";
import { MachineSection } from "./machine-section.js";

interface PointListProps {
  readonly data: ReportData;
  readonly selected: Selected;
  /** How many points are listed before more are asked for. */
  readonly listed: number;
  /** How many of them are on the page by now. */
  readonly drawn: number;
  /** Points that are open; null for all of them. */
  readonly open: ReadonlySet<number> | null;
  readonly onToggle: (point: number, open: boolean) => void;
  readonly onMore: () => void;
}

/** The points chosen, machine by machine, as far as they are listed. */
export function PointList({ data, selected, listed, drawn, open, onToggle, onMore }: PointListProps) {
  if (selected.count === 0) return <p>No point is like that. “Show everything” takes all choices back.</p>;
  const left = selected.count - listed;
  return (
    <>
      {firstOf(selected.machines, drawn).map(({ machine, points }) => (
        <MachineSection
          key={machine}
          data={data}
          machine={machine}
          points={points}
          open={open === null ? points : points.filter((point) => open.has(point))}
          onToggle={onToggle}
        />
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

function firstOf(machines: readonly MachinePoints[], count: number): readonly MachinePoints[] {
  const first: MachinePoints[] = [];
  let left = count;
  for (const { machine, points } of machines) {
    if (left <= 0) break;
    first.push(points.length <= left ? { machine, points } : { machine, points: points.slice(0, left) });
    left -= points.length;
  }
  return first;
}

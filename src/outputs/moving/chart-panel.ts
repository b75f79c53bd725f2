import { ticks } from "d3-array";
import { area, curveStepAfter, line, stack } from "d3-shape";
import type { Stretch } from "../../moving/index.js";
import { markedOutcome } from "../wording/outcomes.js";
import type { Kind } from "./chart-style.js";

/** Where a panel stands in the chart, in its units; `x` turns a value of the number into a place. */
export interface PanelPlace {
  readonly top: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly x: (value: number) => number;
}

/** One panel: stacked areas of counts over the moved number. */
export interface Panel {
  readonly heading: string;
  /** From the bottom to the top. */
  readonly kinds: readonly Kind[];
  readonly countsOf: (stretch: Stretch) => Readonly<Partial<Record<Kind, number>>>;
  /** What the legend says beside each kind. */
  readonly inForce: Readonly<Partial<Record<Kind, number>>> | null;
}

interface Corner {
  readonly at: number;
  readonly counts: Readonly<Partial<Record<Kind, number>>>;
}

/** The panel as SVG: heading, scale of counts, areas with their edges, legend. */
export function panelSvg(panel: Panel, stretches: readonly Stretch[], place: PanelPlace): string {
  const { top, height, left, right, x } = place;
  const corners = cornersOf(panel, stretches, x);
  const most = corners.reduce((highest, { counts }) => Math.max(highest, sumOf(counts, panel.kinds)), 1);
  const y = (count: number): number => top + height - (count / most) * height;
  const layers = stack<Corner, Kind>()
    .keys([...panel.kinds])
    .value(({ counts }, kind) => counts[kind] ?? 0)(corners);
  const grid = ticks(0, most, 4)
    .filter(Number.isInteger)
    .map(
      (count) =>
        `<path class="grid" d="M${left} ${round(y(count))}H${right}"/>` +
        `<text class="quiet" x="${left - 8}" y="${round(y(count) + 4)}" text-anchor="end">${count}</text>`,
    );
  const shapes = layers.map((layer) => {
    const points = layer.map(([low, high], index) => ({ at: corners[index]?.at ?? 0, low, high }));
    type Point = (typeof points)[number];
    const fill = area<Point>(
      ({ at }) => x(at),
      ({ low }) => y(low),
      ({ high }) => y(high),
    )
      .curve(curveStepAfter)
      .digits(2);
    const edge = line<Point>(
      ({ at }) => x(at),
      ({ high }) => y(high),
    )
      .curve(curveStepAfter)
      .digits(2);
    return `<path d="${fill(points) ?? ""}" fill="url(#of-${layer.key})"/><path class="edge" d="${edge(points) ?? ""}"/>`;
  });
  return [
    `<text class="heading" x="${left}" y="${top - 10}">${panel.heading}</text>`,
    ...grid,
    ...shapes,
    `<path class="axis" d="M${left} ${top}V${top + height}H${right}"/>`,
    ...legend(panel, place),
  ].join("\n");
}

/** Finest part of a unit of the chart in which two changes are told apart. */
const FINEST = 0.25;

/** Where the counts change, and the end; a single value between two others has no width to be seen. */
function cornersOf(panel: Panel, stretches: readonly Stretch[], x: PanelPlace["x"]): readonly Corner[] {
  const corners: Corner[] = [];
  for (const stretch of stretches) {
    if (stretch.to === stretch.from) continue;
    const counts = panel.countsOf(stretch);
    const last = corners.at(-1);
    // Of changes that would lie on one another the last is drawn.
    if (last !== undefined && x(stretch.from) - x(last.at) < FINEST) corners[corners.length - 1] = { ...last, counts };
    else corners.push({ at: stretch.from, counts });
  }
  const [last, end] = [corners.at(-1), stretches.at(-1)];
  return last === undefined || end === undefined ? corners : [...corners, { ...last, at: end.to }];
}

function legend({ kinds, inForce }: Panel, { top, right }: PanelPlace): readonly string[] {
  const items = kinds.toReversed().map((kind, index) => {
    const y = top + 8 + index * 26;
    const count = inForce === null ? "" : `: ${inForce[kind] ?? 0}`;
    return (
      `<rect class="edge" x="${right + 18}" y="${y}" width="22" height="16" style="fill:url(#of-${kind})"/>` +
      `<text x="${right + 48}" y="${y + 13}">${markedOutcome(kind)}${count}</text>`
    );
  });
  if (inForce === null) return items;
  const y = top + 24 + kinds.length * 26;
  return [...items, `<text class="quiet small" x="${right + 18}" y="${y}">at the limit in force</text>`];
}

function sumOf(counts: Corner["counts"], kinds: readonly Kind[]): number {
  return kinds.reduce((sum, kind) => sum + (counts[kind] ?? 0), 0);
}

/** A place with two decimals, the same on every machine. */
export function round(value: number): number {
  return Number(value.toFixed(2));
}

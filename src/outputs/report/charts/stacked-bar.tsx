import { stack } from "d3-shape";
import { type Kind, paintOf } from "./patterns.js";

interface StackedBarProps {
  readonly counts: Readonly<Partial<Record<Kind, number>>>;
  /** From the left to the right. */
  readonly kinds: readonly Kind[];
  /** What the whole width stands for. */
  readonly most: number;
  readonly width: number;
  readonly height: number;
  /** What it shows, for those who do not see it. */
  readonly title: string;
}

/** One bar of counts side by side, told apart by pattern. */
export function StackedBar({ counts, kinds, most, width, height, title }: StackedBarProps) {
  const layers = stack<typeof counts, Kind>()
    .keys([...kinds])
    .value((of, kind) => of[kind] ?? 0)([counts]);
  const x = (count: number): number => placed((count / Math.max(most, 1)) * (width - 2) + 1);
  return (
    <svg
      class="chart bar"
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-label={title}
    >
      <title>{title}</title>
      {layers.map((layer) => {
        const [from = 0, to = 0] = layer[0] ?? [];
        if (to === from) return null;
        return (
          <rect
            key={layer.key}
            class="edge"
            fill={paintOf(layer.key)}
            x={x(from)}
            y={1}
            width={placed(x(to) - x(from))}
            height={height - 2}
          />
        );
      })}
    </svg>
  );
}

/** A place with two decimals, the same on every machine. */
export function placed(value: number): number {
  return Number(value.toFixed(2));
}

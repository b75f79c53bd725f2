import type { MarginSpread } from "../../../screening/index.js";
import { paintOf } from "./patterns.js";
import { placed } from "./stacked-bar.js";

const WIDTH = 300;
const HEIGHT = 44;
const BASE = 34;
/** Bins to either side of the limit, and the open one at each end. */
const SIDE = 10;
const STEP = WIDTH / (2 * SIDE + 2);

/** Margins of one rule: bars left of the line are beyond the limit, those right of it have room to spare. */
export function MarginChart({ spread, title }: { readonly spread: MarginSpread; readonly title: string }) {
  const { bins } = spread;
  const most = bins.reduce((highest, { points }) => Math.max(highest, points), 1);
  const end = spread.unit === null ? 1 : 50;
  const place = (from: number | null): number => (from === null ? 0 : 1 + SIDE + Math.round((from / end) * SIDE));
  const middle = placed((1 + SIDE) * STEP);
  return (
    <svg
      class="chart margins"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      width={WIDTH}
      height={HEIGHT}
      role="img"
      aria-label={title}
    >
      <title>{title}</title>
      {bins.map(({ from, points }) => {
        // Few among many must still be seen.
        const height = points === 0 ? 0 : Math.max(2, placed((points / most) * (BASE - 2)));
        const isBeyond = from === null || from < 0;
        return points === 0 ? null : (
          <rect
            key={String(from)}
            class={isBeyond ? "edge" : "ground-plain edge"}
            {...(isBeyond ? { fill: paintOf("fail") } : {})}
            x={placed(place(from) * STEP + 0.5)}
            y={placed(BASE - height)}
            width={placed(STEP - 1)}
            height={height}
          />
        );
      })}
      <path class="axis" d={`M0 ${BASE}H${WIDTH}`} />
      <path class="force" d={`M${middle} 0V${BASE + 4}`} />
    </svg>
  );
}

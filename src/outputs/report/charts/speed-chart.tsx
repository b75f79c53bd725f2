import { ticks } from "d3-array";
import { formatNumber } from "../../../base/index.js";
import type { Bin, Spread } from "../../../screening/index.js";
import { countOf } from "../../wording/numbers.js";
import { placed } from "./stacked-bar.js";

const WIDTH = 720;
const HEIGHT = 230;
const LEFT = 48;
const RIGHT = 708;
const TOP = 14;
const BOTTOM = 172;

/** How many points run how slowly: a bar for each stretch of speeds. */
export function SpeedChart({ spread }: { readonly spread: Spread }) {
  const { bins, unit } = spread;
  const most = bins.reduce((highest, { points }) => Math.max(highest, points), 1);
  const step = (RIGHT - LEFT) / Math.max(bins.length, 1);
  const y = (points: number): number => placed(BOTTOM - (points / most) * (BOTTOM - TOP));
  const x = (place: number): number => placed(LEFT + place * step);
  const ends = bins.flatMap(({ from, to }) => [from ?? to ?? 0, to ?? from ?? 0]);
  // Round numbers, few enough not to touch.
  const numbered = new Set(ticks(Math.min(...ends), Math.max(...ends), 8));
  return (
    <svg class="chart large" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-labelledby="speed-title speed-desc">
      <title id="speed-title">Lowest running speeds</title>
      <desc id="speed-desc">{describe(spread)}</desc>
      {ticks(0, most, 4)
        .filter(Number.isInteger)
        .map((points) => (
          <g key={points}>
            <path class="grid" d={`M${LEFT} ${y(points)}H${RIGHT}`} />
            <text class="quiet" x={LEFT - 8} y={y(points) + 4} text-anchor="end">
              {points}
            </text>
          </g>
        ))}
      {bins.map(({ points }, place) => (
        <rect
          key={x(place)}
          class="ground-plain edge"
          x={placed(x(place) + 1)}
          y={y(points)}
          width={placed(step - 2)}
          height={placed(BOTTOM - y(points))}
        />
      ))}
      <path class="axis" d={`M${LEFT} ${TOP}V${BOTTOM}H${RIGHT}`} />
      {bins.map(({ from }, place) =>
        from === null || !numbered.has(from) ? null : (
          <g key={from}>
            <path class="axis" d={`M${x(place)} ${BOTTOM}v6`} />
            <text class="quiet" x={x(place)} y={BOTTOM + 22} text-anchor="middle">
              {formatNumber(from)}
            </text>
          </g>
        ),
      )}
      <text x={(LEFT + RIGHT) / 2} y={BOTTOM + 46} text-anchor="middle">
        {`lowest running speed, ${unit ?? ""}`}
      </text>
    </svg>
  );
}

function describe({ bins, unit, known, notKnown }: Spread): string {
  const [first, last] = [bins[0], bins.at(-1)];
  const fullest = bins.toSorted((a, b) => b.points - a.points)[0];
  if (!first || !last || !fullest) return "No speed is known.";
  return [
    `Bars for ${countOf(known, "point")}, ${binInWords(first, unit)} to ${binInWords(last, unit)}.`,
    `Most points, ${fullest.points}, run at ${binInWords(fullest, unit)}.`,
    ...(notKnown === 0 ? [] : [`Of ${countOf(notKnown, "point")} the lowest speed is not known.`]),
  ].join(" ");
}

/** A stretch of values ("100 to 200 r/min", "below 100 r/min"). */
export function binInWords({ from, to }: Bin, unit: string | null): string {
  if (from === null) return to === null ? "any value" : `below ${formatNumber(to, unit)}`;
  return to === null ? `${formatNumber(from, unit)} or more` : `${formatNumber(from)} to ${formatNumber(to, unit)}`;
}

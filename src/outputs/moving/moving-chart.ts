import { ticks } from "d3-array";
import { formatNumber } from "../../base/index.js";
import type { LimitMoved, Stretch } from "../../moving/index.js";
import { showControls } from "../csv/safe-text.js";
import { countOf } from "../wording/numbers.js";
import { bookInWords } from "../wording/overlays.js";
import { wrapText } from "../wording/wrap.js";
import { type Panel, panelSvg, round } from "./chart-panel.js";
import { chartStyle } from "./chart-style.js";
import { axisInWords, holdsValue, movedInWords, valueInWords } from "./words.js";

const WIDTH = 900;
const LEFT = 64;
const RIGHT = 720;
const LINE = 18;
/** Characters of a line of text from edge to edge. */
const CHARACTERS = 116;
const PANEL = 190;
const GAP = 62;

/**
 * How the counts move, as a picture: one self-contained SVG file without scripts, fonts or anything else to fetch. The
 * areas are told apart by pattern, mark and word; steps stand exactly where a count moves.
 */
export function movingChart(moved: LimitMoved): string {
  const { rule, from, to, stretches } = moved;
  const about = [`What moves: ${movedInWords(moved)}.`, ...alsoMoved(moved)].flatMap((text) =>
    wrapText(text, CHARACTERS),
  );
  const firstTop = 58 + about.length * LINE + 40;
  const secondTop = firstTop + PANEL + GAP;
  const bottom = secondTop + PANEL;
  const x = (value: number): number => LEFT + ((value - from) / (to - from)) * (RIGHT - LEFT);
  const place = { height: PANEL, left: LEFT, right: RIGHT, x };
  const foot = wrapText(footOf(moved), CHARACTERS);
  const height = bottom + 62 + foot.length * LINE;
  const [first, second] = panelsOf(moved);
  const parts = [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" width="${WIDTH}" height="${height}" role="img" aria-labelledby="chart-title chart-desc">`,
    `<title id="chart-title">${xml(`${rule.id}: what comes out as its limit moves`)}</title>`,
    `<desc id="chart-desc">${xml(describe(moved))}</desc>`,
    chartStyle(),
    `<rect class="page" width="${WIDTH}" height="${height}"/>`,
    `<text class="title" x="24" y="34">${xml(rule.title)}</text>`,
    ...about.map((text, i) => `<text class="quiet" x="24" y="${58 + i * LINE}">${xml(text)}</text>`),
    panelSvg(first, stretches, { ...place, top: firstTop }),
    panelSvg(second, stretches, { ...place, top: secondTop }),
    ...axis(moved, x, bottom),
    ...inForceLine(moved, x, [firstTop, secondTop]),
    ...foot.map((text, i) => `<text class="quiet small" x="24" y="${bottom + 66 + i * LINE}">${xml(text)}</text>`),
    "</svg>",
  ];
  return `${parts.join("\n")}\n`;
}

function panelsOf({ stretches, inForce, points }: LimitMoved): readonly [Panel, Panel] {
  const now = stretches.find((stretch) => holdsValue(stretch, inForce)) ?? null;
  const rule = now?.counted.rule;
  const rest = [
    ...(rule && rule.notApplicable > 0 ? [`not applicable to ${rule.notApplicable}`] : []),
    ...(rule && rule.notAsked > 0 ? [`not asked of ${rule.notAsked}`] : []),
  ];
  return [
    {
      heading: xml(`What the rule says of ${countOf(points, "point")}${rest.map((text) => `, ${text}`).join("")}`),
      kinds: ["fail", "undecided", "warn", "pass"],
      countsOf: ({ counted }: Stretch) => counted.rule,
      inForce: rule ?? null,
    },
    {
      heading: xml("Verdicts of the points, by all rules together"),
      kinds: ["fail", "warn", "pass"],
      countsOf: ({ counted }: Stretch) => counted.points,
      inForce: now?.counted.points ?? null,
    },
  ];
}

function axis(moved: LimitMoved, x: (value: number) => number, bottom: number): readonly string[] {
  const { from, to } = moved;
  return [
    ...ticks(from, to, 10).map(
      (value) =>
        `<path class="axis" d="M${round(x(value))} ${bottom}v6"/>` +
        `<text class="quiet" x="${round(x(value))}" y="${bottom + 21}" text-anchor="middle">${formatNumber(value)}</text>`,
    ),
    `<text x="${(LEFT + RIGHT) / 2}" y="${bottom + 42}" text-anchor="middle">${xml(axisInWords(moved))}</text>`,
  ];
}

/** The line of the limit in force through both panels, with its words between them where there is room. */
function inForceLine(moved: LimitMoved, x: (value: number) => number, tops: readonly number[]): readonly string[] {
  const { inForce, from, to } = moved;
  if (inForce < from || inForce > to) return [];
  const at = round(x(inForce));
  const isRight = at > (LEFT + RIGHT) / 2;
  const [top = 0] = tops;
  const words = xml(`in force: ${valueInWords(moved, inForce)}`);
  return [
    ...tops.flatMap((one) => {
      const path = `d="M${at} ${one}v${PANEL}"`;
      return [`<path class="halo" ${path}/>`, `<path class="force" ${path}/>`];
    }),
    `<text class="heading" x="${at}" y="${top + PANEL + 20}" text-anchor="${isRight ? "end" : "start"}">${words}</text>`,
  ];
}

function alsoMoved({ alsoMoved: others }: LimitMoved): readonly string[] {
  return others.length === 0 ? [] : [`With it move the rules that rest on the same value: ${others.join(", ")}.`];
}

function footOf({ head, rule, place }: LimitMoved): string {
  const { rulebook, set, stage, asOf, surveys } = head;
  const files = surveys.map(({ file }) => file).join(", ");
  return (
    `Rule ${rule.id}, ${place.at.file} line ${place.at.line}; ${bookInWords(rulebook)} ` +
    `(digest ${rulebook.digest.slice(0, 12)}), set ${set}, stage ${stage}, limits as of ${asOf}; surveys: ${files}`
  );
}

/** The chart in words, for those who do not see it. */
function describe(moved: LimitMoved): string {
  const { stretches } = moved;
  const said = (stretch: Stretch | undefined): string => {
    if (stretch === undefined) return "nothing";
    const { rule, points } = stretch.counted;
    return (
      `the rule fails ${rule.fail}, warns ${rule.warn}, is undecided on ${rule.undecided} and passes ${rule.pass}; ` +
      `verdicts: ${points.fail} fail, ${points.warn} warn, ${points.pass} pass`
    );
  };
  const now = stretches.find((stretch) => holdsValue(stretch, moved.inForce));
  return [
    `Stacked counts over ${axisInWords(moved)}, from ${valueInWords(moved, moved.from)} to ${valueInWords(moved, moved.to)}.`,
    `At ${valueInWords(moved, moved.from)}: ${said(stretches[0])}.`,
    ...(now === undefined ? [] : [`At the limit in force, ${valueInWords(moved, moved.inForce)}: ${said(now)}.`]),
    `At ${valueInWords(moved, moved.to)}: ${said(stretches.at(-1))}.`,
  ].join(" ");
}

/** Text as XML holds it, whatever stood in rulebooks and file names. */
function xml(text: string): string {
  return showControls(text)
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}

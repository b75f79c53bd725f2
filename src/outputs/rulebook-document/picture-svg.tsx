import { formatNumber } from "../../base/index.js";
import { shownText } from "../html/shown-text.js";
import { markedOutcome } from "../wording/outcomes.js";
import { wrapText } from "../wording/wrap.js";
import type { BandPicture, ChoicePicture, NumberPicture } from "./band-picture.js";
import type { Border } from "./bands.js";
import { pictureInWords, pictureNotes, zonePlace } from "./zone-words.js";

const WIDTH = 660;
const EDGE = 10;
const TOP = 8;
const STRIP = 46;
const LINE = 15;
/** Width of a character of the labels, on the generous side: what wraps early is never cut. */
const CHARACTER = 6.6;

/** The bands of a limit as a figure: a line of numbers with hatched zones, or the choices by outcome. */
export function Picture({ picture }: { readonly picture: BandPicture }) {
  const notes = pictureNotes(picture);
  return (
    <figure>
      <figcaption>{shownText(`Bands of ${picture.axis}`)}</figcaption>
      {picture.of === "numbers" ? <NumberLine picture={picture} /> : <Choices picture={picture} />}
      {notes.length > 0 && <p class="quiet">{shownText(capital(notes.join("; ")))}.</p>}
    </figure>
  );
}

/** Hatchings that all pictures of a page share; to be put once at its beginning. */
export function Hatchings() {
  return (
    <svg class="hatchings" width="0" height="0" aria-hidden="true">
      <defs>
        <pattern id="hatch-fail" width="7" height="7" patternUnits="userSpaceOnUse">
          <path class="stroke-fail" d="M0 7L7 0M0 0L7 7" stroke-width="1.1" />
        </pattern>
        <pattern id="hatch-warn" width="7" height="7" patternUnits="userSpaceOnUse">
          <path class="stroke-warn" d="M-1 1L1 -1M0 7L7 0M6 8L8 6" stroke-width="1.3" />
        </pattern>
      </defs>
    </svg>
  );
}

function NumberLine({ picture }: { readonly picture: NumberPicture }) {
  const { zones, borders, id } = picture;
  const width = (WIDTH - 2 * EDGE) / zones.length;
  // Between two borders there is one zone, unless a single value is a zone of its own.
  const placeOf = (border: number): number => EDGE + width * borderPlace(picture, border);
  const room = Math.floor(Math.min(width, WIDTH / 2) / CHARACTER);
  const labels = borders.map((border) => labelLines(border, room));
  const lines = Math.max(1, ...labels.map((label) => label.length));
  const bottom = TOP + STRIP;
  const height = bottom + 14 + lines * LINE + 4;
  return (
    <svg class="bands" viewBox={`0 0 ${WIDTH} ${height}`} role="img" aria-labelledby={`${id}-title ${id}-desc`}>
      <title id={`${id}-title`}>{shownText(`Bands of ${picture.axis}`)}</title>
      <desc id={`${id}-desc`}>{shownText(pictureInWords(picture))}</desc>
      {zones.map((zone, index) => {
        const left = EDGE + index * width;
        return (
          <g key={zone.outcome + String(index)}>
            {zone.outcome !== "pass" && (
              <rect x={at(left)} y={bottom - 11} width={at(width)} height="11" fill={`url(#hatch-${zone.outcome})`} />
            )}
            <text class={`zone ${zone.outcome}`} x={at(left + width / 2)} y={TOP + 12} text-anchor="middle">
              {markedOutcome(zone.outcome)}
            </text>
            <text class="place" x={at(left + width / 2)} y={TOP + 27} text-anchor="middle">
              {zonePlace(zone)}
            </text>
          </g>
        );
      })}
      <path class="axis" d={`M${EDGE} ${bottom}H${WIDTH - EDGE}`} />
      {borders.map((border, index) => {
        const x = placeOf(index);
        return (
          <g key={border.words}>
            <path class="border" d={`M${at(x)} ${TOP}V${bottom + 6}`} />
            {(labels[index] ?? []).map((label, line) => (
              <text key={label} class="label" x={at(x)} y={bottom + 20 + line * LINE} text-anchor="middle">
                {shownText(label)}
              </text>
            ))}
          </g>
        );
      })}
    </svg>
  );
}

/** At which zone edge a border stands; one that is a zone by itself stands in the middle of it. */
function borderPlace({ zones }: NumberPicture, border: number): number {
  const alone = zones.findIndex(({ from, to }) => from?.border === border && to?.border === border);
  if (alone >= 0) return alone + 0.5;
  const after = zones.findIndex(({ from }) => from?.border === border);
  return after >= 0 ? after : zones.findIndex(({ to }) => to?.border === border) + 1;
}

function labelLines({ words, value }: Border, room: number): readonly string[] {
  return [...wrapText(words, room), ...(value === null ? [] : wrapText(`(${value.by}: ${value.words})`, room))];
}

function Choices({ picture }: { readonly picture: ChoicePicture }) {
  return (
    <ul class="choices">
      {picture.choices.map(({ outcome, names }) => (
        <li key={outcome}>
          <span class={`mark ${outcome}`}>{markedOutcome(outcome)}</span>: {shownText(names.join(", "))}
        </li>
      ))}
    </ul>
  );
}

function capital(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}

/** A place in the picture, the same digits on every machine. */
function at(place: number): string {
  return formatNumber(place);
}

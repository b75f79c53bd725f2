import { factOf } from "../../facts/index.js";
import { readPhrase } from "../cells/cell-choice.js";
import { wordsOf } from "../words/tokens.js";
import type { Vocabulary } from "../words/vocabulary.js";
import { type Entry, knownAs, reasonOf, unknownAs } from "./entries.js";

/** Places that are no solid seat; named anywhere among the words for the point, they are where the point is. */
const NOT_SOLID: ReadonlySet<string> = new Set(["fan-cover", "guard", "cooling-fin"]);
/** Fields whose words say on which part of the machine the point is. */
const PART_FIELDS: ReadonlySet<string> = new Set(["component", "bearing_position", "direction"]);
/** Names, in which a short word for a cover may belong to the machine (paint hood, panel shop). */
const NAME_FIELDS: ReadonlySet<string> = new Set(["point_id", "location_code"]);
/** Letters from which a single word for a guard counts in a name. */
const TELLING_LETTERS = 8;

/**
 * What a column that is not about the seat says of it: a fan cover, a guard or a cooling fin. Solid places are not
 * taken from there: "Component: bearing housing" names a machine part, not the surface under the sensor.
 */
export function placeMentioned(field: string, text: string, vocabulary: Vocabulary): readonly Entry[] {
  const name = NAME_FIELDS.has(field);
  if (!name && !PART_FIELDS.has(field)) return [];
  const place = factOf("mounted_on");
  const words = wordsOf(text);
  const hits = (vocabulary.choices.get(place.id)?.find(words) ?? []).filter((hit) => NOT_SOLID.has(hit.meaning));
  const telling = hits.some(({ meaning, from, to }) => {
    if (!name || meaning !== "guard" || to - from === words.length) return true;
    return to - from > 1 || (words[from] ?? "").length >= TELLING_LETTERS;
  });
  if (!telling) return [];
  const reading = readPhrase(text, [place], vocabulary).byFact.get(place.id);
  if (!reading || (reading.ok && reading.kind === "number")) return [];
  const said = reading.ok ? knownAs(reading.value) : unknownAs(reasonOf(reading));
  return [{ fact: place.id, said, empty: false, mention: true }];
}

import { dimensionsSpelled, foldText, otherQuantityOf, showText, unitSpelled } from "../../base/index.js";
import type { FactDefinition } from "../../facts/index.js";
import type { Vocabulary } from "../words/vocabulary.js";
import { type CellTrouble, trouble } from "./cell-reading.js";

/** A number cell with everything in front of the number understood and taken off. */
export interface OpenedNumber {
  readonly ok: true;
  /** Begins with the number. */
  readonly rest: string;
  /** A unit that stands in front of its number (AWG 22), or empty. */
  readonly unitAhead: string;
  readonly supply: "dc" | "ac" | null;
  /** A word that opens a range stood in front (from, between). */
  readonly from: boolean;
  readonly remarks: readonly string[];
}

const FULL_WIDTH = /[\uff01-\uff5e]/g;
const VULGAR: ReadonlyMap<string, string> = new Map([
  ["½", "1/2"],
  ["¼", "1/4"],
  ["¾", "3/4"],
  ["⅛", "1/8"],
  ["⅜", "3/8"],
  ["⅝", "5/8"],
  ["⅞", "7/8"],
]);

/**
 * Takes off what people write in front of a number: about, max and min (kept as a remark), the name of the
 * quantity, the diameter sign, the kind of supply, a gauge; and a remark in brackets behind it.
 * Stops at what spoils the value: doubt, inequality, a second number in a remark.
 */
export function openNumberText(
  text: string,
  field: FactDefinition,
  vocabulary: Vocabulary,
): OpenedNumber | CellTrouble {
  const remarks: string[] = [];
  const bare = withoutBrackets(plainSigns(text), field, vocabulary, remarks);
  if (typeof bare !== "string") return bare;
  if (!/\d/.test(bare)) return trouble("not-a-number", `expected a number${field.unit ? ` in ${field.unit}` : ""}`);
  if (bare.includes("?")) return doubtful();
  if (/[<>≤≥]|=<|=>/.test(bare)) {
    return trouble("inequality", "a bound is not a value; write the number that was measured");
  }
  if (/^\d{1,3}:\d{2}/.test(bare)) return trouble("ambiguous-number", "write the time with its unit, such as 90 s");
  const tailless = withoutTail(bare, field, vocabulary, remarks);
  return typeof tailless === "string" ? takeOffWords(tailless, field, vocabulary, remarks) : tailless;
}

/** Most words of a listed phrase for doubt, for missing, or for something beside the number. */
const LONGEST_TAIL = 3;

/** Takes words behind the number off: doubt spoils the value (16 tbc), others are remarks (24 V DC nom.). */
function withoutTail(
  text: string,
  field: FactDefinition,
  vocabulary: Vocabulary,
  remarks: string[],
): string | CellTrouble {
  const tokens = text.split(/\s+/);
  for (let length = Math.min(LONGEST_TAIL, tokens.length - 1); length >= 1; length--) {
    const tail = tokens
      .slice(-length)
      .join(" ")
      .replace(/^[,;:/–-]+\s*/, "");
    const rest = tokens.slice(0, -length).join(" ");
    if (!/\p{L}/u.test(tail) || /\d/.test(tail) || !/\d/.test(rest) || isUnitOrSupply(tail, field)) continue;
    if (vocabulary.isDoubt(tail)) return doubtful();
    const aside = vocabulary.asides.get(field.id)?.(tail) ?? false;
    if (!aside && !(/[,;]$/.test(rest) && namesDrive(tail, field, vocabulary))) continue;
    remarks.push(tail);
    return withoutTail(rest.replace(/[\s,;:/–-]+$/, ""), field, vocabulary, remarks);
  }
  return text;
}

/** Words behind a speed and a comma that say how its machine is driven (1480 rpm, VFD). */
function namesDrive(words: string, field: FactDefinition, vocabulary: Vocabulary): boolean {
  if (field.dimension !== "rotational-speed" || vocabulary.isYes(words) || vocabulary.isNo(words)) return false;
  return vocabulary.choices.get("variable_speed")?.whole(words) !== undefined;
}

function doubtful(): CellTrouble {
  return trouble("doubtful", "the value is marked as doubtful; measure it, or drop the mark");
}

function plainSigns(text: string): string {
  return text
    .replace(FULL_WIDTH, (c) => String.fromCharCode(c.charCodeAt(0) - 0xfee0))
    .replace(/\s*([½¼¾⅛⅜⅝⅞])/g, (_, c: string) => ` ${VULGAR.get(c) ?? c}`)
    .replace(/⁄/g, "/")
    .replace(/[\u2103\u2109]/g, (c) => (c === "\u2103" ? "°C" : "°F"))
    .replace(/^\s*[−‐‑–—]\s*(?=\d)/, "-")
    .replace(/[Øø⌀∅]/g, " ")
    .trim();
}

/** Takes brackets apart: units and kinds of supply stay, words for unknown are doubt, other words are remarks. */
function withoutBrackets(
  text: string,
  field: FactDefinition,
  vocabulary: Vocabulary,
  remarks: string[],
): string | CellTrouble {
  const found = /^(.*?)[([{]([^()[\]{}]*)[)\]}](.*)$/s.exec(text);
  if (!found) return text;
  const [, before = "", inside = "", after = ""] = found;
  const bound = vocabulary.isMostOrLeast(inside);
  if (!bound && saysUnit(inside, field)) return `${before} ${inside} ${after}`.trim();
  if (inside.includes("?") || vocabulary.isDoubt(inside)) {
    return doubtful();
  }
  if (/\d/.test(inside)) return trouble("several-values", "the remark in brackets holds a number too; leave one");
  if (!bound && (vocabulary.notMeant.get(field.id)?.(inside) ?? false)) {
    return trouble(
      "doubtful",
      `"${showText(inside)}" says that this is another measure; write the one that is asked for`,
    );
  }
  remarks.push(inside.trim());
  return withoutBrackets(`${before} ${after}`.replace(/\s+/g, " ").trim(), field, vocabulary, remarks);
}

/** A unit, of whatever quantity, or a kind of supply; what it is worth is seen behind the number. */
function saysUnit(text: string, field: FactDefinition): boolean {
  if (field.dimension === undefined) return false;
  if (dimensionsSpelled(text).length > 0 || otherQuantityOf(text) !== null) return true;
  return (
    field.dimension === "dc-voltage" &&
    /^\s*v?\s*(?:dc|ac|cc|ca|uc)(?:\s*\/\s*(?:dc|ac|cc|ca))?\s*$/i.test(text.replace(/\./g, ""))
  );
}

function takeOffWords(
  text: string,
  field: FactDefinition,
  vocabulary: Vocabulary,
  remarks: string[],
): OpenedNumber | CellTrouble {
  let rest = text;
  let supply: "dc" | "ac" | null = null;
  let unitAhead = "";
  let from = false;
  for (;;) {
    const word = /^(?:[~≈∼]|\p{L}[\p{L}.']*(?:\s\p{L}+(?=\s))?)/u.exec(rest)?.[0];
    if (word === undefined) break;
    const step = openingWord(word, rest, field, vocabulary);
    if (step === null) break;
    if ("code" in step) return step;
    if (step.remark) remarks.push(step.remark);
    supply = step.supply ?? supply;
    unitAhead = step.unitAhead ?? unitAhead;
    from ||= step.from ?? false;
    rest = rest.slice(step.length).replace(/^\s*[:=]?\s*/, "");
  }
  const closing = /^(.*\d.*?)\s+(\p{L}+\.?)$/u.exec(rest);
  const last = closing?.[2] ?? "";
  if (closing && !isUnitOrSupply(last, field) && (vocabulary.isAbout(last) || vocabulary.isMostOrLeast(last))) {
    remarks.push(last);
    rest = closing[1] ?? rest;
  }
  return { ok: true, rest, unitAhead, supply, from, remarks };
}

interface OpeningStep {
  readonly length: number;
  readonly remark?: string;
  readonly supply?: "dc" | "ac";
  readonly unitAhead?: string;
  readonly from?: true;
}

function openingWord(
  words: string,
  rest: string,
  field: FactDefinition,
  vocabulary: Vocabulary,
): OpeningStep | CellTrouble | null {
  const [one = words] = words.split(/\s/);
  for (const word of new Set([words, one])) {
    // A letter glued to a digit is one mixed word (l2, N7), save after a full stop or a sign (ca.1500).
    const next = rest.slice(word.length, word.length + 1);
    const separate = !/[\d\p{L}]/u.test(next) || /[.~≈∼]$/.test(word);
    const step = separate ? knownOpening(word, field, vocabulary) : unitOrSupplyAhead(word, field);
    if (step) return step;
  }
  return null;
}

function knownOpening(word: string, field: FactDefinition, vocabulary: Vocabulary): OpeningStep | CellTrouble | null {
  const length = word.length;
  const ahead = unitOrSupplyAhead(word, field);
  if (ahead) return ahead;
  if (vocabulary.isAbout(word) || vocabulary.asides.get(field.id)?.(word)) return { length, remark: word };
  if (vocabulary.isDoubt(word)) return doubtful();
  if (vocabulary.isMostOrLeast(word)) {
    if (/^m[aií][xn]/i.test(foldText(word))) return { length, remark: word };
    return trouble("inequality", "a bound is not a value; write the number that was measured");
  }
  if (vocabulary.isFrom(word)) return { length, from: true };
  const own = field.dimension === "dc-voltage" ? null : vocabulary.headings.get(foldText(word).replace(/\.$/, ""));
  return own?.some((meaning) => meaning.fact === field.id) ? { length } : null;
}

function unitOrSupplyAhead(word: string, field: FactDefinition): OpeningStep | null {
  const folded = foldText(word).replace(/\./g, "");
  if (field.dimension === "dc-voltage" && (folded === "dc" || folded === "cc"))
    return { length: word.length, supply: "dc" };
  // In capitals and without a full stop CA is corriente alterna or courant alternatif, not circa.
  const alternating = folded === "ac" || word === "CA";
  if (field.id === "supply_voltage" && alternating) return { length: word.length, supply: "ac" };
  const unit = field.dimension ? unitSpelled(word, field.dimension) : null;
  return unit?.leads ? { length: word.length, unitAhead: word } : null;
}

/** Behind a voltage CA and CC are kinds of supply (corriente alterna, courant continu), not about. */
function isUnitOrSupply(word: string, field: FactDefinition): boolean {
  if (field.dimension === "dc-voltage" && /^(?:ac|ca|dc|cc)\.?$/i.test(word)) return true;
  return field.dimension !== undefined && unitSpelled(word, field.dimension) !== null;
}

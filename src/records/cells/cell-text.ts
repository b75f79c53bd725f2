import { tidyText } from "../../base/index.js";
import type { FactDefinition } from "../../facts/index.js";
import { type CellReading, type CellTrouble, trouble } from "./cell-reading.js";

const LONGEST_IDENTIFIER = 120;
const LONGEST_TEXT = 8_000;

/** Reference designations of IEC 81346 begin with = + - and hold nothing but letters, digits, points and those signs. */
const REFERENCE_DESIGNATION = /^[=+-]{1,2}[\p{L}\d.]+(?:[=+-]{1,2}[\p{L}\d.]+)*$/u;
const FORMULA_START = /^[\s']*[=+\-@|%＝＋－＠\t\r\n]/u;
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters that an identity must not hold
const CONTROL = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]|\p{Surrogate}/u;

/** Fields that take the designation of a thread and nothing else. */
export const THREAD_FIELDS: ReadonlySet<string> = new Set(["thread", "sensor_thread"]);

/** Reads the text of an identity, text or designation field. */
export function readText(text: string, field: FactDefinition): CellReading {
  if (field.kind === "identifier") return readIdentifier(text);
  if (field.kind === "designation") return readDesignation(text, field);
  const tidy = tidyText(text);
  if (tidy.length > LONGEST_TEXT) return tooLong(LONGEST_TEXT);
  if (field.id === "photo" && /[/\\:]|\.\./.test(tidy)) {
    return trouble("not-plain-text", "expected the bare name of a picture file, without folders");
  }
  return textRead(tidy);
}

function readIdentifier(text: string): CellReading {
  const lines = text.split(/[\r\n]+/).filter((line) => line.trim() !== "");
  if (lines.length > 1 && !FORMULA_START.test(text)) {
    return trouble("several-values", "expected one code, found several lines; give each its own row");
  }
  const tidy = tidyText(text).replace(/[‐‑‒–—−]/g, "-");
  if (tidy.length > LONGEST_IDENTIFIER) return tooLong(LONGEST_IDENTIFIER);
  if (CONTROL.test(text)) return trouble("not-plain-text", "expected a plain code, found control characters");
  if (FORMULA_START.test(text) && !REFERENCE_DESIGNATION.test(tidy)) {
    return trouble("not-plain-text", "expected a plain code; this would run as a formula in a spreadsheet program");
  }
  return textRead(tidy);
}

function readDesignation(text: string, field: FactDefinition): CellReading {
  const tidy = tidyText(text).replace(/[‐‑‒–—−]/g, "-");
  if (tidy.length > LONGEST_IDENTIFIER) return tooLong(LONGEST_IDENTIFIER);
  if (CONTROL.test(text)) return trouble("not-plain-text", "expected a plain code, found control characters");
  if (THREAD_FIELDS.has(field.id)) return readThread(tidy);
  if (field.id === "ip_rating") return readIpRating(tidy);
  if (FORMULA_START.test(text)) return trouble("not-plain-text", "expected a plain designation");
  return textRead(tidy.toUpperCase());
}

const METRIC = /^M\s?(\d{1,3}(?:[.,]\d)?)(?:\s?[x×*]\s?(\d{1,2}(?:[.,]\d{1,2})?))?(?:\s?-?\s?\d[gGhH]{1,2})?$/i;
const INCH =
  /^(?:#\s?)?(\d{1,2}(?:\s?\/\s?\d{1,2})?(?:[ -]\d\/\d{1,2})?)\s?["″]?\s?-\s?(\d{1,2})\s?(UNF|UNC|UNEF|UN|BSW|BSF)?(?:\s?-?\s?\d[AB])?$/i;

function readThread(text: string): CellReading {
  const metric = METRIC.exec(text);
  if (metric) {
    const pitch = metric[2] === undefined ? "" : `x${Number(metric[2].replace(",", "."))}`;
    return textRead(`M${(metric[1] ?? "").replace(",", ".")}${pitch}`);
  }
  const inch = INCH.exec(text);
  if (inch) {
    const series = inch[3] === undefined ? "" : ` ${inch[3].toUpperCase()}`;
    return textRead(`${(inch[1] ?? "").replace(/\s?\/\s?/, "/")}-${inch[2]}${series}`);
  }
  return trouble("not-a-thread", "expected a thread size such as M6, M6x0.75 or 1/4-28 UNF");
}

function readIpRating(text: string): CellReading {
  const ratings = text.toUpperCase().replace(/\s/g, "").split(/[/+,]/);
  const read = ratings.map((rating) => /^(?:IP-?)?([0-6X])(\d|X)(K?)$/.exec(rating));
  if (!/^IP/i.test(text) || read.some((rating) => rating === null)) {
    return trouble("unknown-choice", "expected an IP rating such as IP65");
  }
  return textRead(read.map((rating) => `IP${rating?.[1]}${rating?.[2]}${rating?.[3]}`).join("/"));
}

function tooLong(limit: number): CellTrouble {
  return trouble("too-long", `expected at most ${limit} characters`);
}

function textRead(value: string): CellReading {
  return { ok: true, kind: "word", value, remarks: [] };
}

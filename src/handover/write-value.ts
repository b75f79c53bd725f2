import { looksLikeFormula, showText, windows1252Byte } from "../base/index.js";
import { formulaTrouble } from "./formula.js";
import {
  type Found,
  foundInText,
  type Looked,
  type Lookup,
  nameInMapping,
  nameInWords,
  numberOf,
  plainWord,
} from "./found.js";
import { lengthOf, shorten } from "./length.js";
import type { Column, CountedIn, FileForm, Name, Template } from "./mapping.js";
import { fillTemplate } from "./template.js";
import { dayInWriting, numberInWriting } from "./writing.js";

/** Why a value cannot be written: what was found, the limit, what to do. */
export interface Refusal {
  readonly code: string;
  readonly text: string;
}

/** What is written in one column of one row. */
export interface Written {
  /** Null where nothing is written at all. */
  readonly value: string | null;
  readonly refused: readonly Refusal[];
  /** What was done to the value that somebody may want to know: shortened, written empty. */
  readonly remarks: readonly string[];
}

/** What the row of a column stands for: the whole, and each point that it speaks of. */
export interface RowLookups {
  readonly row: Lookup;
  readonly points: readonly PointLookup[];
}

/** A point of a row. */
export interface PointLookup {
  readonly name: string;
  readonly lookup: Lookup;
}

/** Characters that a cell of a workbook holds at most, UTF-16 units. */
const MOST_IN_CELL = 32_767;

// biome-ignore lint/suspicious/noControlCharactersInRegex: characters that no field should hold
const UNFIT = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\ufffe\uffff]|\p{Surrogate}/u;

/** Works out what a column says of a row. */
export function writeColumn(column: Column, form: FileForm, lookups: RowLookups): Written {
  const writing = new Writing(column, form);
  const value = writing.write(lookups);
  return { value, refused: writing.refused, remarks: writing.remarks };
}

class Writing {
  readonly refused: Refusal[] = [];
  readonly remarks: string[] = [];
  readonly #column: Column;
  readonly #form: FileForm;

  constructor(column: Column, form: FileForm) {
    this.#column = column;
    this.#form = form;
  }

  write(lookups: RowLookups): string | null {
    const { source } = this.#column;
    if (source.from === "name") return this.#named(this.#found(lookups.row(source.name)));
    if (source.from === "constant") return this.#finish(source.text);
    if (source.from === "template") return this.#finish(this.#fill(source.template, lookups.row));
    const texts = lookups.points
      .map(({ name, lookup }) => this.#fill(source.template, lookup, `${name}: `))
      .filter((text) => text !== "");
    return this.#finish(texts.join(source.join));
  }

  #found(looked: Looked): Found | null {
    if (!looked.ok) {
      this.#refuse("not-one-value", looked.text);
      return null;
    }
    if (looked.remark !== undefined) this.remarks.push(`${looked.remark}; written as empty`);
    return looked.found;
  }

  #fill(template: Template, lookup: Lookup, at = ""): string {
    const { days } = this.#column;
    const before = this.refused.length;
    const word = (name: Name): string | null => {
      const found = this.#found(lookup(name));
      return found === null ? null : foundInText(found, this.#form, days);
    };
    const filled = fillTemplate(template, word);
    if (filled.ok) return filled.text;
    // What contradicts itself has been said, and is not said again as missing.
    if (this.refused.length > before) return "";
    this.#refuse(
      "empty-in-template",
      `${at}the ${nameInWords(filled.empty)} is not known; put the part with {${nameInMapping(filled.empty)}} into [brackets] to leave it out, or find it out`,
    );
    return "";
  }

  #named(found: Found | null): string | null {
    const { values, type, takes, decimals, days } = this.#column;
    if (found === null || this.refused.length > 0) return this.#finish("");
    if (values !== null) {
      const word = plainWord(found);
      const value = values.get(word);
      if (value !== undefined) return this.#finish(value);
      const known = [...values.keys()].map((known) => `"${showText(known)}"`).join(", ");
      return this.#refuse(
        "not-in-list",
        `"${showText(word)}" is not in the list of values (${known}); add it, or filter such points`,
      );
    }
    if (type === "number" || (type === "code" && found.kind === "number")) {
      const number = found.kind === "number" ? numberOf(found, takes) : null;
      if (number !== null) return this.#finish(this.#number(number, decimals));
      const shown = foundInText(found, this.#form, days);
      return this.#refuse(
        "no-single-number",
        `found "${showText(shown)}", one number is wanted; say "takes: lowest" or "highest", or find it out`,
      );
    }
    if (type === "date" && found.kind === "date") return this.#finish(dayInWriting(found.day, days));
    return this.#finish(type === "code" ? plainWord(found) : foundInText(found, this.#form, days));
  }

  /** A number of a code is an identifier, and has its decimal point wherever it goes. */
  #number(number: number, decimals: number | null): string {
    const { type } = this.#column;
    const written = numberInWriting(number, decimals, type === "code" ? "point" : this.#form.decimalSign);
    const whole = numberInWriting(number, null, "point");
    const same = Number(numberInWriting(number, decimals, "point")) === Number(whole);
    if (!same) this.remarks.push(`rounded from ${whole} to ${written}`);
    return written;
  }

  /** What is done to every text that is to be written. */
  #finish(text: string): string | null {
    const { type } = this.#column;
    if (this.refused.length > 0) return null;
    const tidy = type === "code" ? text : this.#tidy(text);
    if (tidy === "") return this.#empty();
    const unfit = UNFIT.exec(tidy)?.[0];
    if (unfit !== undefined)
      this.#refuse("control-character", `it holds ${showText(unfit)}, which no file can carry; mend it in the survey`);
    if (type === "code") this.#checkCode(tidy);
    else if (type !== "text") this.#checkLiteral(tidy);
    const written = this.#fit(this.#withoutSeparators(tidy));
    this.#checkCarrier(written);
    return this.refused.length > 0 ? null : written;
  }

  #tidy(text: string): string {
    const plain = text.normalize("NFC").replace(/\r\n?/g, "\n");
    const lined = this.#column.lines === "many" ? plain : plain.replace(/\s+/gu, " ");
    return lined.trim();
  }

  #empty(): string | null {
    const { required, key, whenEmpty } = this.#column;
    if (required) {
      const why = key ? "it is a key" : "the mapping requires it";
      return this.#refuse("empty", `it is empty, and ${why}; find it out, or filter such points`);
    }
    if (whenEmpty === "omit") return null;
    return whenEmpty === "blank" ? "" : whenEmpty.clear;
  }

  /** A constant, or a word of a list, in a column of numbers or days. */
  #checkLiteral(text: string): void {
    const { type } = this.#column;
    const literal = this.#form.decimalSign === "comma" ? /^-?\d+(?:,\d+)?$/ : /^-?\d+(?:\.\d+)?$/;
    if (type === "number" && !literal.test(text))
      this.#refuse("no-number", `"${showText(text)}" is no number; mend it in the mapping`);
  }

  #checkCode(text: string): void {
    const { characters } = this.#column;
    if (/^\s|\s$|[\r\n\t]/u.test(text))
      this.#refuse(
        "blank-at-end",
        `"${showText(text)}" has a blank at an end or a line break in it; a code is not changed, so mend it in the survey`,
      );
    const trouble = formulaTrouble(text);
    if (trouble !== null) this.#refuse("formula", trouble);
    const strange = characters === null ? undefined : [...text].find((sign) => !isIn(characters, sign));
    if (strange !== undefined) {
      this.#refuse(
        "character",
        `"${showText(text)}" holds "${showText(strange)}"; allowed are ${characters?.join(" ")}; a code is not changed, so mend it in the survey`,
      );
    }
  }

  #withoutSeparators(text: string): string {
    const { separator, separatorInValues, kind } = this.#form;
    const sign = SIGNS[separator];
    if (kind === "xlsx" || separatorInValues === "quote" || !text.includes(sign)) return text;
    if (separatorInValues !== "stop" && this.#column.type === "text")
      return text.replaceAll(sign, separatorInValues.replaceBy);
    this.#refuse(
      "separator",
      `"${showText(text)}" holds the separator "${showText(sign)}", which this file must not have in a value; mend it, or take another separator`,
    );
    return text;
  }

  /** Neutralised and within its length. The apostrophe counts, since the other side counts it. */
  #fit(text: string): string {
    const { length, type } = this.#column;
    const lead = this.#form.kind === "csv" && type === "text" && looksLikeFormula(text) ? "'" : "";
    const whole = lead + text;
    if (length === null || lengthOf(whole, length.counted) <= length.most) return whole;
    const found = `${lengthOf(whole, length.counted)} ${COUNTED[length.counted]}, at most ${length.most}`;
    if (length.tooLong === "stop" || type !== "text") {
      this.#refuse(
        "too-long",
        `"${showText(whole)}" has ${found}; ${type === "text" ? "shorten it" : "a code is never cut, so choose a shorter one"}`,
      );
      return whole;
    }
    const short = lead + shorten(text, { ...length, most: length.most - lead.length });
    this.remarks.push(`shortened from ${found}: "${showText(short, 400)}"`);
    return short;
  }

  #checkCarrier(text: string): void {
    const { kind, encoding } = this.#form;
    const { whenEmpty } = this.#column;
    if (kind === "xlsx" && text.length > MOST_IN_CELL)
      this.#refuse("too-long", `it has ${text.length} characters; a cell of a workbook holds ${MOST_IN_CELL}`);
    if (typeof whenEmpty === "object" && text === whenEmpty.clear)
      this.#refuse("clear-word", `"${showText(text)}" is the word that clears the field; choose another clear word`);
    const strange =
      encoding === "windows-1252"
        ? [...text].find((sign) => windows1252Byte(sign.codePointAt(0) ?? 0) === null)
        : undefined;
    if (strange !== undefined) {
      this.#refuse(
        "not-in-encoding",
        `"${showText(text)}" holds "${showText(strange)}", which ${encoding} does not have; mend it, or write the file in utf-8`,
      );
    }
  }

  #refuse(code: string, text: string): null {
    this.refused.push({ code, text });
    return null;
  }
}

const COUNTED: Readonly<Record<CountedIn, string>> = {
  characters: "characters",
  "utf-16-units": "UTF-16 units",
  "utf-8-bytes": "bytes of UTF-8",
};

/** The signs that stand between fields. */
export const SIGNS: Readonly<Record<FileForm["separator"], string>> = {
  comma: ",",
  semicolon: ";",
  tab: "\t",
  pipe: "|",
};

function isIn(characters: readonly string[], sign: string): boolean {
  return characters.some((allowed) => {
    switch (allowed) {
      case "upper":
        return /^[A-Z]$/.test(sign);
      case "lower":
        return /^[a-z]$/.test(sign);
      case "digits":
        return /^[0-9]$/.test(sign);
      case "blank":
        return sign === " ";
      default:
        return sign === allowed;
    }
  });
}

import { zipSync } from "fflate";
import { smallParts } from "./small-workbook.js";

/** A damaged file, and how much is known about what must become of it. */
export interface Mutation {
  readonly bytes: Uint8Array;
  /**
   * "same or refused" where every byte that means anything is under a checksum, "refused" where the end is missing,
   * "anything" where the damage is under the checksums.
   */
  readonly must: "same or refused" | "refused" | "anything";
}

/** Whole numbers from 0 up to `below`, the same row of them for the same seed (mulberry32). */
export type Dice = (below: number) => number;

export function dice(seed: number): Dice {
  let state = seed >>> 0;
  return (below) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296) * below);
  };
}

const SHARED = `<si><t>Tag</t></si><si><t xml:space="preserve"> Speed </t></si><si><r><t>µ</t></r><r><t>m</t></r><rPh><t>x</t></rPh></si><si><t>a_x000A_b&amp;</t></si>`;
const STYLES = `<numFmts><numFmt numFmtId="170" formatCode="yyyy\\-mm"/></numFmts><cellXfs><xf/><xf numFmtId="14"/><xf numFmtId="170"/></cellXfs>`;
const PLAIN = `<row r="1" spans="1:3"><c r="A1" t="s"><v>0</v></c><c r="B1" s="1" t="s"><v>1</v></c><c r="C1" t="s"><v>3</v></c></row>
<row r="2" hidden="1"><c r="A2" t="s"><v>2</v></c><c r="B2" s="2"><v>46000.5</v></c><c r="C2"/></row>`;
const ODD = `<row><c t="inlineStr"><is><t>one</t><r><t> two</t></r></is></c><c t="str"><f>A1&amp;"x"</f><v>three</v></c></row>
<row r='9'><c r="D9" t="b"><v>1</v></c><c t="e"><v>#N/A</v></c><c t="d"><v>2026-02-28</v></c><!-- c --><c><f>1</f></c></row>
<row r="4"><c r="B4"><v><![CDATA[1.5]]></v></c><c r="A4"><v>-1e-3</v></c><?p i?></row>`;
const PREFIXED = `<x:worksheet xmlns:x="u"><x:cols><x:col min="2" max="3" hidden="1"/></x:cols><x:sheetData><x:row r="1"><x:c r="A1"><x:v>1480</x:v></x:c></x:row></x:sheetData><x:mergeCells><x:mergeCell ref="A1:B2"/></x:mergeCells></x:worksheet>`;

function wide(text: string): Uint8Array {
  const bytes = new Uint8Array(2 * text.length);
  for (let i = 0; i < text.length; i++) new DataView(bytes.buffer).setUint16(2 * i, text.charCodeAt(i), true);
  return bytes;
}

/** Small workbooks by their parts, which between them write everything that the reader knows. */
export const WORKBOOKS: readonly Readonly<Record<string, Uint8Array>>[] = [
  smallParts([{ data: PLAIN }], { sharedStrings: SHARED, styles: STYLES }),
  smallParts(
    [
      { data: ODD },
      { name: "B", state: "hidden", data: PLAIN, after: `<mergeCells><mergeCell ref="A1:B2"/></mergeCells>` },
    ],
    {
      sharedStrings: SHARED,
      styles: STYLES,
      workbookProperties: `<workbookPr date1904="1"/>`,
    },
  ),
  smallParts([{}, {}], {
    parts: {
      "xl/worksheets/sheet1.xml": PREFIXED,
      "xl/worksheets/sheet2.xml": wide(
        `\ufeff<?xml version="1.0" encoding="UTF-16"?><worksheet><sheetData>${ODD}</sheetData></worksheet>`,
      ),
    },
  }),
];

export const TEXTS: readonly Uint8Array[] = [
  'Tag;Speed;"Place; end"\nP-1;1.480,0;"DE, ""left"""\r\nP-2;990;NDE µ\n',
  "sep=,\r\nTag,Speed\r\nP-1,1480\r\n",
  'Tag\tSpeed\tNote\nP-1\t1480\t1/4"\n\n\nP-2\t\t\n',
].map((text) => new TextEncoder().encode(text));

const SPLINTERS = [
  ...[
    "<",
    ">",
    "&",
    "]]>",
    "<!--",
    "-->",
    "<![CDATA[",
    "]]>",
    "<?x",
    "?>",
    "<!DOCTYPE a [",
    "&#0;",
    "&#x41;",
    "&amp;",
    "&e;",
  ],
  ...[
    "</c>",
    "<c>",
    "</row>",
    `<row r="1">`,
    `<c r="A1"><v>1</v></c>`,
    "<v>",
    "</v>",
    "<is><t>",
    `r="`,
    `t="s"`,
    `s="9"`,
    `'`,
    `"`,
  ],
  ...[
    "\0",
    "\r",
    "\n",
    "\ufffe",
    "999999999999",
    "-1",
    "1e999",
    "NaN",
    "XFD1048576",
    "AAAA1",
    "_x000D_",
    "_xD800_",
    " ",
    "\ufeff",
  ],
].map((text) => new TextEncoder().encode(text));

/** The file of a workbook, its parts packed or not. */
export function packed(parts: Readonly<Record<string, Uint8Array>>, level: 0 | 1 = 1): Uint8Array {
  return zipSync({ ...parts }, { level, mtime: new Date("2026-01-01T00:00:00Z") });
}

function flipped(bytes: Uint8Array, roll: Dice, most: number): Uint8Array {
  const copy = new Uint8Array(bytes);
  for (let left = 1 + roll(most); left > 0 && copy.length > 0; left--) {
    const at = roll(copy.length);
    copy[at] = (copy[at] ?? 0) ^ (1 + roll(255));
  }
  return copy;
}

/** Takes a stretch out and puts other bytes in. */
function spliced(bytes: Uint8Array, roll: Dice, others: readonly Uint8Array[]): Uint8Array {
  const from = roll(bytes.length + 1);
  const to = roll(3) === 0 ? Math.min(bytes.length, from + roll(200)) : from;
  const other = others[roll(others.length)] ?? bytes;
  const start = roll(2) === 0 ? 0 : roll(other.length);
  const inserted = other.subarray(start, other.length < 40 ? undefined : start + roll(400));
  return Uint8Array.from([...bytes.subarray(0, from), ...inserted, ...bytes.subarray(to)]);
}

const VALUES = [
  ...[
    "",
    "0",
    "1",
    "2",
    "3",
    "9",
    "-1",
    "1.5",
    "1480",
    "1e9",
    "99999999999",
    "0x1",
    "s",
    "n",
    "str",
    "b",
    "e",
    "d",
    "z",
    "inlineStr",
  ],
  ...[
    "A1",
    "A2",
    "B9",
    "$A$1",
    "XFD1048576",
    "ZZZZ1",
    "A0",
    "a1",
    "A1:B2",
    "true",
    " 1 ",
    "&#49;",
    "&lt;",
    "_x000A_",
    "µ",
    "rId1",
    "rId9",
  ],
  ...[
    "visible",
    "hidden",
    "veryHidden",
    "styles.xml",
    "../x.xml",
    "worksheets/sheet1.xml",
    "http://127.0.0.1:9/",
    "External",
    "14",
    "22",
  ],
].map((text) => new TextEncoder().encode(text));

/** Puts another value between two quotes or two tags, so that the form stays right and the meaning goes wrong. */
function revalued(bytes: Uint8Array, roll: Dice): Uint8Array {
  const ends = roll(2) === 0 ? [34, 34] : [62, 60];
  const from = bytes.indexOf(ends[0] ?? 0, roll(bytes.length + 1)) + 1;
  const to = bytes.indexOf(ends[1] ?? 0, from);
  if (from === 0 || to < 0) return bytes;
  const value = VALUES[roll(VALUES.length)] ?? bytes;
  return Uint8Array.from([...bytes.subarray(0, from), ...value, ...bytes.subarray(to)]);
}

/** Flips, cuts and splices, up to three of them. */
export function anyDamage(bytes: Uint8Array, roll: Dice, others: readonly Uint8Array[]): Uint8Array {
  let damaged = bytes;
  const keepsForm = roll(2) === 0;
  for (let left = 1 + roll(3); left > 0; left--) {
    const kind = keepsForm ? 8 : roll(8);
    if (kind === 8) damaged = revalued(damaged, roll);
    else if (kind < 2) damaged = flipped(damaged, roll, 2);
    else if (kind === 2) damaged = damaged.slice(0, roll(damaged.length + 1));
    else damaged = spliced(damaged, roll, kind < 6 ? SPLINTERS : [...others, damaged]);
  }
  return damaged;
}

/** A workbook that is damaged from outside, as by a bad copy: every byte of its parts is under a checksum. */
export function damagedFile(file: Uint8Array, others: readonly Uint8Array[], roll: Dice): Mutation {
  switch (roll(4)) {
    case 0:
      return { bytes: flipped(file, roll, 1), must: "same or refused" };
    case 1:
      return { bytes: file.slice(0, 4 + roll(file.length - 4)), must: "refused" };
    case 2:
      return { bytes: spliced(file, roll, others), must: "anything" };
    default:
      return { bytes: flipped(file, roll, 3), must: "anything" };
  }
}

/** A workbook whose parts are damaged before it is packed, so that its checksums are right. */
export function damagedParts(parts: Readonly<Record<string, Uint8Array>>, roll: Dice): Mutation {
  const names = Object.keys(parts);
  const copy: Record<string, Uint8Array> = { ...parts };
  for (let left = 1 + roll(2); left > 0; left--) {
    const name = names[roll(names.length)] ?? "";
    if (roll(30) === 0) delete copy[name];
    else copy[name] = anyDamage(copy[name] ?? new Uint8Array(0), roll, Object.values(parts));
  }
  return { bytes: packed(copy, roll(2) === 0 ? 0 : 1), must: "anything" };
}

export function damagedText(text: Uint8Array, roll: Dice): Mutation {
  return { bytes: anyDamage(text, roll, TEXTS), must: "anything" };
}

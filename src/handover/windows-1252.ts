/**
 * Characters of Windows-1252 from 0x80 to 0x9F by their bytes; five bytes stand for nothing. From 0xA0 on, and below
 * 0x80, byte and code point are the same. Source: the table cp1252 of the Unicode Consortium, from memory; the tests hold it
 * to the decoder of the platform, byte by byte.
 */
const UPPER: readonly (number | null)[] = [
  0x20ac,
  null,
  0x201a,
  0x0192,
  0x201e,
  0x2026,
  0x2020,
  0x2021,
  0x02c6,
  0x2030,
  0x0160,
  0x2039,
  0x0152,
  null,
  0x017d,
  null,
  null,
  0x2018,
  0x2019,
  0x201c,
  0x201d,
  0x2022,
  0x2013,
  0x2014,
  0x02dc,
  0x2122,
  0x0161,
  0x203a,
  0x0153,
  null,
  0x017e,
  0x0178,
];

const BYTES = new Map(UPPER.flatMap((code, place) => (code === null ? [] : [[code, 0x80 + place] as const])));

/** The byte of a character; null where the encoding does not have it. */
export function windows1252Byte(codePoint: number): number | null {
  if (codePoint < 0x80 || (codePoint >= 0xa0 && codePoint <= 0xff)) return codePoint;
  return BYTES.get(codePoint) ?? null;
}

/** Windows-1252 where it differs from Latin-1 (0x80 to 0x9f), as code points; 0 for the five bytes it leaves open. */
export const WINDOWS_1252_UPPER: readonly number[] = [
  0x20ac, 0, 0x201a, 0x0192, 0x201e, 0x2026, 0x2020, 0x2021, 0x02c6, 0x2030, 0x0160, 0x2039, 0x0152, 0, 0x017d, 0, 0,
  0x2018, 0x2019, 0x201c, 0x201d, 0x2022, 0x2013, 0x2014, 0x02dc, 0x2122, 0x0161, 0x203a, 0x0153, 0, 0x017e, 0x0178,
];

const BYTES = new Map(WINDOWS_1252_UPPER.flatMap((code, place) => (code === 0 ? [] : [[code, 0x80 + place] as const])));

/** The byte of a character in Windows-1252; null where the encoding does not have it. */
export function windows1252Byte(codePoint: number): number | null {
  if (codePoint < 0x80 || (codePoint >= 0xa0 && codePoint <= 0xff)) return codePoint;
  return BYTES.get(codePoint) ?? null;
}

const WIDE =
  /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]|\p{Emoji_Presentation}/u;

/** Most texts of a survey; counted without looking at each character. */
const NARROW_ONLY = /^[ -\u024f]*$/;

/** Columns that a text takes on a terminal; ideographs take two. */
export function displayWidth(text: string): number {
  if (NARROW_ONLY.test(text)) return text.length;
  let width = 0;
  for (const character of text) width += WIDE.test(character) ? 2 : 1;
  return width;
}

/** Lines of at most `width` columns, broken at blanks; a longer word is broken where the line ends. */
export function wrapText(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ").flatMap((one) => broken(one, width))) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && displayWidth(longer) > width) {
      lines.push(line);
      line = word;
    } else {
      line = longer;
    }
  }
  return [...lines, line];
}

function broken(word: string, width: number): readonly string[] {
  if (displayWidth(word) <= width) return [word];
  const pieces: string[] = [];
  let piece = "";
  for (const character of word) {
    if (displayWidth(piece + character) > width) {
      pieces.push(piece);
      piece = "";
    }
    piece += character;
  }
  return [...pieces, piece];
}

import { showControls } from "../csv/safe-text.js";

const MOST_CHARACTERS = 31;
/** The spreadsheet programs keep this name for themselves. */
const RESERVED = "history";

/** Hands out sheet names that a workbook can have: at most 31 characters, none forbidden, none twice. */
export function sheetNamer(): (wanted: string) => string {
  const taken = new Set<string>([RESERVED]);
  return (wanted) => {
    const fit = fitName(wanted);
    let name = fit;
    for (let count = 2; taken.has(name.toLowerCase()); count++) {
      const ending = ` (${count})`;
      name = cut(fit, MOST_CHARACTERS - ending.length) + ending;
    }
    taken.add(name.toLowerCase());
    return name;
  };
}

function fitName(wanted: string): string {
  const plain = showControls(wanted)
    .replace(/[\\/?*[\]:\t\r\n]/g, " ")
    .replace(/ +/g, " ")
    .replace(/^[' ]+/, "");
  const name = cut(plain, MOST_CHARACTERS).replace(/[' ]+$/, "");
  return name === "" ? "sheet" : name;
}

/** Whole characters only, counted as the format counts them. */
function cut(text: string, most: number): string {
  let kept = "";
  for (const character of text) {
    if (kept.length + character.length > most) break;
    kept += character;
  }
  return kept;
}

/** The name of a file without its folders and ending, for a survey without sheets. */
export function nameOfFile(file: string): string {
  return (file.split(/[\\/]/).at(-1) ?? file).replace(/\.[^.]+$/, "");
}

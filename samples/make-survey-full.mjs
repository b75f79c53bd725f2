/**
 * Writes samples/survey-full.xlsx: run by hand after a build, `npm run build && node samples/make-survey-full.mjs`.
 * Headings and words are those of the project's blank surveys, so that a fact which the rules need gets its column by
 * itself; what stands in the columns is said in the folder survey-full. The same rulebook gives the same bytes.
 */
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import ExcelJS from "exceljs";
import { openRulebook } from "../dist/index.js";
import { blankColumns } from "../dist/outputs/blank-survey/columns.js";
import { BLANK_TEXTS } from "../dist/outputs/blank-survey/texts/by-language.js";
import { POINTS } from "./survey-full/all-points.mjs";
import { writeHall } from "./survey-full/sheet.mjs";
import { SHEETS } from "./survey-full/sheets.mjs";
import { packed } from "./survey-pack.mjs";

const DAY = new Date("2026-11-13T15:00:00Z");

/** Facts that a survey should have whatever the rules need, and how each language calls them. */
const ALSO = [
  { id: "supply_name", group: "electrical", en: "Supply name", de: "Name der Versorgung" },
  { id: "junction_box", group: "electrical", en: "Junction box", de: "Abzweigdose" },
  { id: "channel", group: "electrical", en: "Channel", de: "Kanal" },
];

const opened = await openRulebook(null);
if (!opened.ok) throw new Error(opened.findings.map(({ text }) => text).join("\n"));

const workbook = new ExcelJS.Workbook();
workbook.creator = "O. Tressick";
workbook.lastModifiedBy = "M. Odrey";
workbook.created = DAY;
workbook.modified = DAY;
for (const sheet of SHEETS) {
  writeHall(
    workbook,
    sheet,
    columnsOf(sheet),
    POINTS.filter((point) => point.sheet === sheet.name),
  );
}
const written = new Uint8Array(await workbook.xlsx.writeBuffer());
writeFileSync(fileURLToPath(new URL("survey-full.xlsx", import.meta.url)), packed(written));
console.log(`${POINTS.length} points, ${POINTS.filter(({ facts }) => facts.notes).length} of them with a remark`);

/** The columns of the blank survey in the language of the sheet, with its own units. */
function columnsOf({ language, units }) {
  const { columns } = blankColumns(opened.rulebook, language, "installed", BLANK_TEXTS[language]);
  const asked = columns.map(({ field, heading, unit, words }) => {
    const [otherUnit, convert] = units[field.id] ?? [];
    return {
      fact: field.id,
      group: field.group,
      heading: otherUnit ? heading.replace(`(${unit})`, `(${otherUnit})`) : heading,
      write: (value) => {
        if (value === undefined || value === null) return null;
        if (typeof value === "number" && convert) return convert(value);
        return wordFor(value, field, words, language);
      },
    };
  });
  const also = ALSO.filter(({ id }) => !asked.some(({ fact }) => fact === id)).map((one) => ({
    fact: one.id,
    group: one.group,
    heading: one[language],
    write: (value) => value ?? null,
  }));
  const after = asked.findLastIndex(({ group }) => group === "electrical") + 1;
  return [...asked.slice(0, after), ...also, ...asked.slice(after)];
}

/** The word of the language for a choice; anything else stands as the surveyor wrote it. */
function wordFor(value, field, words, language) {
  if (field.kind === "yes-no" && (value === "yes" || value === "no")) {
    const { yes, no } = BLANK_TEXTS[language].yesNo;
    return value === "yes" ? yes : no;
  }
  return words.get(value) ?? value;
}

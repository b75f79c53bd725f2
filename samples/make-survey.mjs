/**
 * Writes samples/survey.xlsx: run by hand, `node samples/make-survey.mjs`. Plant, people, tags and sensor models are
 * invented. The same script gives the same bytes, so the workbook changes only where the survey does.
 */
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import ExcelJS from "exceljs";
import { GERMAN_SHEET } from "./survey-halle-3.mjs";
import { ENGLISH_SHEET } from "./survey-halls-1-2.mjs";
import { packed } from "./survey-pack.mjs";
import { writeLegend, writeSheet } from "./survey-sheet.mjs";

const DAY = new Date("2026-10-16T15:00:00Z");

const workbook = new ExcelJS.Workbook();
workbook.creator = "O. Tressick";
workbook.lastModifiedBy = "I. Brandtner";
workbook.created = DAY;
workbook.modified = DAY;
writeSheet(workbook, ENGLISH_SHEET);
writeSheet(workbook, GERMAN_SHEET);
writeLegend(workbook);

const written = new Uint8Array(await workbook.xlsx.writeBuffer());
writeFileSync(fileURLToPath(new URL("survey.xlsx", import.meta.url)), packed(written));

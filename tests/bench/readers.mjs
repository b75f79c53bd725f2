/**
 * Reads one file with one reader: `node tests/bench/readers.mjs NAME FILE [--count]` prints the rows that it found,
 * with --count the filled cells, which takes longer and is never measured. What is read is kept until the end.
 */
import { readFileSync } from "node:fs";
import { createInflateRaw } from "node:zlib";

const [name, file, flag] = process.argv.slice(2);
const isFilled = (value) =>
  value !== null && value !== undefined && !(typeof value === "string" && value.trim() === "");

/** Each gives its rows, and a way to count the filled cells of one. */
const READERS = {
  floor: async () => ({ rows: [await inflatedBytes()], cellsIn: () => 0 }),

  spotface: async () => {
    const { readWorkbook } = await import("../../dist/workbook/index.js");
    const { nodeInflating } = await import("../../dist/disk/index.js");
    const reading = await readWorkbook(readFileSync(file), nodeInflating);
    if (!reading.ok) throw new Error(reading.error.text);
    return { rows: reading.workbook.sheets[0].rows, cellsIn: ({ cells }) => cells.length };
  },

  exceljs: async () => {
    const { default: ExcelJS } = await import("exceljs");
    const book = new ExcelJS.Workbook();
    await book.xlsx.readFile(file);
    const rows = [];
    book.worksheets[0].eachRow((row) => rows.push(row));
    return { rows, cellsIn: ({ values }) => values.filter(isFilled).length };
  },

  "exceljs, streaming": async () => {
    const { default: ExcelJS } = await import("exceljs");
    const rows = [];
    const book = new ExcelJS.stream.xlsx.WorkbookReader(file, { sharedStrings: "cache", styles: "cache" });
    // Rows are looked at one by one and let go, as the form is meant to be used.
    for await (const sheet of book) {
      for await (const row of sheet) rows.push(flag === "--count" ? row.values.filter(isFilled).length : 0);
    }
    return { rows, cellsIn: (count) => count };
  },

  SheetJS: async () => {
    const { read } = await import("@e965/xlsx");
    const options = { dense: true, cellFormula: false, cellHTML: false, cellText: false };
    const book = read(readFileSync(file), { type: "buffer", ...options });
    const rows = book.Sheets[book.SheetNames[0]]["!data"].filter((row) => row !== undefined);
    return { rows, cellsIn: (row) => row.filter((cell) => isFilled(cell?.v)).length };
  },

  "read-excel-file": async () => {
    const { readSheet } = await import("read-excel-file/node");
    return { rows: await readSheet(file), cellsIn: (row) => row.filter(isFilled).length };
  },
};

/** Unpacks the largest sheet part and keeps nothing: what any reader must do at least. */
async function inflatedBytes() {
  const bytes = readFileSync(file);
  const { start, length } = largestSheet(bytes);
  let size = 0;
  const inflating = createInflateRaw({ chunkSize: 1 << 18 });
  inflating.on("data", (piece) => {
    size += piece.length;
  });
  inflating.end(bytes.subarray(start, start + length));
  await new Promise((resolve, reject) => inflating.on("end", resolve).on("error", reject));
  return size;
}

/** Where the packed bytes of the largest sheet part lie; for the plain zip files of the bench only. */
function largestSheet(bytes) {
  const end = bytes.lastIndexOf("PK\x05\x06", undefined, "latin1");
  let at = bytes.readUInt32LE(end + 16);
  let largest = { start: 0, length: 0 };
  for (let entry = 0; entry < bytes.readUInt16LE(end + 10); entry++) {
    const length = bytes.readUInt32LE(at + 20);
    const nameLength = bytes.readUInt16LE(at + 28);
    const part = bytes.toString("latin1", at + 46, at + 46 + nameLength);
    const local = bytes.readUInt32LE(at + 42);
    const start = local + 30 + bytes.readUInt16LE(local + 26) + bytes.readUInt16LE(local + 28);
    if (part.startsWith("xl/worksheets/") && length > largest.length) largest = { start, length };
    at += 46 + nameLength + bytes.readUInt16LE(at + 30) + bytes.readUInt16LE(at + 32);
  }
  return largest;
}

const { rows, cellsIn } = await READERS[name]();
console.log(flag === "--count" ? rows.reduce((sum, row) => sum + cellsIn(row), 0) : rows.length);

import { expect, it } from "vitest";
import { nodeInflating } from "../../../src/disk/index.js";
import { readWorkbook } from "../../../src/workbook/index.js";
import { type CorpusFile, corpusBytes } from "../corpus.js";
import { isSentence } from "../reading.js";
import { explained, NOT_ASKED } from "./explained.js";
import { ourCells } from "./our-cells.js";
import { foundBy, READERS } from "./two-readers.js";

/** Compares every file that we open, cell by cell, with the other readers; what differs must be explained. */
export function testsOfCorpus(files: readonly CorpusFile[]): void {
  const asked = files.flatMap((entry) =>
    READERS.filter((reader) => !NOT_ASKED.has(`${reader} ${entry.file}`)).map((reader) => ({ ...entry, reader })),
  );
  it.each(asked)("$file as $reader reads it", async ({ file, reader, csv, expect: wanted }) => {
    const bytes = corpusBytes("workbooks", file);
    const plain = await readWorkbook(bytes, nodeInflating);
    const told = csv && csv.encoding !== "utf-32" && !plain.ok ? { encoding: csv.encoding } : null;
    const reading = told ? await readWorkbook(bytes, nodeInflating, told) : plain;
    if (!reading.ok) {
      expect(reading.error.text).toSatisfy(isSentence);
      if (csv?.encoding !== "utf-32") expect(wanted).not.toBe("opens");
      return;
    }
    expect(await foundBy(reader, bytes, ourCells(reading.workbook), csv)).toEqual(explained(reader, file));
  });
}

import { existsSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { nodeInflating } from "../../src/disk/index.js";
import { readWorkbook } from "../../src/workbook/index.js";

const FOLDER = new URL("../../../shared/surveys/", import.meta.url);

describe.skipIf(!existsSync(FOLDER))("the surveys with known answers", () => {
  it.each([
    ["quillmoor.xlsx", "xlsx"],
    ["dunkelforst.xlsx", "xlsx"],
    ["tallgrass.csv", "csv"],
  ])("reads %s", async (file, kind) => {
    const reading = await readWorkbook(readFileSync(new URL(file, FOLDER)), nodeInflating);
    expect(reading).toMatchObject({ ok: true, workbook: { kind } });
  });
});

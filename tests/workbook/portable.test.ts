import { expect, it } from "vitest";
import { nodeInflating } from "../../src/disk/index.js";
import { portableInflating, readWorkbook } from "../../src/workbook/index.js";
import { plainSheets } from "./reading.js";
import { smallWorkbook } from "./small-workbook.js";

it("reads the same with unpacking that any machine can do", async () => {
  const row = (i: number): string =>
    `<row r="${i}"><c r="A${i}" t="s"><v>${i % 2}</v></c><c r="B${i}"><v>${i}</v></c></row>`;
  const data = Array.from({ length: 20_000 }, (_, i) => row(i + 1)).join("");
  const file = smallWorkbook([{ data }], { sharedStrings: "<si><t>even</t></si><si><t>odd</t></si>" });
  const [node, portable] = [await readWorkbook(file, nodeInflating), await readWorkbook(file, portableInflating)];
  if (!node.ok || !portable.ok) throw new Error("should open");
  expect(node.workbook.sheets[0]?.rows).toHaveLength(20_000);
  expect(plainSheets(portable.workbook)).toEqual(plainSheets(node.workbook));
});

import { strToU8, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { opened, refused, valuesOf } from "./reading.js";
import { smallParts, smallWorkbook } from "./small-workbook.js";

const DATA = `<row r="1"><c r="A1"><v>1480</v></c></row>`;
const GOOD = smallWorkbook([{ data: DATA }]);
const NUMBER = { kind: "number", number: 1480, format: "general" };

/** A copy with some bytes changed. */
function changed(bytes: Uint8Array, change: (view: DataView, bytes: Uint8Array) => void): Uint8Array {
  const copy = bytes.slice();
  change(new DataView(copy.buffer), copy);
  return copy;
}

/** Offsets of all records with this signature. */
function recordsAt(bytes: Uint8Array, signature: number): number[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const found: number[] = [];
  for (let at = 0; at + 4 <= bytes.length; at++) if (view.getUint32(at, true) === signature) found.push(at);
  return found;
}

const directoryEntries = (bytes: Uint8Array): number[] => recordsAt(bytes, 0x02014b50);
const lastEntry = (bytes: Uint8Array): number => directoryEntries(bytes).at(-1) ?? 0;

function joined(...pieces: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}

async function opensAs1480(bytes: Uint8Array): Promise<void> {
  expect(valuesOf((await opened(bytes)).sheets[0])).toEqual({ "1:1": NUMBER });
}

describe("the zip directory", () => {
  it("reads a good one, packed or only stored", async () => {
    await opensAs1480(GOOD);
    await opensAs1480(zipSync(smallParts([{ data: DATA }]), { level: 0 }));
  });

  it("reads one inside a larger buffer", async () => {
    const larger = joined(new Uint8Array(7), GOOD);
    await opensAs1480(larger.subarray(7));
  });

  it("reads a zip comment", async () => {
    const comment = strToU8("from the plant");
    const file = changed(joined(GOOD, comment), (view) => view.setUint16(GOOD.length - 2, comment.length, true));
    await opensAs1480(file);
  });

  const cases: readonly (readonly [what: string, file: Uint8Array, code: string])[] = [
    ["bytes behind the end", joined(GOOD, strToU8("tail")), "data-after-end"],
    ["bytes in front", joined(strToU8("<html>"), GOOD), "data-before-zip"],
    ["a second zip in front", joined(GOOD, GOOD), "damaged-zip"],
    ["its second half missing", GOOD.subarray(0, GOOD.length / 2), "truncated"],
    ["nothing inside", zipSync({}), "empty-zip"],
    ["an encrypted part", changed(GOOD, (view) => view.setUint16(lastEntry(GOOD) + 8, 1, true)), "encrypted-part"],
    [
      "an unknown packing",
      changed(GOOD, (view) => view.setUint16(lastEntry(GOOD) + 10, 12, true)),
      "unknown-compression",
    ],
    ["another packing in the local header", changed(GOOD, (view) => view.setUint16(8, 0, true)), "damaged-zip"],
    ["another name in the local header", changed(GOOD, (_, bytes) => bytes.set(strToU8("X"), 30)), "damaged-zip"],
    ["a wrong checksum", changed(GOOD, (view) => view.setUint32(lastEntry(GOOD) + 16, 1, true)), "damaged-part"],
    ["an understated size", changed(GOOD, (view) => view.setUint32(lastEntry(GOOD) + 24, 9, true)), "part-size-lies"],
    ["an overstated size", changed(GOOD, (view) => view.setUint32(lastEntry(GOOD) + 24, 99_999, true)), "damaged-part"],
    [
      "two parts on the same bytes",
      changed(GOOD, (view) =>
        view.setUint32(lastEntry(GOOD) + 42, view.getUint32((directoryEntries(GOOD)[1] ?? 0) + 42, true), true),
      ),
      "overlapping-parts",
    ],
    [
      "a part twice, in other letters",
      zipSync({ ...smallParts([{ data: DATA }]), "XL\\Worksheets/SHEET1.xml": strToU8("<x/>") }),
      "duplicate-part",
    ],
    [
      "more entries stated than there are",
      changed(GOOD, (view) => view.setUint16(GOOD.length - 12, 9, true)),
      "damaged-zip",
    ],
  ];

  it.each(cases)("refuses %s", async (_what, file, code) => {
    expect((await refused(file)).code).toBe(code);
  });

  it("reads zip64 records", async () => {
    await opensAs1480(asZip64(GOOD));
  });

  it("refuses a zip64 record that leads nowhere", async () => {
    const file = asZip64(GOOD);
    const locator = recordsAt(file, 0x07064b50)[0] ?? 0;
    expect((await refused(changed(file, (view) => view.setBigUint64(locator + 8, 3n, true)))).code).toBe("damaged-zip");
  });
});

/** The same zip with its end told in zip64 records and one entry with zip64 sizes. */
function asZip64(bytes: Uint8Array): Uint8Array {
  const endAt = recordsAt(bytes, 0x06054b50)[0] ?? 0;
  const source = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const start = source.getUint32(endAt + 16, true);
  const at = lastEntry(bytes);
  const nameEnd = at + 46 + source.getUint16(at + 28, true);
  const field = new Uint8Array(20);
  const fieldView = new DataView(field.buffer);
  fieldView.setUint16(0, 1, true);
  fieldView.setUint16(2, 16, true);
  fieldView.setBigUint64(4, BigInt(source.getUint32(at + 24, true)), true);
  fieldView.setBigUint64(12, BigInt(source.getUint32(at + 20, true)), true);
  const head = changed(joined(bytes.subarray(0, nameEnd), field, bytes.subarray(nameEnd, endAt)), (view) => {
    view.setUint16(at + 30, field.length, true);
    view.setUint32(at + 24, 0xffffffff, true);
    view.setUint32(at + 20, 0xffffffff, true);
  });
  const end = new Uint8Array(56 + 20 + 22);
  const view = new DataView(end.buffer);
  const entries = BigInt(directoryEntries(bytes).length);
  view.setUint32(0, 0x06064b50, true);
  view.setBigUint64(4, 44n, true);
  view.setBigUint64(24, entries, true);
  view.setBigUint64(32, entries, true);
  view.setBigUint64(40, BigInt(head.length - start), true);
  view.setBigUint64(48, BigInt(start), true);
  view.setUint32(56, 0x07064b50, true);
  view.setBigUint64(64, BigInt(head.length), true);
  view.setUint32(76, 0x06054b50, true);
  view.setUint16(84, 0xffff, true);
  view.setUint16(86, 0xffff, true);
  view.setUint32(88, 0xffffffff, true);
  view.setUint32(92, 0xffffffff, true);
  return joined(head, end);
}

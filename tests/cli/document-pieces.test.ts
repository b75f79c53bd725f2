import { describe, expect, it } from "vitest";
import { documentPieces } from "../../src/cli/document-pieces.js";
import { jsonDocument, ndjsonDocument } from "../../src/outputs/index.js";
import { fakeScreening } from "../outputs/fake-screening.js";

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const laidOut = [...jsonDocument(fakeScreening())].join("");
const lines = [...ndjsonDocument(fakeScreening())].join("");
const { points } = JSON.parse(laidOut) as { readonly points: readonly unknown[] };

describe("a stored result, taken apart", () => {
  it.each([
    ["as this program writes it", laidOut],
    ["as lines of JSON", lines],
    ["in one line", JSON.stringify(JSON.parse(laidOut))],
    ["broken into other lines", JSON.stringify(JSON.parse(laidOut), null, 2)],
    ["with line ends of another system", laidOut.replaceAll("\n", "\r\n")],
    ["with blanks in front", ` ${laidOut}`],
  ])("gives head and points %s", (_name, text) => {
    const pieces = documentPieces(bytesOf(text));
    expect(pieces.head).toMatchObject({ stage: "proposed", set: expect.any(String), rules: expect.any(Array) });
    expect([...pieces.points()]).toEqual(points);
  });

  it("gives the points again", () => {
    const pieces = documentPieces(bytesOf(laidOut));
    expect([...pieces.points()]).toEqual([...pieces.points()]);
  });

  it.each([
    ["a document", laidOut],
    ["lines of JSON", lines],
  ])("throws wherever %s breaks off", (_name, text) => {
    const bytes = bytesOf(text.trimEnd());
    for (let length = 0; length < bytes.length; length += 97) {
      expect(() => [...documentPieces(bytes.subarray(0, length)).points()], String(length)).toThrow(SyntaxError);
    }
  });

  it.each([
    ["bytes that are no UTF-8", new Uint8Array([0x7b, 0xff, 0x7d]), TypeError],
    ["something behind the end", bytesOf(`${laidOut}x`), SyntaxError],
    ["a point that is no JSON", bytesOf(laidOut.replace('{"id":', '{"id"')), SyntaxError],
  ])("throws at %s", (_name, bytes, kind) => {
    expect(() => [...documentPieces(bytes).points()]).toThrow(kind);
  });
});

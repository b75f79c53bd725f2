import { strToU8 } from "fflate";
import { expect, it } from "vitest";
import { refused } from "./reading.js";

const wide = (text: string): number[] => [...text].flatMap((c) => [c.charCodeAt(0), 0]);
const compound = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];
const bytes = (...pieces: readonly (string | readonly number[])[]): Uint8Array =>
  Uint8Array.from(pieces.flatMap((piece) => (typeof piece === "string" ? [...strToU8(piece)] : [...piece])));

it.each([
  ["nothing", bytes(), "empty-file", "empty"],
  ["an old workbook", bytes(compound, new Array(100).fill(0), wide("Workbook")), "old-binary", ".xls"],
  ["an encrypted workbook", bytes(compound, wide("EncryptedPackage")), "password-protected", "password"],
  ["another compound file", bytes(compound, wide("Other")), "old-binary-or-protected", "password"],
  ["a very old workbook", bytes([9, 8, 16, 0]), "old-binary", ".xls"],
  ["a very old worksheet", bytes([9, 4, 6, 0, 0, 0]), "old-binary", ".xls"],
  ["a lock file", bytes([5], "R. Ex", new Array(159).fill(0)), "lock-file", "~$"],
  ["a PDF", bytes("%PDF-1.7\n"), "other-file", "PDF"],
  ["a picture", bytes([0x89], "PNG\r\n"), "other-file", "PNG"],
  ["a photograph", bytes([0xff, 0xd8, 0xff, 0xe0]), "other-file", "JPEG"],
  ["a telephone's photograph", bytes([0, 0, 0, 24], "ftypheic"), "other-file", "picture"],
  ["gzip", bytes([0x1f, 0x8b, 8]), "other-file", "gzip"],
  ["a document", bytes("{\\rtf1"), "other-file", "RTF"],
  ["a web page", bytes("\ufeff \r\n<HTML><table>"), "web-page", "web page"],
  ["a table of a web page", bytes("<!-- made by a portal -->\n<table border=1><tr>"), "web-page", "web page"],
  ["a web page in XML", bytes(`<?xml version="1.0"?><!DOCTYPE html PUBLIC "x"><html>`), "web-page", "web page"],
  ["a web page in UTF-16", bytes([0xff, 0xfe], wide("<html>")), "web-page", "web page"],
  [
    "an XML spreadsheet",
    bytes(`<?xml version="1.0"?><?mso-application progid="Excel.Sheet"?><Workbook>`),
    "xml-2003",
    "2003",
  ],
  [
    "a flat OpenDocument file",
    bytes(`<?xml version="1.0"?><office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0">`),
    "open-document",
    "OpenDocument",
  ],
  ["other XML", bytes(`<?xml version="1.0"?><points/>`), "other-xml", "XML"],
])("says what %s is", async (_name, file, code, words) => {
  const error = await refused(file);
  expect(error.code).toBe(code);
  expect(error.text).toContain(words);
});

it("does not take a heading for a signature", async () => {
  const { opened } = await import("./reading.js");
  for (const text of ["ID;Pump;Speed\n1;a;2\n", "<5 mm,b\n1,2\n", "PK,b\n1,2\n", "BM,b\n1,2\n"]) {
    expect((await opened(strToU8(text))).kind).toBe("csv");
  }
});

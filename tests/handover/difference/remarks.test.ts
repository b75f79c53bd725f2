import { expect, it } from "vitest";
import { differenceRemarks, differenceSince, type ExportSource } from "../../../src/handover/index.js";
import { acceptedState, COLUMNS, fileOf, sourceOf, WITHDRAWN } from "./made.js";

const STATE = acceptedState([
  fileOf([
    ["a", "K1", "pass", "one"],
    ["b", "K2", "pass", "two"],
    ["c", "K3", "pass", "three"],
  ]),
  fileOf([["m", "M1", "pass", null]], COLUMNS, "machines"),
]);

function remarks(...files: ReturnType<typeof fileOf>[]): readonly string[] {
  return remarksFrom(sourceOf(), ...files);
}

function remarksFrom(source: ExportSource, ...files: ReturnType<typeof fileOf>[]): readonly string[] {
  const found = differenceSince(files, STATE, source, WITHDRAWN);
  if (!found.ok) throw new Error(found.problems.join("\n"));
  return differenceRemarks(found);
}

const MACHINES = fileOf([["m", "M1", "pass", null]], COLUMNS, "machines");

it("says what the other side cannot do rightly by itself", () => {
  const points = fileOf([
    ["a", "K9", "pass", "one"],
    ["b", "K2", "pass", null],
    ["z", "K3", "fail", "three"],
  ]);
  expect(remarks(points, MACHINES)).toEqual([
    'points: "K1" is now "K9": a key changed. A system that finds rows by this key makes second ones: rename them there first',
    'points: "K3": the key stayed and the id behind it changed, so nothing is withdrawn',
    'points: "Text" became empty in a row. Where the other side leaves a field as it is for an empty cell, the old ' +
      "value stays: give the column whenEmpty with a word that clears",
  ]);
});

it("says which columns and targets came and went", () => {
  const columns = [...COLUMNS.slice(0, 2), { heading: "Class", key: false }];
  const points = fileOf(
    [
      ["a", "K1", "pass", "B"],
      ["b", "K2", "pass", null],
      ["c", "K3", "pass", null],
    ],
    columns,
  );
  expect(remarks(points)).toEqual([
    'points: new in the mapping: "Class"; rows in which nothing else changed are sent for it',
    'points: no more in the mapping: "Text"; what the other side has there stays',
    "machines: the mapping has this target no more; what the other side has of it is not withdrawn",
  ]);
});

it("has nothing to say of rows that merely came, changed or went", () => {
  const points = fileOf([
    ["a", "K1", "fail", "other"],
    ["b", "K2", "pass", "two"],
    ["d", "K4", "pass", "four"],
  ]);
  expect(remarks(points, MACHINES)).toEqual([]);
});

it("says which surveys are missing where rows are withdrawn", () => {
  const points = fileOf([
    ["a", "K1", "pass", "one"],
    ["b", "K2", "pass", "two"],
  ]);
  const left =
    "survey.xlsx: this survey went into the last accepted export and not into this one; its points are told as " +
    "withdrawn. Hand it in, too, if they are still there";
  expect(remarksFrom(sourceOf({ files: [] }), points, MACHINES)).toEqual([left]);
  const other = sourceOf().files.map((file) => ({ ...file, file: "renamed.xlsx" }));
  expect(remarksFrom(sourceOf({ files: other }), points, MACHINES)).toEqual([]);
  expect(remarks(points, MACHINES)).toEqual([]);
  const all = fileOf(
    [...points.rows, { id: "c", values: ["K3", "pass", "three"] }].map(({ id, values }) => [id, ...values]),
  );
  expect(remarksFrom(sourceOf({ files: [] }), all, MACHINES)).toEqual([]);
});

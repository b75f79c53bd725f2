import { describe, expect, it } from "vitest";
import {
  acceptExport,
  digestOfState,
  type ExportReceipt,
  exportedStateText,
  exportReceiptText,
  readExportedState,
  readReceipt,
  refusedRows,
} from "../../../src/handover/difference/index.js";
import { acceptedState, COLUMNS, fileOf, receiptOf, sourceOf, surveyOf } from "./made.js";

const FILES = [
  fileOf([
    ["a", "K1", "pass", "one"],
    ["b", "K2", "fail", "=two\n\u2028"],
    ["c", "K3", "warn", null],
  ]),
];
const LATER = [
  fileOf([
    ["a", "K1", "fail", "one"],
    ["b", "K2", "pass", "two"],
    ["d", "K4", "pass", "four"],
  ]),
];
const NONE = new Map<string, ReadonlySet<string>>();

const textOf = (pieces: Iterable<string>): string => [...pieces].join("");

function refusal(...args: Parameters<typeof acceptExport>): string {
  const accepting = acceptExport(...args);
  return accepting.ok ? "accepted" : accepting.text;
}

describe("accepting an export", () => {
  const state = acceptedState(FILES);
  const receipt = receiptOf(LATER, state, surveyOf("later"));

  it("moves the state to what was written", () => {
    const after = acceptedState(LATER, state, [], surveyOf("later"));
    expect(after.targets[0]?.rows).toEqual(LATER[0]?.rows.map(({ id, values }) => ({ id, values })));
    expect(after.accepted).toEqual([...state.accepted, receipt.digest]);
    expect(after.source).toEqual(surveyOf("later"));
  });

  it("leaves refused rows as they were: new ones out, changed ones with old values, withdrawn ones in", () => {
    const after = acceptedState(LATER, state, ["b", "c", "d"], surveyOf("later"));
    expect(after.targets[0]?.rows).toEqual([
      { id: "a", values: ["K1", "fail", "one"] },
      { id: "b", values: ["K2", "fail", "=two\n\u2028"] },
      { id: "c", values: ["K3", "warn", null] },
    ]);
    expect(after.targets[0]?.refused).toEqual(["b", "c", "d"]);
  });

  it("is refused a second time, out of turn, and of another state", () => {
    const accepting = acceptExport(state, receipt, NONE);
    if (!accepting.ok) throw new Error(accepting.text);
    const after = accepting.state;
    expect(refusal(after, receipt, NONE)).toMatch(/^it was accepted already; there is nothing to do$/);
    const [first] = [receiptOf(FILES, null)];
    expect(refusal(after, first, NONE)).toMatch(/^it was accepted already, and later ones after it; export again/);
    const other = acceptedState([fileOf([["a", "K1", "pass", "other"]])]);
    expect(refusal(other, receipt, NONE)).toMatch(/^it was made against another state .*; export again/);
    expect(refusal(after, receiptOf(FILES, state), NONE)).toMatch(/this one has moved on since; export again/);
    expect(refusal(state, receiptOf(LATER, null), NONE)).toMatch(/^it is of an export of all rows/);
    expect(refusal(null, receipt, NONE)).toMatch(/there is no state here; hand in that one$/);
  });
});

describe("stored states and receipts", () => {
  const state = acceptedState(FILES, null, ["b"]);
  const receipt = receiptOf(LATER, state);
  const problems = (reading: ReturnType<typeof readReceipt | typeof readExportedState>): string =>
    reading.ok ? "" : reading.problems.join("\n");

  it("are read as they were written, one row to a line", () => {
    const [stateText, receiptText] = [textOf(exportedStateText(state)), textOf(exportReceiptText(receipt))];
    expect(readExportedState(stateText)).toEqual({ ok: true, stored: state });
    expect(readReceipt(receiptText)).toEqual({ ok: true, stored: receipt });
    expect(receiptText.split("\n").filter((line) => line.startsWith('{"id"'))).toHaveLength(4);
    const again = readExportedState(JSON.stringify(JSON.parse(stateText), null, 2));
    expect(again.ok && digestOfState(again.stored)).toBe(digestOfState(state));
    expect(textOf(exportedStateText(state))).toBe(stateText);
  });

  it("are refused when they break off, are something else, or hold what they should not", () => {
    expect(problems(readReceipt('{"format":'))).toBe(
      "it is not JSON, or it breaks off; hand in the receipt as spotface export wrote it",
    );
    expect(problems(readExportedState("{}"))).toMatch(/^\/format: .*; hand in the state as spotface accept-export/);
    expect(problems(readReceipt(textOf(exportedStateText(state))))).toBe(
      'it is a "spotface exported state 1", not a "spotface export receipt 1"; hand in the receipt as spotface export wrote it',
    );
    expect(problems(readExportedState(JSON.stringify({ ...state, more: 1 })))).toMatch(/the document: .*"more"/);
    expect(problems(readExportedState(`{"__proto__":{},${JSON.stringify(state).slice(1)}`))).not.toBe("");
    const short = { ...state, targets: state.targets.map((one) => ({ ...one, columns: one.columns.slice(1) })) };
    expect(problems(readExportedState(JSON.stringify(short)))).toMatch(/row a has 3 values for 2 columns/);
    const twice = { ...state, targets: state.targets.map((one) => ({ ...one, rows: [...one.rows, ...one.rows] })) };
    expect(problems(readExportedState(JSON.stringify(twice)))).toMatch(/two rows have one id/);
  });

  it.each([
    ["a value", (text: string) => text.replace('"four"', '"five"')],
    ["an id", (text: string) => text.replace('"id":"d"', '"id":"e"')],
    ["a count", (text: string) => text.replace('"unchanged":0', '"unchanged":9')],
    ["a digest", (text: string) => text.replace(/"file":"points.csv","digest":"./, '"file":"points.csv","digest":"0')],
    ["the day", (text: string) => text.replace("2026-11-26", "2026-11-27")],
  ])("a receipt in which %s was altered is refused", (_, alter) => {
    const text = textOf(exportReceiptText(receipt));
    expect(alter(text)).not.toBe(text);
    expect(problems(readReceipt(alter(text)))).toMatch(/changed after it was written/);
  });
});

describe("a returned list of errors", () => {
  const machines = fileOf([["m", "K1", null, null]], COLUMNS, "machines");
  const receipt: ExportReceipt = receiptOf([...FILES, machines], null, sourceOf());
  const lines = (...keys: string[]) => keys.map((key, i) => ({ row: i + 2, key: [key] }));
  const found = (...args: Parameters<typeof refusedRows>): unknown => {
    const refused = refusedRows(...args);
    return refused.ok ? refused.rows.map(({ target, id }) => `${target} ${id}`) : refused.problems;
  };

  it("names rows by key or by id", () => {
    expect(found(receipt, lines("K2", "c"), null)).toEqual(["points b", "points c"]);
    expect(found(receipt, lines("K1"), "points")).toEqual(["points a"]);
  });

  it("names rows by several columns together", () => {
    const pairs = [
      { heading: "Site", key: true },
      { heading: "Tag", key: true },
      { heading: "Status", key: false },
    ];
    const receipt = receiptOf(
      [
        fileOf(
          [
            ["a", "North", "P1", "pass"],
            ["b", "South", "P1", "pass"],
          ],
          pairs,
        ),
      ],
      null,
    );
    expect(found(receipt, [{ row: 2, key: ["South", "P1"] }], null)).toEqual(["points b"]);
    expect(found(receipt, [{ row: 2, key: ["P1"] }], null)).toEqual([
      'row 2: "P1" is the key of no row of this export; hand in the list that belongs to this receipt',
    ]);
  });

  it("is refused where a line names no row, none that was sent, or several", () => {
    expect(found(receipt, lines("K9", "", "K1"), null)).toEqual([
      'row 2: "K9" is the key of no row of this export; hand in the list that belongs to this receipt',
      "row 3: it does not say which row was refused; fill in the key, or take the line out",
      'row 4: "K1" names rows of several targets (points, machines); say which with --target',
    ]);
    expect(found(receipt, [], "orders")).toEqual(['the export has no target "orders"; it has points, machines']);
  });
});

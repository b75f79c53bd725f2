import { describe, expect, it } from "vitest";
import { sha256OfData } from "../../../src/base/index.js";
import { differenceSince, filesToSend } from "../../../src/handover/difference/index.js";
import type { MappedColumn } from "../../../src/handover/index.js";
import { acceptedState, COLUMNS, differences, fileOf, sourceOf, surveyOf, WITHDRAWN } from "./made.js";

const ROWS = [
  ["a", "K1", "pass", "one"],
  ["b", "K2", "fail", "two"],
  ["c", "K3", "warn", null],
] as const;
const FILES = [fileOf(ROWS)];
const STATE = acceptedState(FILES);

/** What is sent, in short: the id with what it is, its values and its causes. */
function sent(...args: Parameters<typeof differences>): unknown {
  return differences(...args).map(({ rows }) => rows.map(({ id, change, because }) => [id, change, ...because]));
}

describe("the difference since the last accepted export", () => {
  it("is all rows where nothing was accepted yet", () => {
    expect(sent(FILES, null)).toEqual([
      [
        ["a", "new"],
        ["b", "new"],
        ["c", "new"],
      ],
    ]);
  });

  it("is empty where nothing changed, in whatever order rows and columns stand", () => {
    expect(sent(FILES, STATE)).toEqual([[]]);
    expect(sent([fileOf([ROWS[2], ROWS[0], ROWS[1]])], STATE, surveyOf("sorted otherwise"))).toEqual([[]]);
    const turned = [COLUMNS[2], COLUMNS[0], COLUMNS[1]].filter(
      (column): column is MappedColumn => column !== undefined,
    );
    expect(
      sent(
        [
          fileOf(
            ROWS.map(([id, key, status, text]) => [id, text, key, status]),
            turned,
          ),
        ],
        STATE,
      ),
    ).toEqual([[]]);
    expect(differences(FILES, STATE)[0]?.unchanged).toBe(3);
  });

  it("names what is new, what changed with the old and the new value, and what is gone", () => {
    const files = [
      fileOf([
        ["d", "K4", "pass", "four"],
        ["b", "K2", "pass", "two"],
        ["a", "K1", "pass", "one"],
      ]),
    ];
    const [target] = differences(files, STATE, surveyOf("later"));
    expect(target?.rows).toEqual([
      { id: "d", change: "new", replaces: null, values: ["K4", "pass", "four"], changed: [], because: [] },
      {
        id: "b",
        change: "changed",
        replaces: null,
        values: ["K2", "pass", "two"],
        changed: [{ heading: "Status", old: "fail", new: "pass" }],
        because: ["survey"],
      },
      {
        id: "c",
        change: "withdrawn",
        replaces: null,
        values: ["K3", "withdrawn", null],
        changed: [{ heading: "Status", old: "warn", new: "withdrawn" }],
        because: ["survey"],
      },
    ]);
    expect(target?.unchanged).toBe(1);
    expect(filesToSend(files, differences(files, STATE))[0]?.rows).toEqual([
      { id: "d", points: ["d"], values: ["K4", "pass", "four"] },
      { id: "b", points: ["b"], values: ["K2", "pass", "two"] },
      { id: "c", points: [], values: ["K3", "withdrawn", null] },
    ]);
  });

  it("tells a withdrawn row once, and as new when it comes back", () => {
    const fewer = [fileOf(ROWS.slice(0, 2))];
    expect(sent(fewer, STATE)).toEqual([[["c", "withdrawn"]]]);
    // Not accepted: told again. Accepted: told no more.
    expect(sent(fewer, STATE)).toEqual([[["c", "withdrawn"]]]);
    const after = acceptedState(fewer, STATE);
    expect(sent(fewer, after)).toEqual([[]]);
    expect(sent(FILES, after)).toEqual([[["c", "new"]]]);
  });

  it("refuses to pass over rows that are gone where the mapping has no word for it", () => {
    const found = differenceSince([fileOf(ROWS.slice(0, 1))], STATE, sourceOf(), new Map());
    expect(found).toEqual({
      ok: false,
      problems: [
        "points: 2 rows are gone since the last accepted export (b, c), and the mapping does not say how that is " +
          "written; add withdrawn with column and value to the target",
      ],
    });
  });

  it("refuses rows and columns that cannot be told apart, and a mark in a column that is not there", () => {
    const twice = [fileOf([ROWS[0], ROWS[0]], [...COLUMNS.slice(0, 2), { heading: "Status", key: false }])];
    const found = differenceSince(twice, null, sourceOf(), new Map([["points", { column: "State", value: "gone" }]]));
    expect(found).toMatchObject({ ok: false });
    expect("problems" in found ? found.problems.join("\n") : "").toMatch(
      /two columns are headed "Status".*\n.*two rows have the id a.*\n.*"State", which the file does not have/,
    );
  });

  it("tells a column that the mapping added apart, and one that it lost", () => {
    const wider = [...COLUMNS, { heading: "Class", key: false }];
    const files = [
      fileOf(
        [
          ["a", "K1", "pass", "one", "B"],
          ["b", "K2", "pass", "two", "B"],
          ["c", "K3", "warn", null, null],
        ],
        wider,
      ),
    ];
    const source = sourceOf({ asOf: "2026-11-27" });
    expect(sent(files, STATE, source)).toEqual([
      [
        ["a", "changed", "mapping"],
        ["b", "changed", "day"],
      ],
    ]);
    expect(differences(files, STATE, source)[0]?.addedColumns).toEqual(["Class"]);
    const narrow = [
      fileOf(
        ROWS.map(([id, key, status]) => [id, key, status]),
        COLUMNS.slice(0, 2),
      ),
    ];
    expect(sent(narrow, STATE)).toEqual([[]]);
    expect(differences(narrow, STATE)[0]?.droppedColumns).toEqual(["Text"]);
    expect(sent(narrow, acceptedState(narrow, STATE))).toEqual([[]]);
  });

  it("keeps what was accepted of a target that is mapped no more", () => {
    const both = [...FILES, fileOf([["m", "M1", "pass", null]], COLUMNS, "machines")];
    const state = acceptedState(both);
    expect(differenceSince(FILES, state, sourceOf(), WITHDRAWN)).toMatchObject({ droppedTargets: ["machines"] });
    expect(sent(both, acceptedState(FILES, state))).toEqual([[], []]);
  });

  it("does not withdraw a record whose key now belongs to a row of another id", () => {
    const files = [
      fileOf([
        ["a", "K1", "pass", "one"],
        ["b", "K2", "fail", "two"],
        ["z", "K3", "pass", null],
      ]),
    ];
    const [target] = differences(files, STATE);
    expect(target?.rows).toMatchObject([{ id: "z", change: "changed", replaces: "c", values: ["K3", "pass", null] }]);
    const after = acceptedState(files, STATE);
    expect(after.targets[0]?.rows.map(({ id }) => id)).toEqual(["a", "b", "z"]);
    expect(sent(files, after)).toEqual([[]]);
    // Refused, it stays with its old id, and comes again.
    expect(acceptedState(files, STATE, ["z"]).targets[0]?.rows.map(({ id }) => id)).toEqual(["a", "b", "c"]);
    // The same values under another id tell the other side nothing.
    expect(sent([fileOf([ROWS[0], ROWS[1], ["z", "K3", "warn", null]])], STATE)).toEqual([[]]);
  });
});

describe("the cause of a change", () => {
  const now = [fileOf([["a", "K1", "warn", "one"], ROWS[1], ROWS[2]])];
  const book = { name: "book", version: "2", digest: sha256OfData("book 2"), folder: null, over: [] };

  it("is the rulebook where nothing else is another one", () => {
    expect(sent(now, STATE, sourceOf({ rulebook: book }))).toEqual([[["a", "changed", "rulebook"]]]);
  });

  it("may be any of those that are other ones", () => {
    const source = { ...surveyOf("later"), rulebook: book, asOf: "2026-12-01", stage: "installed" as const };
    expect(sent(now, STATE, source)).toEqual([[["a", "changed", "survey", "rulebook", "rules asked", "day"]]]);
  });

  it("is not the rulebook's new version where no written value changed", () => {
    expect(sent(FILES, STATE, sourceOf({ rulebook: book }))).toEqual([[]]);
    const versioned = (version: string) => [fileOf(ROWS.map(([id, key, status]) => [id, key, status, version]))];
    const state = acceptedState(versioned("1"));
    expect(sent(versioned("2"), state, sourceOf({ rulebook: book }))).toEqual([
      ["a", "b", "c"].map((id) => [id, "changed", "rulebook"]),
    ]);
  });

  it("is a refusal where the row came back, whatever else there is", () => {
    const state = acceptedState(FILES, null, ["b"]);
    expect(sent(FILES, state)).toEqual([[["b", "new", "refused before"]]]);
    expect(sent(FILES, state, surveyOf("later"))).toEqual([[["b", "new", "refused before"]]]);
  });

  it("does not see another order of the same surveys, nor another name", () => {
    const files = [
      { role: "survey" as const, file: "elsewhere.xlsx", digest: sha256OfData("2") },
      { role: "survey" as const, file: "b.xlsx", digest: sha256OfData("1") },
    ];
    const state = acceptedState(FILES, null, [], sourceOf({ files: [...files].reverse() }));
    expect(sent(now, state, sourceOf({ files }))).toEqual([[["a", "changed"]]]);
  });
});

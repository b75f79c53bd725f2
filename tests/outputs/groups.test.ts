import { describe, expect, it } from "vitest";
import { groupFindings, groupReasonOf, rowsOfGroupInWords } from "../../src/outputs/findings/group-findings.js";
import { notCountedIn } from "../../src/outputs/findings/rows-in-no-group.js";
import { indexRules } from "../../src/outputs/findings/rule-index.js";
import { htmlReport, terminalReport } from "../../src/outputs/index.js";
import { groupRows, hasGroupRows } from "../../src/outputs/workbook/group-rows.js";
import { marksOf } from "../../src/outputs/workbook/offending.js";
import { known, screenRows, surveyOf, unknown } from "../tools/make-record.js";
import { shippedRulebook } from "../tools/shipped.js";

function supplied(name: string, current: number | null, rating: number, cell: string) {
  return {
    supply_name: known(name, `P${cell}`),
    sensor_current: current === null ? unknown("missing") : known(current, `Q${cell}`),
    supply_rating: known(rating, `R${cell}`),
  };
}

const survey = surveyOf([
  ...[2, 3, 4].map((row) => supplied("PSU 1", 500, 1000, `${row}`)),
  supplied("PSU 2", 900, 1000, "5"),
  supplied("PSU 3", 100, 1000, "6"),
  supplied("PSU 3", null, 2000, "7"),
  supplied("PSU 4", 100, 1000, "8"),
]);
const { screening, points } = screenRows(await shippedRulebook(), [survey], { set: "full" });
const { head } = screening;
const rules = indexRules(head);

describe("groups that do not pass", () => {
  it("are told with the gravest first, each with its rows, and those that pass not at all", () => {
    const told = [...groupFindings(head.groups, rules, { files: null })];
    expect(told.map(({ group, finding }) => `${finding.outcome} ${group.id}`)).toEqual([
      "fail supply: PSU 1",
      "warn supply: PSU 2",
      "undecided supply: PSU 3",
    ]);
    expect(told.map((one) => groupReasonOf(one, rules)).at(-1)).toMatch(
      /; rated current of the supply: 1000 mA in R6; 2000 mA in R7$/,
    );
  });

  it("stand in the report and on a sheet, which is left out for a file that has none", () => {
    const report = terminalReport(head, screening.summary()).replace(/\n +/g, " ");
    expect(report).toContain(
      "■ fail  supply: PSU 1 (3 points: S, rows 2 to 4): 1500 mA are drawn from the supply PSU 1",
    );
    expect(report).toContain(
      "▲ warn  supply: PSU 2 (1 point: S, row 5): 900 mA are drawn from the supply PSU 2 by 1 point",
    );
    expect(report).toContain("not settled: 1 question on groups");
    const files = new Set(["made.xlsx"]);
    const rows = [...groupRows(head, files, rules)].map(({ cells }) => cells.slice(0, 5));
    expect(rows).toEqual([
      ["outcome", "group", "points", "rows", "rule"],
      ["■ fail", "supply: PSU 1", 3, "S, rows 2 to 4", "supply-current"],
      ["▲ warn", "supply: PSU 2", 1, "S, row 5", "supply-current"],
      ["◇ undecided", "supply: PSU 3", 2, "S, rows 6 to 7", "supply-current"],
    ]);
    expect(hasGroupRows(head, files, rules)).toBe(true);
    expect(hasGroupRows(head, new Set(["other.xlsx"]), rules)).toBe(false);
  });

  it("frame the cell that names them; what is missing only in the row that lacks it", () => {
    const framed = (at: number) => {
      const point = points[at];
      const cells = point ? marksOf(point, survey.records[at], rules) : [];
      return cells.filter(({ findings }) => findings.some(({ group }) => group !== null)).map(({ cell }) => cell);
    };
    expect(framed(0)).toEqual(["P2"]);
    expect(framed(4)).toEqual(["R6"]);
    expect(framed(5)).toEqual(["Z9", "R7"]);
    expect(framed(6)).toEqual([]);
  });

  it("name the first of very many rows and count the rest", () => {
    const row = (file: string, at: number) => ({ file, sheet: null, row: at, point: null });
    const many = Array.from({ length: 40 }, (_, i) => row("a.csv", i + 2));
    expect(rowsOfGroupInWords(many, false)).toBe("rows 2 to 13; and 28 more");
    expect(rowsOfGroupInWords([row("a.csv", 2), row("a.csv", 9), row("b.csv", 3)], true)).toBe(
      "a.csv, rows 2, 9; b.csv, row 3",
    );
  });
});

describe("rows that no group counts", () => {
  const REMARK = "2 rows do not state name of the supply clearly";

  async function unnamed() {
    const unknownName = { ...supplied("", 800, 1000, "4"), supply_name: unknown("missing") };
    const rows = [...[2, 3].map((row) => supplied("PSU 1", 100, 1000, `${row}`)), unknownName, unknownName];
    return screenRows(await shippedRulebook(), [surveyOf(rows)], { set: "full" }).screening;
  }

  it("are told where groups are told, also where every group passes", async () => {
    const one = await unnamed();
    expect(one.head.groups).toEqual([]);
    expect(terminalReport(one.head, one.summary()).replace(/\n +/g, " ")).toContain(
      `Points that belong together\n  not counted: ${REMARK}`.replace(/\n +/g, " "),
    );
    const files = new Set(["made.xlsx"]);
    expect(hasGroupRows(one.head, files, indexRules(one.head))).toBe(true);
    const [, row] = [...groupRows(one.head, files, indexRules(one.head))].map(({ cells }) => cells);
    expect(row?.[0]).toBe("not counted");
    expect(row?.[5]).toMatch(new RegExp(`^${REMARK}`));
    const page = [...htmlReport(one)].join("");
    expect(page.slice(page.indexOf('id="groups-title"'))).toContain(`<strong>Not counted:</strong> ${REMARK}`);
  });

  it("are told at each group that they may belong to", async () => {
    const { head: one } = await unnamed();
    const groups = {
      supply: [{ fact: "supply_name", value: "PSU 1" }],
      serial: [{ fact: "sensor_serial", value: "7" }],
    };
    expect(notCountedIn({ key: groups.supply }, one)).toMatch(/^rows that do not state what these rows share/);
    expect(notCountedIn({ key: groups.serial }, one)).toBe("");
  });
});

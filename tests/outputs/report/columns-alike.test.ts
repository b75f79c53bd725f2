import { expect, it } from "vitest";
import { columnsAlike } from "../../../src/outputs/report/sections/columns-alike.js";
import { HEAD } from "../fake-head.js";

const [MADE] = HEAD.surveys.flatMap(({ columns }) => columns);

it("says of sheets made alike once what they have in common, and of each what it has of its own", () => {
  if (!MADE) throw new Error("no column");
  const of = (sheet: string, column: string, heading: string) => ({ ...MADE, sheet, column, heading });
  const columns = [
    of("Pumps", "A", "Tag"),
    of("Pumps", "B", "Speed"),
    of("Fans", "A", "Tag"),
    of("Fans", "B", "Drehzahl"),
  ];
  const told = columnsAlike(columns).map(({ sheets, columns: own }) => [sheets, own.map(({ heading }) => heading)]);
  expect(told).toEqual([
    [["Pumps", "Fans"], ["Tag"]],
    [["Pumps"], ["Speed"]],
    [["Fans"], ["Drehzahl"]],
  ]);
});

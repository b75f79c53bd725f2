import { DEVIATION_STATUSES, type DeviationShown, type DeviationsShown } from "../../screening/index.js";
import { STATUS_WORDS, standingInWords, toActOn } from "../wording/deviations.js";
import { BLANK_ROW, bodyRow, headingRow, type TextRow } from "./text-sheet.js";

/** Every accepted deviation and how it stands, those to act on first; nothing where none were handed in. */
export function deviationRows(deviations: DeviationsShown | null): readonly TextRow[] {
  if (deviations === null) return [];
  const pressing = toActOn(deviations.list);
  const rest = deviations.list.filter((one) => !pressing.includes(one));
  return [
    BLANK_ROW,
    headingRow("accepted deviations", "by whom and why, how it stands", "line"),
    ...counts(deviations),
    ...[...pressing, ...rest].map(deviationRow),
  ];
}

function counts({ list }: DeviationsShown): readonly TextRow[] {
  return DEVIATION_STATUSES.flatMap((status) => {
    const count = list.filter((one) => one.status === status).length;
    return count === 0 ? [] : [bodyRow("", STATUS_WORDS[status], count)];
  });
}

function deviationRow(one: DeviationShown): TextRow {
  const said = [standingInWords(one), `${one.acceptedBy}: ${one.reason}`].join("\n");
  return bodyRow(`${one.point}\n${one.rule}`, said, one.origin.line);
}

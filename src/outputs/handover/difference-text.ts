import { type DifferenceFound, differenceRemarks } from "../../handover/index.js";
import { paragraph, table } from "../terminal/layout.js";

/**
 * What a difference tells the other side, in counts, and what a person should know of it.
 *
 * @param since - the state with which was compared, as results name it
 */
export function differenceText(since: string, found: Extract<DifferenceFound, { ok: true }>): string {
  const rows = found.targets.map(({ target, rows: sent, unchanged }) => {
    const count = (change: string): number => sent.filter((row) => row.change === change).length;
    return [target, count("new"), count("changed"), count("withdrawn"), unchanged];
  });
  const lines = [
    ...paragraph(`Only what changed since ${since}`),
    ...table(
      [
        { heading: "target", width: 30 },
        { heading: "new", width: 8, align: "right" },
        { heading: "changed", width: 8, align: "right" },
        { heading: "withdrawn", width: 9, align: "right" },
        { heading: "not sent", width: 9, align: "right" },
      ],
      rows,
    ),
    ...differenceRemarks(found).flatMap((text) => paragraph(text, "  - ")),
  ];
  return `${lines.join("\n")}\n\n`;
}

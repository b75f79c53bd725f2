import { showText } from "../../base/index.js";
import { type FilledTarget, type Filling, MOST_SHOWN, partsOf } from "../../handover/index.js";
import type { ResultHead } from "../../screening/index.js";
import { paragraph, table } from "../terminal/layout.js";
import { type WrittenFile, writtenLines } from "../terminal/report.js";
import { countOf } from "../wording/numbers.js";

/** Rows of each target that a dry run shows. */
const FIRST_ROWS = 3;
const REMARKS_SHOWN = 20;

/** Why nothing is written: every problem by target, column and point, a line each. */
export function mappingProblemsText({ problems, problemCount }: Filling): string {
  const lines = problems.map(({ target, column, of, text }) => {
    const place = [target, ...(column === null ? [] : [`"${column}"`]), of].join(": ");
    return `spotface: ${showText(place, 400)}: ${showText(text, 600)}\n`;
  });
  const more = problemCount - problems.length;
  if (more > 0) lines.push(`spotface: and ${more} more; the first ${MOST_SHOWN} are listed\n`);
  return lines.join("");
}

/**
 * What was written by a mapping, or would be.
 *
 * @param written - the files; null in a dry run, which shows the first rows of each target instead
 */
export function exportText(filling: Filling, head: ResultHead, written: readonly WrittenFile[] | null): string {
  const { mapping } = filling;
  const sections = [
    [
      ...paragraph(
        `${head.program.name} ${head.program.version}: rulebook ${head.rulebook.name} ${head.rulebook.version}, ` +
          `set ${head.set}, points ${head.stage}, limits as of ${head.asOf}`,
      ),
      ...paragraph(`Mapping ${mapping.id} ${mapping.version}: ${mapping.title}`),
      ...(mapping.checks === 0
        ? []
        : paragraph(`${countOf(mapping.checks, "sample row")} of the mapping tried, as expected`)),
    ],
    targetsSection(filling, head),
    remarksSection(filling),
    ...(written === null ? filling.targets.map(firstRows) : [written.flatMap(writtenLines)]),
    written === null ? paragraph("Dry run: nothing is written.") : [],
    paragraph(head.cautions.join(" "), "Cautions: "),
  ];
  return `${sections.flatMap((lines) => (lines.length === 0 ? [] : [lines.join("\n")])).join("\n\n")}\n`;
}

function targetsSection({ targets }: Filling, { asOf }: ResultHead): readonly string[] {
  const rows = targets.map(({ target, mapped, taken, leftOut }) => {
    const parts = partsOf(target, mapped, asOf);
    const [first] = parts;
    const file = `${first?.name ?? ""}${parts.length > 1 ? ` and ${countOf(parts.length - 1, "part")} more` : ""}`;
    return [target.number, target.id, file, mapped.rows.length, taken, leftOut];
  });
  return [
    "Files, in the order in which they are to be loaded",
    ...table(
      [
        { heading: "", width: 3, align: "right" },
        { heading: "target", width: 20 },
        { heading: "file", width: 40 },
        { heading: "rows", width: 7, align: "right" },
        { heading: "points", width: 7, align: "right" },
        { heading: "left out", width: 8, align: "right" },
      ],
      rows,
    ),
  ];
}

function remarksSection({ remarks, remarkCount }: Filling): readonly string[] {
  if (remarkCount === 0) return [];
  const shown = remarks.slice(0, REMARKS_SHOWN);
  const more = remarkCount - shown.length;
  return [
    `Remarks: ${remarkCount}`,
    ...shown.flatMap(({ target, column, of, text }) => paragraph(`${target}: "${column}": ${of}: ${text}`, "  - ")),
    ...(more > 0 ? [`  - and ${more} more`] : []),
  ];
}

function firstRows({ target, mapped }: FilledTarget): readonly string[] {
  const rows = mapped.rows.slice(0, FIRST_ROWS);
  const title = `${target.id}: ${rows.length === mapped.rows.length ? "all rows" : `the first ${rows.length} of ${mapped.rows.length} rows`}`;
  return [
    title,
    ...rows.flatMap(({ values }, index) =>
      values.flatMap((value, place) => {
        const heading = mapped.columns[place]?.heading ?? "";
        return paragraph(
          `${heading}: ${value === null ? "(nothing)" : showText(value, 200)}`,
          place === 0 ? `  ${index + 1}. ` : "     ",
        );
      }),
    ),
  ];
}

import type { Workbook } from "exceljs";
import { type FactDefinition, factOf } from "../../facts/index.js";
import type { Rulebook } from "../../rulebook/index.js";
import { type PointJob, RECORDED, type WorkPack, type WorkPacks } from "../../workpacks/index.js";
import { columnsFor } from "../blank-survey/columns.js";
import { writeLists } from "../blank-survey/lists-sheet.js";
import { ENGLISH } from "../blank-survey/texts/english.js";
import { bookInWords } from "../wording/overlays.js";
import { fixedPackage } from "../workbook/fixed-package.js";
import { layOutPages } from "../workbook/pages.js";
import { styleBook } from "../workbook/styles.js";
import { BLANK_ROW, bodyRow, titleRow, writeTextSheet } from "../workbook/text-sheet.js";
import { type AsBuiltColumn, writeAsBuilt } from "./as-built-sheet.js";

/** The same for everyone, so that the same input gives the same bytes. */
const FIXED_TIME = new Date("2000-01-01T00:00:00Z");
const ABOUT_WIDTHS = [26, 110];

/** What names a point in the sheet, in the order of its columns. */
const GIVEN: Readonly<Record<string, (job: PointJob, pack: WorkPack) => string | null>> = {
  point_id: ({ pointId }) => pointId,
  asset_tag: ({ assetTag }) => assetTag,
  site: ({ siteStated }) => siteStated,
  machine_name: ({ assetTag }, { machine }) => (machine === assetTag ? null : machine),
  component: ({ component }) => component,
  bearing_position: ({ bearingPosition }) => bearingPosition,
  direction: ({ direction }) => direction,
};

/**
 * A workbook (.xlsx) with a row for every released point: its names are filled in, what is to be measured and checked is
 * empty, with drop-down lists, checks against the plan, and the plan as advice on the cell. The importer reads it back as
 * a survey at the stage installed, so that `checkBuilt` compares it with the proposal.
 */
export async function asBuiltWorkbook(
  packs: WorkPacks,
  rulebook: Pick<Rulebook, "words" | "models" | "baselineModel">,
): Promise<Uint8Array> {
  const jobs = packs.packs.flatMap((pack) => pack.points.map((job) => ({ job, pack })));
  const named = Object.keys(GIVEN).filter((fact) =>
    jobs.some(({ job, pack }) => (GIVEN[fact]?.(job, pack) ?? null) !== null),
  );
  const asked = RECORDED.filter((fact) => jobs.some(({ job }) => job.records.some((record) => record.fact === fact)));
  const fields: readonly FactDefinition[] = [...named, ...asked, "notes"].map(factOf);
  const { columns: blank, leftOut } = columnsFor(fields, rulebook, "en", ENGLISH);
  if (leftOut.length > 0) {
    throw new RangeError(`no listed heading names ${leftOut.map(({ name }) => name).join(", ")} alone`);
  }
  const columns = blank.map((column): AsBuiltColumn => {
    const given = GIVEN[column.field.id];
    const spelled = (text: string | null): string | null => (text === null ? null : (column.words.get(text) ?? text));
    return { column, given: given ? (job, pack) => spelled(given(job, pack)) : null };
  });
  // Loaded on demand: the library is large.
  const { default: library } = await import("exceljs");
  const workbook: Workbook = new library.Workbook();
  const program = `${packs.basis.program.name} ${packs.basis.program.version}`;
  Object.assign(workbook, { creator: program, lastModifiedBy: program, created: FIXED_TIME, modified: FIXED_TIME });
  const styles = styleBook();
  const sheet = workbook.addWorksheet("As built");
  const about = workbook.addWorksheet("About");
  const lists = workbook.addWorksheet("Lists", { state: "hidden" });
  const toFill = columns.flatMap(({ column, given }) => (given === null ? [column] : []));
  writeAsBuilt(sheet, packs.packs, { columns, lists: writeLists(lists, toFill, ENGLISH.listsTitle) }, styles);
  writeTextSheet(about, ABOUT_WIDTHS, aboutRows(packs), styles);
  layOutPages(about);
  const written = await workbook.xlsx.writeBuffer({ zip: { compression: "STORE" } });
  return fixedPackage(new Uint8Array(written), program);
}

/** What the work rests on, and the cautions; no row names two fields, so that the importer does not take it for a table. */
function aboutRows({ basis, cautions }: WorkPacks): Parameters<typeof writeTextSheet>[2] {
  const { rulebook, surveys, deviations } = basis;
  return [
    titleRow("What this rests on"),
    BLANK_ROW,
    bodyRow("rulebook used", `${bookInWords(rulebook)}, set ${basis.set}, ${rulebook.digest}`),
    bodyRow("limits looked up for", basis.asOf),
    bodyRow("digest of the run", basis.run),
    ...surveys.map(({ file, digest }) => bodyRow("proposal read from", `${file}, ${digest}`)),
    ...(deviations === null ? [] : [bodyRow("acceptances read from", `${deviations.file}, ${deviations.digest}`)]),
    BLANK_ROW,
    titleRow("Before anyone works on a machine"),
    ...cautions.map((caution, i) => bodyRow(`${i + 1}`, caution)),
  ];
}

import type { Book } from "./book.js";
import { spelledText } from "./cell-spelling.js";
import type { TextChanges } from "./text-changes.js";
import { childrenNamed, prefixOf } from "./xml-places.js";

/** What is printed of a sheet. */
export interface PrintedArea {
  readonly sheet: string;
  /** Such as "$A$1:$F$20". */
  readonly range: string;
}

const AREA = "_xlnm.Print_Area";
/** Elements that stand between the sheets and the names (ISO/IEC 29500-1, CT_Workbook). */
const IN_FRONT = ["sheets", "functionGroups", "externalReferences"];

/** Lists what is printed of sheets that have said nothing about it; what a sheet says itself stays. */
export function addPrintedAreas(book: Book, changes: TextChanges, areas: readonly PrintedArea[]): void {
  const { root } = book.workbook;
  const [names] = childrenNamed(root, "definedNames");
  const told = new Set(
    (names ? childrenNamed(names, "definedName") : [])
      .filter(({ attributes }) => attributes.name?.toLowerCase() === AREA.toLowerCase())
      .map(({ attributes }) => Number(attributes.localSheetId)),
  );
  const prefix = prefixOf(root.name);
  const items = areas.flatMap(({ sheet, range }) => {
    const place = book.sheets.findIndex(({ name }) => name === sheet);
    if (place < 0 || told.has(place)) return [];
    const reference = spelledText(`'${sheet.replaceAll("'", "''")}'!${range}`);
    return [`<${prefix}definedName name="${AREA}" localSheetId="${place}">${reference}</${prefix}definedName>`];
  });
  if (items.length === 0) return;
  if (names) return void changes.append(names, items.join(""));
  const behind = root.children.filter(({ local }) => IN_FRONT.includes(local)).at(-1);
  if (!behind) return;
  changes.replace(behind.end, behind.end, `<${prefix}definedNames>${items.join("")}</${prefix}definedNames>`);
}

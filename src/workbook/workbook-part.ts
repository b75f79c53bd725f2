import { showText } from "../base/index.js";
import { SHEET_LIMIT } from "./limits.js";
import type { Part } from "./package.js";
import { undoEscapes } from "./rich-text.js";
import { grouped, refuse } from "./unreadable.js";
import { type Attributes, localName, passXml } from "./xml-pass.js";

/** A sheet as the workbook lists it. */
export interface ListedSheet {
  readonly name: string;
  readonly visibility: "visible" | "hidden" | "very-hidden";
  readonly relationshipId: string;
}

/** What the workbook part says about the whole. */
export interface WorkbookPart {
  readonly sheets: readonly ListedSheet[];
  readonly dateSystem: 1900 | 1904;
}

const OTHER_ROOTS: ReadonlyMap<string, string> = new Map([
  ["document", "a word-processing document"],
  ["presentation", "a set of slides"],
]);

/**
 * Reads the list of sheets.
 *
 * @throws Unreadable if the part is damaged, is no workbook or lists too many sheets
 */
export function readWorkbookPart(part: Part): WorkbookPart {
  const sheets: ListedSheet[] = [];
  let dateSystem: 1900 | 1904 = 1900;
  let section = "";
  passXml(part, {
    open(name, attributes, depth) {
      if (depth === 1 && name !== "workbook") refuseOther(name);
      if (depth === 2) section = name;
      if (depth === 2 && name === "workbookPr" && /^\s*(?:1|true|on)\s*$/i.test(attributes.date1904 ?? "")) {
        dateSystem = 1904;
      }
      if (depth === 3 && section === "sheets" && name === "sheet") sheets.push(listed(attributes));
      if (sheets.length > SHEET_LIMIT) {
        refuse(
          "too-many-sheets",
          `the workbook lists more than ${grouped(SHEET_LIMIT)} sheets, the limit; save the survey sheet alone as a new workbook`,
        );
      }
      return false;
    },
    close() {},
  });
  return { sheets, dateSystem };
}

function listed(attributes: Attributes): ListedSheet {
  const state = (attributes.state ?? "").toLowerCase();
  const visibility = state === "veryhidden" ? "very-hidden" : state === "hidden" ? "hidden" : "visible";
  // The prefix of the relationship id is the writing program's choice; sheetId is another attribute.
  const idKey = Object.keys(attributes).find((key) => key.includes(":") && localName(key) === "id");
  return {
    name: undoEscapes(attributes.name ?? ""),
    visibility,
    relationshipId: idKey === undefined ? "" : (attributes[idKey] ?? ""),
  };
}

function refuseOther(root: string): never {
  const what = OTHER_ROOTS.get(root) ?? `something else (its main part is "${showText(root)}")`;
  return refuse("not-a-workbook", `the file is ${what}, not a workbook; hand in the survey as .xlsx or .csv`);
}

import type { WorkPacks } from "../../workpacks/index.js";
import { jsonText } from "../json/json-text.js";
import { HELD_BACK_PAGE, OVERVIEW_PAGE, PACKS_JSON, packFile } from "./file-names.js";
import { heldBackPage, overviewPage } from "./overview-pages.js";
import { packPage } from "./pack-page.js";

/** A file of text, made when it is asked for. */
export interface WorkPackFile {
  readonly name: string;
  /** What it is, for people. */
  readonly what: string;
  text(): string;
}

/** Every file of text of a run: a page per machine and outage, the overview, what is held back, and all of it as JSON. */
export function workPackFiles(packs: WorkPacks): readonly WorkPackFile[] {
  return [
    { name: OVERVIEW_PAGE, what: "overview", text: () => overviewPage(packs) },
    { name: HELD_BACK_PAGE, what: "points held back", text: () => heldBackPage(packs) },
    ...packs.packs.map((pack) => ({ name: packFile(pack.id), what: "work pack", text: () => packPage(pack, packs) })),
    { name: PACKS_JSON, what: "all of it as JSON", text: () => workPacksJson(packs) },
  ];
}

/** Everything that is printed, as one JSON document (schemas/work-packs.schema.json). */
export function workPacksJson(packs: WorkPacks): string {
  return `${jsonText(packs)}\n`;
}

/** Whether a file name is that of a page of a pack. */
export function isPackFile(name: string): boolean {
  return /^work-pack\..*\.html$/i.test(name);
}

import { DEPTH_LIMIT, TAG_BYTES } from "./limits.js";
import { grouped, quoted, refuse } from "./unreadable.js";

/**
 * Refuses a part that is no well-formed XML.
 *
 * @param part - its name
 * @throws Unreadable always
 */
export function refuseDamagedXml(part: string, line: number): never {
  return refuse(
    "damaged-xml",
    `the part ${quoted(part)} is damaged at its line ${grouped(line)}; open the workbook in a spreadsheet program and save it again`,
  );
}

/** Refuses a part that declares a document type. @throws Unreadable always */
export function refuseDoctype(part: string): never {
  return refuse(
    "document-type",
    `the part ${quoted(part)} declares a document type, which no spreadsheet program writes and which can be used to attack a reader; get the workbook again from whoever sent it`,
  );
}

/** Refuses a part that nests too deep. @throws Unreadable always */
export function refuseDepth(part: string, line: number): never {
  return refuse(
    "too-deep",
    `the part ${quoted(part)} nests more than ${DEPTH_LIMIT} levels deep at its line ${grouped(line)}, which no spreadsheet program writes; get the workbook again from whoever sent it`,
  );
}

/** Refuses a part with a tag of millions of bytes. @throws Unreadable always */
export function refuseTagLength(part: string, line: number): never {
  return refuse(
    "tag-too-long",
    `the part ${quoted(part)} holds a tag of more than ${grouped(TAG_BYTES)} bytes at its line ${grouped(line)}, which no spreadsheet program writes; get the workbook again from whoever sent it`,
  );
}

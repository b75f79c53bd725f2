import type { WorkbookPackage } from "./package.js";
import { refuse } from "./unreadable.js";
import { partKey } from "./zip-directory.js";

/**
 * Says what a zip file without a workbook is.
 *
 * @throws Unreadable always
 */
export function refuseZipWithoutWorkbook(source: WorkbookPackage): never {
  const keys = source.names.map(partKey);
  const has = (test: (key: string) => boolean): boolean => keys.some(test);
  if (keys.length === 0) {
    return refuse("empty-zip", "the file is an empty zip archive, not a workbook; save the survey again as .xlsx");
  }
  if (has((key) => key === "content.xml") && has((key) => key === "mimetype" || key === "meta-inf/manifest.xml")) {
    return refuse(
      "open-document",
      "the file is an OpenDocument file (.ods), not an .xlsx workbook; save it as .xlsx in a spreadsheet program",
    );
  }
  if (has((key) => key.endsWith(".iwa"))) {
    return refuse("other-program", "the file is a spreadsheet in the own format of Numbers; export it as .xlsx");
  }
  if (has((key) => /\.(?:xlsx|xlsm|xls|csv|ods)$/.test(key))) {
    return refuse(
      "zip-archive",
      "the file is a zip archive with spreadsheet files inside; unpack it and hand in the survey itself",
    );
  }
  return refuse(
    "zip-without-workbook",
    "the file is a zip archive that holds no workbook; hand in the survey as .xlsx or .csv",
  );
}

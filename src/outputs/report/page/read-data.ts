import type { ReportData } from "../list/data.js";

/** The data that stands in the page; null where it is not all there, as in a file that broke off. */
export function readData(): ReportData | null {
  try {
    // Written by the same program in the same file as this script; a broken one does not parse.
    return JSON.parse(document.getElementById("data")?.textContent ?? "") as ReportData;
  } catch {
    return null;
  }
}

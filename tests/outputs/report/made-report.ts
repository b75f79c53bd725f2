import { htmlReport } from "../../../src/outputs/index.js";
import type { ReportData } from "../../../src/outputs/report/list/data.js";
import type { PointResult, ResultHead } from "../../../src/screening/index.js";
import { fakeScreening } from "../fake-screening.js";

/** The report of a screening made up for tests. */
export function reportOf(points?: readonly PointResult[], head?: ResultHead): string {
  return [...htmlReport(fakeScreening(points, head))].join("");
}

/** The data that stands in a report. */
export function dataOf(report: string): ReportData {
  const [, text = ""] = /<script type="application\/json" id="data">([^<]*)<\/script>/.exec(report) ?? [];
  return JSON.parse(text) as ReportData;
}

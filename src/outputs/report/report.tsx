import type { Screening } from "../../screening/index.js";
import { htmlPagePieces } from "../html/page.js";
import { CollectedPoints, dataText } from "./collected-points.js";
import { PAGE_SCRIPT } from "./page-script.js";
import { ReportBody } from "./report-body.js";
import { REPORT_STYLE } from "./report-style.js";

/**
 * The report for the office and its client: one HTML file that stands alone, with one style and one script, both allowed by
 * their hashes, and nothing to fetch. Filters and order work without the network; without the script the page still
 * shows everything but long lists of points. It says nothing that the result document does not have.
 *
 * @param screening - iterated once, here
 * @returns pieces to be written one after the other
 */
export function* htmlReport(screening: Screening): Generator<string> {
  const { head } = screening;
  const collected = new CollectedPoints(head);
  for (const point of screening.points()) collected.add(point);
  const data = collected.data();
  yield* htmlPagePieces({
    title: head.site.name === null ? "Screening of measurement points" : `Screening of ${head.site.name}`,
    style: REPORT_STYLE,
    script: PAGE_SCRIPT,
    mainId: "points",
    body: <ReportBody head={head} summary={screening.summary()} machines={collected.machines} data={data} />,
    data: dataText(data),
  });
}

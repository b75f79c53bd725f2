import { readData } from "./read-data.js";
import { ReportPage } from "./report-page.js";

const data = readData();
// Reading much data and showing it are two tasks, so that the reader is never kept waiting long at once.
if (data !== null) setTimeout(() => new ReportPage(data).start());

import { readData } from "./read-data.js";
import { ReportPage } from "./report-page.js";

const data = readData();
if (data !== null) new ReportPage(data).start();

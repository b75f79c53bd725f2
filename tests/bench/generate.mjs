/** Makes survey workbooks of any length for the bench: fixed seed, so that every run measures the same cells. */
import ExcelJS from "exceljs";

/**
 * Evenly spread numbers from 0 up to 1, the same for the same seed.
 *
 * @param {number} seed - whole number
 * @returns {() => number}
 */
function generator(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** Cells of a survey that nobody could fill in, and some that nobody can read. */
const GAPS = [null, null, null, "tbc", "?", "n/a", "-", "see photo"];

/**
 * The thirty columns: heading, then what the cells hold. A share of the cells of each column past the names is a gap.
 */
const COLUMNS = [
  ["Point ID", (_, row) => `BT-${String(row).padStart(5, "0")}`],
  ["Asset tag", (_, row) => `M-${1000 + Math.floor(row / 4)}`],
  ["Machine", (_, row) => `Transfer pump ${Math.floor(row / 4)}`],
  ["Machine type", oneOf("pump", "fan", "compressor", "conveyor", "agitator")],
  ["Component", oneOf("motor", "pump", "gearbox", "fan")],
  ["Bearing position", oneOf("DE", "NDE", "drive end")],
  ["Direction", oneOf("H", "V", "A", "horizontal")],
  ["Rated power (kW)", (random) => Math.round(5 + random() * 400)],
  ["Speed (rpm)", oneOf(1485, 2975, 990, 740, "1,480", "750-1480", "900 to 1500 rpm", 590, "1485 ± 10", "24.5 Hz")],
  ["VSD / DOL", oneOf("DOL", "DOL", "VSD", "fixed", "variable (inverter)")],
  ["Tacho", oneOf("none", "none", "1 ppr", "from VSD", "yes")],
  ["Duty", oneOf("continuous", "intermittent", "standby")],
  ["Mounted on", oneOf("bearing housing", "bearing housing", "casing", "foot", "fan cover", "cooling fin")],
  ["Material", oneOf("cast iron", "cast steel", "steel", "aluminium", "sheet steel", "GRP")],
  ["Surface finish", oneOf("machined", "machined", "as cast", "painted", "rusty")],
  ["Flat dia. (mm)", oneOf(30, 32, 35, 40, 28, "30 ± 1", "1 1/4 in", "29.5 mm")],
  ["Wall thickness (mm)", oneOf(8, 12, 15, 20, "12 mm")],
  ["Roughness Ra (µm)", oneOf(0.8, 1.6, 3.2)],
  ["Surface temp. (°C)", (random) => Math.round(20 + random() * 80)],
  ["Mounting method", oneOf("tapped hole", "tapped hole", "drill & tap", "bonded pad", "magnet")],
  ["Thread", oneOf("M6", "M6", "M8")],
  ["Hole depth (mm)", oneOf(15, 16, 18, 14.5, "16 ± 0.5", "18 mm")],
  ["Thread depth (mm)", oneOf(9, 10, 12, 8.5, "10 mm")],
  ["Torque (N·m)", oneOf(6, 8, 10, 10.5, "8 Nm", "70 in-lb")],
  ["Cure time (min)", oneOf(15, 20, 30, 10, "1 h")],
  ["Supply voltage", oneOf("24 V DC", "24VDC", "24 V", "19 V DC", "230 V AC")],
  ["Cable length (m)", (random) => Math.round(5 + random() * 90)],
  ["Conductor size (mm²)", oneOf(0.34, 0.5, 0.75)],
  ["Hazardous area", oneOf("none", "none", "zone 2")],
  ["Notes", oneOf("two coats of paint", "check with the foreman", "", "measured with a tape")],
];
const NAMES = 3;
const GAP_SHARE = 0.06;

function oneOf(...values) {
  return (random) => values[Math.floor(random() * values.length)];
}

/** Of the thirty, those that a list of points alone would have. */
const SHORT = ["Point ID", "Machine", "Speed (rpm)"];

/**
 * Writes a survey of the given length.
 *
 * @param {string} path - file to write
 * @param {number} rows - points
 * @param {number} seed - whole number
 * @param {"thirty columns" | "three columns"} width
 */
export async function writeSurvey(path, rows, seed, width = "thirty columns") {
  const random = generator(seed);
  const columns = width === "thirty columns" ? COLUMNS : COLUMNS.filter(([heading]) => SHORT.includes(heading));
  const workbook = new ExcelJS.stream.xlsx.WorkbookWriter({ filename: path, useSharedStrings: true });
  const page = workbook.addWorksheet("Survey");
  page.addRow(["Fixed vibration points of an invented plant"]).commit();
  page.addRow(columns.map(([heading]) => heading)).commit();
  for (let row = 1; row <= rows; row++) {
    const cells = columns.map(([, cell], i) => {
      if (i >= NAMES && random() < GAP_SHARE) return GAPS[Math.floor(random() * GAPS.length)];
      return cell(random, row);
    });
    page.addRow(cells).commit();
  }
  await workbook.commit();
}

const [path, rows, seed, width] = process.argv.slice(2);
// As a program of its own, so that the memory it takes is not that of who measures.
if (import.meta.filename === process.argv[1]) await writeSurvey(path, Number(rows), Number(seed), width);

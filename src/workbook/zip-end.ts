import { grouped, refuse } from "./unreadable.js";

const END_SIGNATURE = 0x06054b50;
const END_BYTES = 22;
const LONGEST_COMMENT = 65_535;
const LOCATOR_SIGNATURE = 0x07064b50;
const LOCATOR_BYTES = 20;
const WIDE_END_SIGNATURE = 0x06064b50;

/** Where the directory of a zip file lies and how many entries it lists. */
export interface DirectoryEnd {
  readonly start: number;
  readonly stop: number;
  readonly entries: number;
}

const CUT = "the workbook is incomplete (its end is missing); download or copy it again";
const DAMAGED = "the workbook is damaged (its list of contents cannot be found); save or download it again";

/** Whether the last bytes of the data are the end of a zip file, whatever stands in front. */
export function endsAsZip(bytes: Uint8Array): boolean {
  return endRecord(new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)).at >= 0;
}

/**
 * Finds the directory from the end of the file.
 *
 * @throws Unreadable if the file is cut, carries more data behind its end, spans disks or does not fit together
 */
export function findDirectoryEnd(view: DataView): DirectoryEnd {
  const { at, surplus } = endRecord(view);
  if (at < 0 && surplus > 0) {
    refuse(
      "data-after-end",
      `the workbook has ${grouped(surplus)} more bytes behind its end; download or copy it again, or open it in a spreadsheet program and save it`,
    );
  }
  if (at < 0) refuse("truncated", CUT);
  const entries = view.getUint16(at + 10, true);
  const size = view.getUint32(at + 12, true);
  const start = view.getUint32(at + 16, true);
  if (view.getUint16(at + 4, true) === 0xffff || entries === 0xffff || size === 0xffffffff || start === 0xffffffff) {
    return wideEnd(view, at);
  }
  if (view.getUint16(at + 4, true) !== 0 || view.getUint16(at + 8, true) !== entries) refuse("damaged-zip", DAMAGED);
  return fitted({ start, stop: start + size, entries }, at);
}

/** The record that ends the file exactly, or how many bytes follow the last one that does not. */
function endRecord(view: DataView): { at: number; surplus: number } {
  let surplus = 0;
  const lowest = Math.max(0, view.byteLength - END_BYTES - LONGEST_COMMENT);
  for (let at = view.byteLength - END_BYTES; at >= lowest; at--) {
    if (view.getUint32(at, true) !== END_SIGNATURE) continue;
    const stop = at + END_BYTES + view.getUint16(at + 20, true);
    if (stop === view.byteLength) return { at, surplus: 0 };
    if (surplus === 0) surplus = view.byteLength - stop;
  }
  return { at: -1, surplus };
}

function wideEnd(view: DataView, endAt: number): DirectoryEnd {
  const locator = endAt - LOCATOR_BYTES;
  if (locator < 0 || view.getUint32(locator, true) !== LOCATOR_SIGNATURE) refuse("damaged-zip", DAMAGED);
  const at = Number(view.getBigUint64(locator + 8, true));
  if (at + 56 > locator || view.getUint32(at, true) !== WIDE_END_SIGNATURE) refuse("damaged-zip", DAMAGED);
  const entries = Number(view.getBigUint64(at + 32, true));
  const start = Number(view.getBigUint64(at + 48, true));
  return fitted({ start, stop: start + Number(view.getBigUint64(at + 40, true)), entries }, at);
}

/** The directory must end where its end record begins; a gap means that bytes were lost or put in. */
function fitted(end: DirectoryEnd, recordAt: number): DirectoryEnd {
  return end.stop === recordAt ? end : refuse("damaged-zip", DAMAGED);
}

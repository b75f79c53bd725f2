/** The two families of names that the format has: transitional, which nearly all programs write, and strict. */
export interface Family {
  readonly main: string;
  /** Of the ids by which the workbook refers to its parts. */
  readonly ids: string;
  readonly worksheetType: string;
  readonly stylesType: string;
}

const TRANSITIONAL: Family = {
  main: "http://schemas.openxmlformats.org/spreadsheetml/2006/main",
  ids: "http://schemas.openxmlformats.org/officeDocument/2006/relationships",
  worksheetType: "http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet",
  stylesType: "http://schemas.openxmlformats.org/officeDocument/2006/relationships/styles",
};
const STRICT: Family = {
  main: "http://purl.oclc.org/ooxml/spreadsheetml/main",
  ids: "http://purl.oclc.org/ooxml/officeDocument/relationships",
  worksheetType: "http://purl.oclc.org/ooxml/officeDocument/relationships/worksheet",
  stylesType: "http://purl.oclc.org/ooxml/officeDocument/relationships/styles",
};

/** The family of a part, by the name space of its root element; null for any other. */
export function familyOf(namespace: string): Family | null {
  return [TRANSITIONAL, STRICT].find(({ main }) => main === namespace) ?? null;
}

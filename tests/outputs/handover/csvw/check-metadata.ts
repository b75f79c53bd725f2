/**
 * A checker for the constructs that our metadata uses, written from the two Recommendations of 17 December 2015, read on
 * 2026-11-26 (with the sections that each finding names, and no other): "metadata" is the Metadata Vocabulary for Tabular
 * Data, "model" the Model for Tabular Data and Metadata on the Web. What the vocabulary only warns of is a finding here, too.
 */
export interface CsvwFinding {
  readonly section: string;
  readonly text: string;
}

export type Json = Readonly<Record<string, unknown>>;
export type Say = (section: string, text: string) => void;

/** The findings about a metadata document that describes one table. */
export function checkMetadata(text: string): readonly CsvwFinding[] {
  return checkDocument(text, (metadata, say) => checkTableDescription(metadata, ["@context"], say));
}

/** Reads a document, checks its context, and hands it on. */
export function checkDocument(text: string, check: (metadata: Json, say: Say) => void): readonly CsvwFinding[] {
  const findings: CsvwFinding[] = [];
  const say: Say = (section, words) => void findings.push({ section, text: words });
  let metadata: unknown;
  try {
    metadata = JSON.parse(text);
  } catch {
    say("metadata 4", "it is no valid JSON");
  }
  if (!isObject(metadata)) {
    if (findings.length === 0) say("metadata 5", "a document holds an object at the top");
    return findings;
  }
  checkContext(metadata["@context"], say);
  check(metadata, say);
  return findings;
}

/** @param atTop - properties that only the object at the top of a document has */
export function checkTableDescription(metadata: Json, atTop: readonly string[], say: Say): void {
  if (typeof metadata.url !== "string") say("metadata 5.4.1", "a table description has a url, a string");
  else if (!isUrlReference(metadata.url)) say("metadata 5.1.2", "a link property is a URL");
  checkKeys(
    metadata,
    [
      ...atTop,
      "@id",
      "@type",
      "url",
      "dialect",
      "notes",
      "suppressOutput",
      "tableDirection",
      "tableSchema",
      "transformations",
      ...INHERITED,
    ],
    "metadata 4",
    say,
  );
  if (metadata["@type"] !== undefined && metadata["@type"] !== "Table") say("metadata 5.4.2", "@type is Table");
  if (metadata.dialect !== undefined) checkDialect(metadata.dialect, say);
  if (metadata.tableSchema !== undefined) checkSchema(metadata.tableSchema, say);
}

const INHERITED = [
  "aboutUrl",
  "datatype",
  "default",
  "lang",
  "null",
  "ordered",
  "propertyUrl",
  "required",
  "separator",
  "textDirection",
  "valueUrl",
];

export function isObject(value: unknown): value is Json {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function isUrlReference(text: string): boolean {
  return URL.canParse(text, "http://example.org/folder/") && !/[\s<>"{}|\\^`]/.test(text);
}

/** Common properties are prefixed names or absolute URLs (metadata 5.8.1); others must be known. */
export function checkKeys(object: Json, known: readonly string[], section: string, say: Say): void {
  for (const key of Object.keys(object)) {
    if (!known.includes(key) && !/^[a-z]+:\w/i.test(key)) say(section, `"${key}" is not defined`);
  }
}

function checkContext(context: unknown, say: Say): void {
  const [name, local, ...more] = Array.isArray(context) ? (context as unknown[]) : [context, {}];
  const fits = name === "http://www.w3.org/ns/csvw" && isObject(local) && more.length === 0;
  const allowed = fits && Object.keys(local).every((key) => key === "@base" || key === "@language");
  if (!fits || !allowed) say("metadata 5.2", "@context is the one of csvw, alone or with @base and @language");
  else if (local["@language"] !== undefined && !/^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/.test(String(local["@language"]))) {
    say("metadata 5.2", "@language is a language code");
  }
}

const isText = (value: unknown): boolean => typeof value === "string";
const isTruth = (value: unknown): boolean => typeof value === "boolean";
const isCount = (value: unknown): boolean => Number.isInteger(value) && Number(value) >= 0;

const DIALECT: Readonly<Record<string, (value: unknown) => boolean>> = {
  commentPrefix: isText,
  delimiter: isText,
  doubleQuote: isTruth,
  encoding: (value) => isText(value) && isEncoding(String(value)),
  header: isTruth,
  headerRowCount: isCount,
  lineTerminators: (value) => isText(value) || (Array.isArray(value) && value.every(isText)),
  quoteChar: (value) => value === null || isText(value),
  skipBlankRows: isTruth,
  skipColumns: isCount,
  skipInitialSpace: isTruth,
  skipRows: isCount,
  trim: (value) => isTruth(value) || ["true", "false", "start", "end"].includes(String(value)),
  "@id": (value) => isText(value) && !String(value).startsWith("_:"),
  "@type": (value) => value === "Dialect",
};

function isEncoding(name: string): boolean {
  try {
    return new TextDecoder(name).encoding !== "";
  } catch {
    return false;
  }
}

function checkDialect(dialect: unknown, say: Say): void {
  if (!isObject(dialect)) {
    say("metadata 5.1.5", "dialect is an object here");
    return;
  }
  checkKeys(dialect, Object.keys(DIALECT), "metadata 5.9", say);
  for (const [key, value] of Object.entries(dialect)) {
    if (DIALECT[key]?.(value) === false) say("metadata 5.9", `${key} cannot be ${JSON.stringify(value)}`);
  }
}

function checkSchema(schema: unknown, say: Say): void {
  if (!isObject(schema)) {
    say("metadata 5.1.5", "tableSchema is an object here");
    return;
  }
  checkKeys(
    schema,
    ["columns", "foreignKeys", "primaryKey", "rowTitles", "@id", "@type", ...INHERITED],
    "metadata 5.5",
    say,
  );
  const columns = Array.isArray(schema.columns) ? (schema.columns as unknown[]) : [];
  if (!Array.isArray(schema.columns)) {
    say("metadata 5.1.1", "columns is an array");
    return;
  }
  for (const column of columns) checkColumn(column, say);
  const names = columns.flatMap((column) => (isObject(column) && typeof column.name === "string" ? [column.name] : []));
  if (new Set(names).size < names.length) say("metadata 5.5", "names of columns are unique");
  if (schema.primaryKey !== undefined) {
    const keys: readonly unknown[] = Array.isArray(schema.primaryKey) ? schema.primaryKey : [schema.primaryKey];
    const fits = keys.length > 0 && keys.every((key) => typeof key === "string" && names.includes(key));
    if (!fits) say("metadata 5.1.4", "primaryKey refers to names of columns");
  }
  if (schema.aboutUrl !== undefined) checkTemplate(schema.aboutUrl, names, say);
}

/** Variables of a URI template are names of columns, or one of those that the vocabulary sets itself. */
function checkTemplate(template: unknown, names: readonly string[], say: Say): void {
  if (typeof template !== "string") {
    say("metadata 5.1.3", "a URI template is a string");
    return;
  }
  const known = [...names, "_column", "_sourceColumn", "_row", "_sourceRow", "_name"];
  for (const [, variable = ""] of template.matchAll(/\{[+#./;?&]?([^}]*)\}/g)) {
    if (!variable.split(",").every((one) => known.includes(one)))
      say("metadata 5.1.3", `no column is named ${variable}`);
  }
  if (/[{}]/.test(template.replace(/\{[^{}]*\}/g, ""))) say("metadata 5.1.3", "a brace has no partner");
}

/** Variable names of URI templates, as 5.6 takes them over, but none with a low line in front. */
const NAME = /^(?!_)(?:[A-Za-z0-9_]|%[0-9A-Fa-f]{2})+(?:\.(?:[A-Za-z0-9_]|%[0-9A-Fa-f]{2})+)*$/;

function checkColumn(column: unknown, say: Say): void {
  if (!isObject(column)) {
    say("metadata 5.1.1", "a column description is an object");
    return;
  }
  checkKeys(column, ["name", "suppressOutput", "titles", "virtual", "@id", "@type", ...INHERITED], "metadata 5.6", say);
  const { name, titles, required, datatype } = column;
  if (name !== undefined && !(typeof name === "string" && NAME.test(name)))
    say("metadata 5.6", `"${String(name)}" is no name`);
  const list: readonly unknown[] = Array.isArray(titles) ? titles : [titles];
  if (titles !== undefined && !isObject(titles) && !list.every(isText)) say("metadata 5.1.6", "titles are strings");
  if (required !== undefined && !isTruth(required)) say("metadata 5.1.7", "required is true or false");
  const nulls: readonly unknown[] = Array.isArray(column.null) ? column.null : [column.null];
  if (column.null !== undefined && !nulls.every(isText)) say("metadata 5.7", "null is a string or several");
  if (datatype !== undefined) checkDatatype(datatype, say);
}

const TEXTS = ["string", "normalizedString", "token", "language", "Name", "NMTOKEN", "xml", "html", "json", "anyURI"];
const NUMBERS = [
  "decimal",
  "integer",
  "double",
  "float",
  "number",
  "long",
  "int",
  "nonNegativeInteger",
  "positiveInteger",
];
const OTHERS = [
  "date",
  "dateTime",
  "datetime",
  "time",
  "boolean",
  "any",
  "anyAtomicType",
  "duration",
  "gYear",
  "binary",
];

/** Date patterns that every implementation knows (model 6.4.4). */
export const DATE_FORMATS = [
  "yyyy-MM-dd",
  "yyyyMMdd",
  "dd-MM-yyyy",
  "d-M-yyyy",
  "MM-dd-yyyy",
  "M-d-yyyy",
  "dd/MM/yyyy",
  "d/M/yyyy",
  "MM/dd/yyyy",
  "M/d/yyyy",
  "dd.MM.yyyy",
  "d.M.yyyy",
  "MM.dd.yyyy",
  "M.d.yyyy",
];

function checkDatatype(datatype: unknown, say: Say): void {
  const description: Json = isObject(datatype) ? datatype : { base: datatype };
  const base = description.base ?? "string";
  if (![...TEXTS, ...NUMBERS, ...OTHERS].some((known) => known === base)) {
    say("metadata 5.11.1", `${String(base)} is no built-in datatype`);
    return;
  }
  const BOUNDS = ["minimum", "maximum", "minInclusive", "maxInclusive", "minExclusive", "maxExclusive"];
  checkKeys(
    description,
    ["base", "format", "length", "minLength", "maxLength", ...BOUNDS, "@id", "@type"],
    "metadata 5.11.2",
    say,
  );
  for (const key of ["length", "minLength", "maxLength"]) {
    if (description[key] === undefined) continue;
    if (!isCount(description[key])) say("metadata 5.11.2", `${key} is a whole number`);
    if (!TEXTS.includes(String(base)) && base !== "binary") say("metadata 5.11.2", `${key} is for texts`);
  }
  if (Number(description.minLength ?? 0) > Number(description.maxLength ?? Number.POSITIVE_INFINITY)) {
    say("metadata 5.11.2", "minLength is not above maxLength");
  }
  if (description.format !== undefined) checkFormat(base, description.format, say);
}

function checkFormat(base: unknown, format: unknown, say: Say): void {
  if (base === "date" && !DATE_FORMATS.some((known) => known === format))
    say("model 6.4.4", `${String(format)} is no date format that all know`);
  if (!NUMBERS.includes(String(base))) return;
  if (!isText(format) && !isObject(format)) {
    say("model 6.4.2", "a number format is a string or an object");
    return;
  }
  for (const [key, value] of Object.entries(isObject(format) ? format : {})) {
    if (!["decimalChar", "groupChar", "pattern"].includes(key) || !isText(value))
      say("model 6.4.2", `${key} cannot be ${JSON.stringify(value)}`);
  }
}

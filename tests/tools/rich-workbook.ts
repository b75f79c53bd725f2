import { strToU8, zipSync } from "fflate";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
const DRAWING = "http://schemas.openxmlformats.org/drawingml/2006";
const SHEET_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml";
const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';

const HEADINGS = [
  "Point ID",
  "Machine",
  "Component",
  "Bearing position",
  "Direction",
  "Speed (rpm)",
  "Hole depth (mm)",
  "Thread depth (mm)",
];
const POINTS: readonly (readonly (string | number)[])[] = [
  ["W-1", "Washer pump 1", "motor", "DE", "H", 1485, 16, 10],
  ["W-2", "Washer pump 1", "motor", "NDE", "H", 1485, 12, 10],
  ["W-3", "Washer pump 1", "pump", "DE", "V", 1485, 16, 7.5],
  ["W-4", "Screen fan 2", "motor", "DE", "H", 560, 16, 9],
  ["W-5", "Screen fan 2", "fan", "DE", "H", "?", 18, 11],
  ["W-6", "Screen fan 2", "fan", "NDE", "A", 980, 15, 9],
];
const FIRST = 4;
const LAST = FIRST + POINTS.length - 1;

/** A picture: eight by eight points, grey and white. */
const PICTURE =
  "iVBORw0KGgoAAAANSUhEUgAAAAgAAAAICAAAAADhZOFXAAAAGUlEQVR42mNISPj/H4QZ4AwIlZCAYBChBgAsIivhgtYYdwAAAABJRU5ErkJggg==";

function cell(column: number, row: number, value: string | number, style = ""): string {
  const at = `${String.fromCharCode(64 + column)}${row}`;
  return typeof value === "number"
    ? `<c r="${at}"${style}><v>${value}</v></c>`
    : `<c r="${at}"${style} t="inlineStr"><is><t>${value}</t></is></c>`;
}

function row(number: number, values: readonly (string | number)[], style = ""): string {
  return `<row r="${number}" spans="1:8">${values.map((value, i) => cell(i + 1, number, value, style)).join("")}</row>`;
}

function links(...items: readonly (readonly [type: string, target: string])[]): string {
  const written = items.map(
    ([type, target], i) => `<Relationship Id="rId${i + 1}" Type="${OFFICE}/${type}" Target="${target}"/>`,
  );
  return `${HEAD}<Relationships xmlns="${PACKAGE}/relationships">${written.join("")}</Relationships>`;
}

const SURVEY = `${HEAD}<worksheet xmlns="${MAIN}" xmlns:r="${OFFICE}"><dimension ref="A1:H${LAST}"/><sheetViews><sheetView tabSelected="1" workbookViewId="0"><pane ySplit="3" topLeftCell="A4" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews><sheetFormatPr defaultRowHeight="15"/><cols><col min="1" max="8" width="15.7" customWidth="1"/></cols><sheetData>${row(1, ["Wash house of an invented mill, points for fixed sensors"], ' s="1"')}${row(3, HEADINGS, ' s="1"')}${POINTS.map((point, i) => row(FIRST + i, point, i % 2 === 0 ? ' s="2"' : "")).join("")}</sheetData><mergeCells count="1"><mergeCell ref="A1:H1"/></mergeCells><conditionalFormatting sqref="G${FIRST}:G${LAST}"><cfRule type="cellIs" dxfId="0" priority="1" operator="lessThan"><formula>15</formula></cfRule></conditionalFormatting><dataValidations count="1"><dataValidation type="list" allowBlank="1" showErrorMessage="1" sqref="E${FIRST}:E${LAST}"><formula1>"H,V,A"</formula1></dataValidation></dataValidations><pageMargins left="0.5" right="0.5" top="0.5" bottom="0.5" header="0.3" footer="0.3"/><pageSetup paperSize="9" orientation="landscape"/><drawing r:id="rId1"/><legacyDrawing r:id="rId2"/><tableParts count="1"><tablePart r:id="rId4"/></tableParts></worksheet>`;

const ANCHOR = (from: readonly number[], to: readonly number[], what: string) =>
  `<xdr:twoCellAnchor><xdr:from><xdr:col>${from[0]}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${from[1]}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from><xdr:to><xdr:col>${to[0]}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${to[1]}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:to>${what}<xdr:clientData/></xdr:twoCellAnchor>`;
const CHART_FRAME = `<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="2" name="Depths"/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr><xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm><a:graphic><a:graphicData uri="${DRAWING}/chart"><c:chart xmlns:c="${DRAWING}/chart" r:id="rId1"/></a:graphicData></a:graphic></xdr:graphicFrame>`;
const PICTURE_FRAME =
  '<xdr:pic><xdr:nvPicPr><xdr:cNvPr id="3" name="Plate"/><xdr:cNvPicPr/></xdr:nvPicPr><xdr:blipFill><a:blip r:embed="rId2"/><a:stretch><a:fillRect/></a:stretch></xdr:blipFill><xdr:spPr><a:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></a:xfrm><a:prstGeom prst="rect"><a:avLst/></a:prstGeom></xdr:spPr></xdr:pic>';
const DRAWN = `${HEAD}<xdr:wsDr xmlns:xdr="${DRAWING}/spreadsheetDrawing" xmlns:a="${DRAWING}/main" xmlns:r="${OFFICE}">${ANCHOR([0, 11], [6, 26], CHART_FRAME)}${ANCHOR([8, 3], [10, 8], PICTURE_FRAME)}</xdr:wsDr>`;
const CHART = `${HEAD}<c:chartSpace xmlns:c="${DRAWING}/chart" xmlns:a="${DRAWING}/main" xmlns:r="${OFFICE}"><c:chart><c:title><c:tx><c:rich><a:bodyPr/><a:p><a:r><a:t>Depths of holes and threads</a:t></a:r></a:p></c:rich></c:tx></c:title><c:plotArea><c:layout/><c:barChart><c:barDir val="col"/><c:grouping val="clustered"/>${["G", "H"].map((letter, i) => `<c:ser><c:idx val="${i}"/><c:order val="${i}"/><c:tx><c:strRef><c:f>Survey!$${letter}$3</c:f></c:strRef></c:tx><c:spPr><a:solidFill><a:srgbClr val="${["606060", "B0B0B0"][i]}"/></a:solidFill></c:spPr><c:cat><c:strRef><c:f>Survey!$A$${FIRST}:$A$${LAST}</c:f></c:strRef></c:cat><c:val><c:numRef><c:f>Survey!$${letter}$${FIRST}:$${letter}$${LAST}</c:f></c:numRef></c:val></c:ser>`).join("")}<c:axId val="1"/><c:axId val="2"/></c:barChart><c:catAx><c:axId val="1"/><c:scaling/><c:delete val="0"/><c:axPos val="b"/><c:crossAx val="2"/></c:catAx><c:valAx><c:axId val="2"/><c:scaling/><c:delete val="0"/><c:axPos val="l"/><c:crossAx val="1"/></c:valAx></c:plotArea><c:legend><c:legendPos val="r"/></c:legend></c:chart></c:chartSpace>`;
const COMMENTS = `${HEAD}<comments xmlns="${MAIN}"><authors><author>fitter</author></authors><commentList><comment ref="G5" authorId="0"><text><t>drilled twice, look again</t></text></comment></commentList></comments>`;
const BOX =
  '<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel"><v:shapetype id="_x0000_t202" coordsize="21600,21600" o:spt="202" path="m,l,21600r21600,l21600,xe"/><v:shape id="_x0000_s1025" type="#_x0000_t202" style="position:absolute;width:100pt;height:50pt;visibility:hidden"><x:ClientData ObjectType="Note"><x:Anchor>7, 15, 4, 2, 9, 15, 8, 4</x:Anchor><x:Row>4</x:Row><x:Column>6</x:Column></x:ClientData></v:shape></xml>';
const TABLE = `${HEAD}<table xmlns="${MAIN}" id="1" name="Points" displayName="Points" ref="A3:H${LAST}" totalsRowShown="0"><autoFilter ref="A3:H${LAST}"/><tableColumns count="8">${HEADINGS.map((name, i) => `<tableColumn id="${i + 1}" name="${name}"/>`).join("")}</tableColumns><tableStyleInfo name="TableStyleLight1" showRowStripes="1"/></table>`;

const MACHINES = [...new Set(POINTS.map(([, machine]) => String(machine)))];
const CACHE = `${HEAD}<pivotCacheDefinition xmlns="${MAIN}" xmlns:r="${OFFICE}" r:id="rId1" refreshedVersion="6" createdVersion="6" recordCount="${POINTS.length}"><cacheSource type="worksheet"><worksheetSource ref="B3:C${LAST}" sheet="Survey"/></cacheSource><cacheFields count="2"><cacheField name="Machine"><sharedItems count="${MACHINES.length}">${MACHINES.map((name) => `<s v="${name}"/>`).join("")}</sharedItems></cacheField><cacheField name="Component"><sharedItems/></cacheField></cacheFields></pivotCacheDefinition>`;
const RECORDS = `${HEAD}<pivotCacheRecords xmlns="${MAIN}" count="${POINTS.length}">${POINTS.map(([, machine, part]) => `<r><x v="${MACHINES.indexOf(String(machine))}"/><s v="${part}"/></r>`).join("")}</pivotCacheRecords>`;
const PIVOT = `${HEAD}<pivotTableDefinition xmlns="${MAIN}" name="Counts" cacheId="1" dataCaption="Values" updatedVersion="6" createdVersion="6"><location ref="A3:B6" firstHeaderRow="1" firstDataRow="1" firstDataCol="1"/><pivotFields count="2"><pivotField axis="axisRow" showAll="0"><items count="${MACHINES.length + 1}">${MACHINES.map((_, i) => `<item x="${i}"/>`).join("")}<item t="default"/></items></pivotField><pivotField dataField="1" showAll="0"/></pivotFields><rowFields count="1"><field x="0"/></rowFields><rowItems count="3"><i><x/></i><i><x v="1"/></i><i t="grand"><x/></i></rowItems><colItems count="1"><i/></colItems><dataFields count="1"><dataField name="Count of Component" fld="1" subtotal="count"/></dataFields></pivotTableDefinition>`;
const PIVOT_SHEET = `${HEAD}<worksheet xmlns="${MAIN}"><sheetData>${row(3, ["Machine", "Count of Component"])}${row(4, [MACHINES[0] ?? "", 3])}${row(5, [MACHINES[1] ?? "", 3])}${row(6, ["Total", 6])}</sheetData></worksheet>`;
const STYLES = `${HEAD}<styleSheet xmlns="${MAIN}"><fonts count="2"><font><sz val="11"/><name val="Calibri"/></font><font><b/><sz val="11"/><name val="Calibri"/></font></fonts><fills count="3"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill><fill><patternFill patternType="solid"><fgColor rgb="FFEFEFE0"/></patternFill></fill></fills><borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs><cellXfs count="3"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/><xf numFmtId="0" fontId="1" fillId="0" borderId="0" xfId="0" applyFont="1"/><xf numFmtId="0" fontId="0" fillId="2" borderId="0" xfId="0" applyFill="1"/></cellXfs><cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles><dxfs count="1"><dxf><font><i/><color rgb="FF7F0000"/></font></dxf></dxfs></styleSheet>`;
const BOOK = `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><bookViews><workbookView/></bookViews><sheets><sheet name="Survey" sheetId="1" r:id="rId1"/><sheet name="Summary" sheetId="3" r:id="rId2"/></sheets><definedNames><definedName name="Depths">Survey!$G$${FIRST}:$G$${LAST}</definedName><definedName name="_xlnm.Print_Titles" localSheetId="0">Survey!$3:$3</definedName></definedNames><calcPr calcId="0"/><pivotCaches><pivotCache cacheId="1" r:id="rId4"/></pivotCaches></workbook>`;
const OVERRIDES: readonly (readonly [string, string])[] = [
  ["xl/workbook.xml", `${SHEET_TYPE}.sheet.main+xml`],
  ["xl/worksheets/sheet1.xml", `${SHEET_TYPE}.worksheet+xml`],
  ["xl/worksheets/sheet2.xml", `${SHEET_TYPE}.worksheet+xml`],
  ["xl/styles.xml", `${SHEET_TYPE}.styles+xml`],
  ["xl/comments1.xml", `${SHEET_TYPE}.comments+xml`],
  ["xl/tables/table1.xml", `${SHEET_TYPE}.table+xml`],
  ["xl/pivotTables/pivotTable1.xml", `${SHEET_TYPE}.pivotTable+xml`],
  ["xl/pivotCache/pivotCacheDefinition1.xml", `${SHEET_TYPE}.pivotCacheDefinition+xml`],
  ["xl/pivotCache/pivotCacheRecords1.xml", `${SHEET_TYPE}.pivotCacheRecords+xml`],
  ["xl/drawings/drawing1.xml", "application/vnd.openxmlformats-officedocument.drawing+xml"],
  ["xl/charts/chart1.xml", "application/vnd.openxmlformats-officedocument.drawingml.chart+xml"],
];
const TYPES = `${HEAD}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Default Extension="png" ContentType="image/png"/><Default Extension="vml" ContentType="application/vnd.openxmlformats-officedocument.vmlDrawing"/>${OVERRIDES.map(([name, type]) => `<Override PartName="/${name}" ContentType="${type}"/>`).join("")}</Types>`;

/**
 * A survey with all that a workbook can hold beside cells: chart, picture, pivot table, comment, table, defined
 * names, a list of choices and a conditional format. It has a sheet "Summary" of its own.
 */
export function richWorkbook(): Uint8Array {
  const parts: Readonly<Record<string, string | Uint8Array>> = {
    "[Content_Types].xml": TYPES,
    "_rels/.rels": links(["officeDocument", "xl/workbook.xml"]),
    "xl/workbook.xml": BOOK,
    "xl/_rels/workbook.xml.rels": links(
      ["worksheet", "worksheets/sheet1.xml"],
      ["worksheet", "worksheets/sheet2.xml"],
      ["styles", "styles.xml"],
      ["pivotCacheDefinition", "pivotCache/pivotCacheDefinition1.xml"],
    ),
    "xl/worksheets/sheet1.xml": SURVEY,
    "xl/worksheets/_rels/sheet1.xml.rels": links(
      ["drawing", "../drawings/drawing1.xml"],
      ["vmlDrawing", "../drawings/vmlDrawing1.vml"],
      ["comments", "../comments1.xml"],
      ["table", "../tables/table1.xml"],
    ),
    "xl/worksheets/sheet2.xml": PIVOT_SHEET,
    "xl/worksheets/_rels/sheet2.xml.rels": links(["pivotTable", "../pivotTables/pivotTable1.xml"]),
    "xl/drawings/drawing1.xml": DRAWN,
    "xl/drawings/_rels/drawing1.xml.rels": links(["chart", "../charts/chart1.xml"], ["image", "../media/image1.png"]),
    "xl/drawings/vmlDrawing1.vml": BOX,
    "xl/charts/chart1.xml": CHART,
    "xl/media/image1.png": new Uint8Array(Buffer.from(PICTURE, "base64")),
    "xl/comments1.xml": COMMENTS,
    "xl/tables/table1.xml": TABLE,
    "xl/pivotTables/pivotTable1.xml": PIVOT,
    "xl/pivotTables/_rels/pivotTable1.xml.rels": links([
      "pivotCacheDefinition",
      "../pivotCache/pivotCacheDefinition1.xml",
    ]),
    "xl/pivotCache/pivotCacheDefinition1.xml": CACHE,
    "xl/pivotCache/_rels/pivotCacheDefinition1.xml.rels": links(["pivotCacheRecords", "pivotCacheRecords1.xml"]),
    "xl/pivotCache/pivotCacheRecords1.xml": RECORDS,
    "xl/styles.xml": STYLES,
  };
  const bytes = Object.entries(parts).map(([name, part]) => [name, typeof part === "string" ? strToU8(part) : part]);
  return zipSync(Object.fromEntries(bytes), { mtime: new Date("2026-01-01T00:00:00Z") });
}

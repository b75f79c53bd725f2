import { group } from "d3-array";
import { factName, plainWords } from "../../../facts/index.js";
import type { ResultHead, SurveyShown } from "../../../screening/index.js";
import { LANGUAGE_NAMES } from "../../terminal/sections.js";
import { countOf } from "../../wording/numbers.js";
import { columnsAlike } from "./columns-alike.js";
import { problemLines } from "./problem-lines.js";
import { Wide } from "./wide.js";

/** How the surveys were read: sheets, columns as they were understood, and what reading brought up. */
export function Reading({ head }: { readonly head: ResultHead }) {
  return (
    <>
      {head.surveys.map((survey) => (
        <section key={survey.file}>
          <h3>{survey.file}</h3>
          <Sheets survey={survey} />
          <Columns survey={survey} />
          <Problems survey={survey} />
        </section>
      ))}
    </>
  );
}

function Sheets({ survey }: { readonly survey: SurveyShown }) {
  return (
    <ul>
      {survey.sheets.map(({ sheet, used, why, headingRows, pointRows, hidden, language, languageWhy }) => (
        <li key={sheet}>
          {sheet === null ? "" : `${sheet}${hidden ? " (hidden)" : ""}: `}
          {used
            ? `${countOf(pointRows, "point")}, headings in row ${headingRows.join(" and ")}, ${language === null ? "language open" : LANGUAGE_NAMES[language]} (${languageWhy})`
            : `not read as points, ${why}`}
        </li>
      ))}
    </ul>
  );
}

function Columns({ survey }: { readonly survey: SurveyShown }) {
  if (survey.columns.length === 0) return null;
  return (
    <details class="printed">
      <summary>{countOf(survey.columns.length, "column")} as understood</summary>
      <Wide label={`Columns of ${survey.file}`}>
        <table>
          <caption>Columns of {survey.file}</caption>
          <thead>
            <tr>
              <th scope="col">column</th>
              <th scope="col">heading</th>
              <th scope="col">taken for</th>
              <th scope="col">unit</th>
              <th scope="col">why</th>
            </tr>
          </thead>
          {columnsAlike(survey.columns).map(({ sheets, columns }) => (
            <tbody key={sheets.join("\n")}>
              {sheets.length === 0 ? null : (
                <tr>
                  <th scope="rowgroup" colSpan={5} class="sheets">
                    {sheets.join(", ")}
                  </th>
                </tr>
              )}
              {columns.map(({ column, heading, facts, unit, hidden, why }) => (
                <tr key={column}>
                  <td>
                    {column}
                    {hidden ? " (hidden)" : ""}
                  </td>
                  <th scope="row">{heading}</th>
                  <td>{facts.length === 0 ? "not used" : facts.map(factName).join(", ")}</td>
                  <td>{unit ?? ""}</td>
                  <td>{why}</td>
                </tr>
              ))}
            </tbody>
          ))}
        </table>
      </Wide>
    </details>
  );
}

function Problems({ survey }: { readonly survey: SurveyShown }) {
  if (survey.problems.length === 0) return <p>Reading brought up nothing to remark on.</p>;
  const kinds = group(survey.problems, ({ code }) => code);
  return (
    <>
      <p>{countOf(survey.problems.length, "remark")} on reading:</p>
      {[...kinds]
        .sort(([, a], [, b]) => b.length - a.length)
        .map(([code, problems]) => (
          <details key={code} class="printed">
            <summary>
              {plainWords(code)}: {problems.length}
            </summary>
            <ul>
              {problemLines(problems).map(({ where, text }) => (
                <li key={`${where} ${text}`}>
                  {where === "" ? "" : <span class="cell">{where}: </span>}
                  {text}
                </li>
              ))}
            </ul>
          </details>
        ))}
    </>
  );
}

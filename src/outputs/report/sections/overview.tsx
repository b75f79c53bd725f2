import type { ResultHead, Summary } from "../../../screening/index.js";
import { Mark } from "../../html/mark.js";
import { countOf } from "../../wording/numbers.js";
import { bookInWords } from "../../wording/overlays.js";
import type { Kind } from "../charts/patterns.js";
import { StackedBar } from "../charts/stacked-bar.js";

const KINDS = ["fail", "warn", "pass"] as const satisfies readonly Kind[];
const VERDICT_WORDS = {
  fail: "at least one rule fails",
  warn: "nothing fails, and a rule warns or is not settled",
  pass: "nothing speaks against it",
} as const;

/** What was screened, with which rules, on which day. */
export function Screened({ head, machines }: { readonly head: ResultHead; readonly machines: number }) {
  const { rulebook, set, stage, asOf, surveys, skipped, site } = head;
  const points = surveys.flatMap(({ sheets }) => sheets).reduce((sum, { pointRows }) => sum + pointRows, 0);
  const overdue = head.rules.filter((rule) => rule.reviewOverdue).map(({ id }) => id);
  return (
    <dl class="notes">
      <div>
        <dt>Site</dt>
        <dd>{site.name ?? "not named"}</dd>
      </div>
      <div>
        <dt>{surveys.length === 1 ? "Survey" : "Surveys"}</dt>
        {surveys.map(({ file }) => (
          <dd key={file}>{file}</dd>
        ))}
        {skipped.map(({ file, text }) => (
          <dd key={file}>
            {file}: left out, {text}
          </dd>
        ))}
      </div>
      <div>
        <dt>Points</dt>
        <dd>
          {countOf(points, "point")} on {countOf(machines, "machine")},{" "}
          {stage === "proposed" ? "as proposed" : "as installed"}
        </dd>
      </div>
      <div>
        <dt>Rulebook</dt>
        <dd>
          {bookInWords(rulebook)}, set {set}: {countOf(head.rules.length, "rule")}, limits as of {asOf}
        </dd>
        {overdue.length === 0 ? null : <dd>limits overdue for review: {overdue.join(", ")}</dd>}
      </div>
    </dl>
  );
}

/** Verdicts, counted and as a bar. */
export function Verdicts({ summary }: { readonly summary: Summary }) {
  const { points, warnOnlyUndecided, accepted, byCriticality } = summary;
  const said = KINDS.map((kind) => `${summary[kind]} ${kind}`).join(", ");
  return (
    <>
      <figure>
        <StackedBar
          counts={summary}
          kinds={KINDS}
          most={points}
          width={720}
          height={34}
          title={`Verdicts on ${countOf(points, "point")}: ${said}`}
        />
      </figure>
      <table class="narrow">
        <caption>Verdicts on {countOf(points, "point")}</caption>
        <thead>
          <tr>
            <th scope="col">verdict</th>
            <th scope="col" class="number">
              points
            </th>
            <th scope="col">when</th>
          </tr>
        </thead>
        <tbody>
          {KINDS.map((verdict) => (
            <tr key={verdict}>
              <th scope="row">
                <Mark outcome={verdict} />
              </th>
              <td class="number">{summary[verdict]}</td>
              <td>{VERDICT_WORDS[verdict]}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {warnOnlyUndecided === 0 ? null : (
        <p>Of the points that warn, {warnOnlyUndecided} warn only because something is not known.</p>
      )}
      {accepted === 0 ? null : (
        <p>
          Of the points that do not pass, {accepted} {accepted === 1 ? "has" : "have"} everything that speaks against
          {accepted === 1 ? " it" : " them"} accepted by somebody who answers for it. The verdict stays.
        </p>
      )}
      {byCriticality.some(({ criticality }) => criticality !== null) ? (
        <p>
          By class of the machine:{" "}
          {byCriticality
            .map(
              ({ criticality, machines, points: of }) =>
                `${criticality === null ? "no class known" : `class ${criticality}`}: ${countOf(machines, "machine")}, ${countOf(of, "point")}`,
            )
            .join("; ")}
          .
        </p>
      ) : null}
    </>
  );
}

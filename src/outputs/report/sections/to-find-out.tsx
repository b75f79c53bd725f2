import { factName } from "../../../facts/index.js";
import type { Summary } from "../../../screening/index.js";
import { methodNoun } from "../../wording/methods.js";
import { countOf } from "../../wording/numbers.js";
import { failAnywayInWords, notByFactsInWords } from "../../wording/settling.js";
import { FirstFew } from "./first-few.js";
import { Wide } from "./wide.js";

/** Which missing facts to fetch first. */
export function ToFindOut({ summary }: { readonly summary: Summary }) {
  const { settling, openPoints, toMeasure } = summary;
  const { failAnyway, notByFacts } = openPoints;
  if (toMeasure.length === 0 && notByFacts === 0) return <p>Nothing is missing.</p>;
  return (
    <>
      {settling.length === 0 ? null : (
        <FirstFew
          rows={settling.map((step, place) => ({ ...step, number: place + 1 }))}
          what="steps"
          table={(rows, name) => (
            <Wide label={name("What to find out one after the other")}>
              <table>
                <caption>One after the other: each step settles the most further points per fact</caption>
                <thead>
                  <tr>
                    <th scope="col" class="number">
                      step
                    </th>
                    <th scope="col">facts to find out</th>
                    <th scope="col" class="number">
                      points settled
                    </th>
                    <th scope="col" class="number">
                      settled so far
                    </th>
                  </tr>
                </thead>
                <tbody>
                  {rows.map(({ number, facts, points, pointsSoFar }) => (
                    <tr key={number}>
                      <td class="number">{number}</td>
                      <th scope="row">{facts.map(factName).join(", ")}</th>
                      <td class="number">{points}</td>
                      <td class="number">{pointsSoFar}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </Wide>
          )}
        />
      )}
      {failAnyway === 0 ? null : <p>{failAnywayInWords(failAnyway)}.</p>}
      {notByFacts === 0 ? null : <p>{notByFactsInWords(notByFacts)}.</p>}
      {toMeasure.length === 0 ? null : (
        <details>
          <summary>Every missing fact with the points that it leaves open</summary>
          <table class="narrow">
            <caption>Missing facts</caption>
            <thead>
              <tr>
                <th scope="col">fact</th>
                <th scope="col" class="number">
                  points left open
                </th>
              </tr>
            </thead>
            <tbody>
              {toMeasure.map(({ fact, points }) => (
                <tr key={fact}>
                  <th scope="row">{factName(fact)}</th>
                  <td class="number">{points}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      )}
    </>
  );
}

/** For how many points another mounting method than the proposed one would do. */
export function OtherMethods({ summary: { otherMethods } }: { readonly summary: Summary }) {
  return (
    <ul>
      {otherMethods.map(({ method, wouldPass, closest }) => (
        <li key={method}>
          {methodNoun(method)}:{" "}
          {[
            ...(wouldPass > 0 ? [`${countOf(wouldPass, "point")} would pass the rules asked`] : []),
            ...(closest > 0 ? [`comes closest on ${countOf(closest, "point")}`] : []),
          ].join(", ")}
        </li>
      ))}
    </ul>
  );
}

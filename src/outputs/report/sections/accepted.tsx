import type { DeviationShown, DeviationsShown } from "../../../screening/index.js";
import { STATUS_WORDS, standingInWords, toActOn } from "../../wording/deviations.js";
import { markedOutcome } from "../../wording/outcomes.js";
import { Wide } from "./wide.js";

/** Accepted deviations and how they stand, those that somebody has to act on first. */
export function Deviations({ deviations }: { readonly deviations: DeviationsShown }) {
  const pressing = toActOn(deviations.list);
  const rest = deviations.list.filter((one) => !pressing.includes(one));
  return (
    <Wide label="Table of accepted deviations">
      <table>
        <caption>{deviations.file}</caption>
        <thead>
          <tr>
            <th scope="col">point</th>
            <th scope="col">rule</th>
            <th scope="col">accepted</th>
            <th scope="col">by whom and why</th>
            <th scope="col">how it stands</th>
            <th scope="col" class="number">
              line
            </th>
          </tr>
        </thead>
        <tbody>
          {[...pressing, ...rest].map((one) => (
            <tr key={one.origin.line}>
              <th scope="row">{one.point}</th>
              <td>{one.rule}</td>
              <td>{acceptedInCell(one)}</td>
              <td>
                {one.acceptedBy}: {one.reason}
              </td>
              <td>
                {STATUS_WORDS[one.status]}; {standingInWords(one)}
              </td>
              <td class="number">{one.origin.line}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Wide>
  );
}

function acceptedInCell({ outcome, limit, value, from, until }: DeviationShown): string {
  return [
    `up to ${markedOutcome(outcome)}`,
    ...(limit === null ? [] : [`limit ${limit}`]),
    ...(value === null ? [] : [`value ${value}`]),
    `from ${from}, until ${until}`,
  ].join("; ");
}

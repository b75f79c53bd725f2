import type { AcceptedOnPoint, JobRecord, JobSection, PointJob } from "../../workpacks/index.js";
import { Mark } from "../html/mark.js";
import { shownText } from "../html/shown-text.js";
import { markedOutcome } from "../wording/outcomes.js";
import { rowInWords } from "../wording/places.js";
import { bandText, isKnown, methodText, valueText } from "./value-words.js";
import { Blank, Values } from "./views.js";

/** Records that stand beside the signature. */
const SIGNED = ["installed_by", "installed_on"];

/** The work at one point: what to do, step by step, and what to write down. */
export function PointView({ job, number }: { readonly job: PointJob; readonly number: number }) {
  const heading = `point-${number}`;
  return (
    <section class="point" aria-labelledby={heading}>
      <h2 id={heading}>
        {number}. {shownText(job.point)}
      </h2>
      <p>
        <strong>{shownText(job.place)}</strong>, {methodText(job.method)}. Verdict <Mark outcome={job.verdict} />
        {job.accepted.length > 0 ? ", accepted" : ""}.{" "}
        <span class="source">
          {shownText(rowInWords(job))}; {job.id}
        </span>
      </p>
      {job.accepted.length > 0 ? <AcceptedView accepted={job.accepted} /> : null}
      <StepsView sections={job.sections} sheet={job.sheet} />
      <div class="records">
        <RecordsView
          records={job.records.filter(({ fact, whenRunning }) => !whenRunning && !SIGNED.includes(fact))}
          title="Write down while fitting"
        />
        <RecordsView
          records={job.records.filter(({ whenRunning }) => whenRunning)}
          title="Once it runs again, warm and steady"
        />
      </div>
      <p class="together">
        Installed by <Blank /> on <Blank /> signature <Blank />
      </p>
    </section>
  );
}

function AcceptedView({ accepted }: { readonly accepted: readonly AcceptedOnPoint[] }) {
  return (
    <table>
      <caption>Accepted deviations on which this point rests</caption>
      <thead>
        <tr>
          <th scope="col">What the rule says</th>
          <th scope="col">Accepted by</th>
          <th scope="col">Why</th>
          <th scope="col">Ends on</th>
        </tr>
      </thead>
      <tbody>
        {accepted.map(({ rule, outcome, message, acceptedBy, reason, until }) => (
          <tr key={rule}>
            <td>
              {markedOutcome(outcome)}: {shownText(message)} <span class="source">({rule})</span>
            </td>
            <td>{shownText(acceptedBy)}</td>
            <td>{shownText(reason)}</td>
            <td class="short">{until}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function StepsView({ sections, sheet }: { readonly sections: readonly JobSection[]; readonly sheet: string | null }) {
  let step = 0;
  return (
    <table class="steps">
      <caption>What to do</caption>
      <thead>
        <tr>
          <th scope="col">Step</th>
          <th scope="col">What</th>
          <th scope="col" class="values">
            With
          </th>
          <th scope="col">Done</th>
        </tr>
      </thead>
      {sections.map(({ part, title, lines }) => (
        <tbody key={part}>
          <tr class="part">
            <td colSpan={4}>{title}</td>
          </tr>
          {lines.map(({ text, values, hold }) => {
            step += 1;
            return (
              <tr key={text} class={hold ? "hold" : undefined}>
                <td>{step}</td>
                <td>
                  {hold ? <strong>Hold point. </strong> : null}
                  {text}
                </td>
                <td class="values">
                  <Values values={values} home={{ sheet }} />
                </td>
                <td class="done">{hold ? <Blank /> : <Tick />}</td>
              </tr>
            );
          })}
        </tbody>
      ))}
    </table>
  );
}

function Tick() {
  return (
    <span class="tick" role="img" aria-label="to be ticked">
      ☐
    </span>
  );
}

function RecordsView({ records, title }: { readonly records: readonly JobRecord[]; readonly title: string }) {
  if (records.length === 0) return null;
  const isPlanned = records.some(({ expected }) => expected !== null);
  return (
    <table>
      <caption>{title}</caption>
      <thead>
        <tr>
          <th scope="col">What</th>
          {isPlanned ? (
            <th scope="col" class="short">
              Planned
            </th>
          ) : null}
          {isPlanned ? (
            <th scope="col" class="short">
              Allowed
            </th>
          ) : null}
          <th scope="col" class="box">
            As built
          </th>
        </tr>
      </thead>
      <tbody>
        {records.map(({ fact, name, unit, expected }) => (
          <tr key={fact}>
            <td>{name}</td>
            {isPlanned ? (
              <td>{expected !== null && isKnown(expected.fact) ? shownText(valueText(expected.fact)) : ""}</td>
            ) : null}
            {isPlanned ? <td class="short">{expected?.band ? bandText(expected.band) : ""}</td> : null}
            <td class="box">
              <span class="unit">{unit}</span>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

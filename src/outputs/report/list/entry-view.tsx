import { Mark } from "../../html/mark.js";
import type { Entry, FindingRead } from "./entry.js";

/** The line that stands for a point or a group: mark and word, where it is, and what to read first. */
export function EntryLine({ entry }: { readonly entry: Entry }) {
  return (
    <>
      <span class="verdict">
        <Mark outcome={entry.outcome} />
        {entry.accepted ? ", accepted" : ""}
      </span>{" "}
      <span class="where">{entry.label}</span>
      {entry.name === "" ? null : <span class="quiet"> ({entry.name})</span>}
      {entry.row === "" ? null : <span class="quiet paper-only">; {entry.row}</span>}
      {entry.leading === "" ? null : <span class="leading">{entry.leading}</span>}
    </>
  );
}

/** Notes that are printed; the rest stands in the line already, or is of use only where it can be copied. */
const ON_PAPER: ReadonlySet<string> = new Set([
  "Settled by",
  "Another method",
  "Rows",
  "Stated differently",
  "Not counted",
]);

/** All that is told of a point or a group once it is opened. */
export function EntryDetails({ entry, level }: { readonly entry: Entry; readonly level: 4 | 5 }) {
  return (
    <div class="opened">
      {entry.findings.length === 0 ? (
        <p class="quiet screen-only">No rule that was asked says anything against it.</p>
      ) : null}
      {entry.findings.map((finding) => (
        <FindingView key={finding.rule} finding={finding} level={level} />
      ))}
      <dl class="notes">
        {entry.notes.map(([what, text]) => (
          <div key={what} class={ON_PAPER.has(what) ? undefined : "screen-only"}>
            <dt>{what}</dt>
            <dd class="lines">{text}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}

function FindingView({ finding, level }: { readonly finding: FindingRead; readonly level: 4 | 5 }) {
  const Heading = `h${level}` as const;
  const { limit, source, margin, facts } = finding;
  return (
    <section class={finding.group === "" ? "finding" : "finding of-group"}>
      <Heading>
        <Mark outcome={finding.outcome} />
        {finding.accepted === "" ? "" : ", accepted"}: {finding.title} <span class="quiet rule">{finding.rule}</span>
      </Heading>
      <dl>
        <Told what="Finding" text={finding.message} kind="said" />
        {facts.length === 0 ? null : (
          <div class="read">
            <dt>Read</dt>
            {facts.map(({ text, ownSheet, cells }) => (
              <dd key={text}>
                {text}
                {cells === "" ? null : (
                  <span class="cell">
                    {" "}
                    {ownSheet === "" ? null : <span class="screen-only">{ownSheet}!</span>}
                    {cells}
                  </span>
                )}
              </dd>
            ))}
          </div>
        )}
        <Told what="Limit" text={[limit, margin].filter((text) => text !== "").join("; ")} kind="limit" />
        <Told what="Source" text={source} kind="screen-only" />
        <Told what="Source" text={finding.sourceInShort} kind="source paper-only" />
        <Told what="Not known" text={finding.missing} kind={saysMissing(finding) ? "screen-only" : "unknown"} />
        <Told what="What to do" text={finding.remedy} kind="to-do" />
        <Told what="Accepted" text={finding.accepted.replace(/^accepted /, "")} />
        <Told what="Said of" text={finding.group} kind="group" />
      </dl>
    </section>
  );
}

/** Whether what to do is to find out just what is not known. */
function saysMissing({ missing, remedy }: FindingRead): boolean {
  return remedy === `find out: ${missing}`;
}

interface ToldProps {
  readonly what: string;
  readonly text: string;
  readonly kind?: string;
}

function Told({ what, text, kind }: ToldProps) {
  if (text === "") return null;
  return (
    <div class={kind}>
      <dt>{what}</dt>
      <dd>{text}</dd>
    </div>
  );
}

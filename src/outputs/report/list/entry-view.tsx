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
      {entry.leading === "" ? null : <span class="leading">{entry.leading}</span>}
    </>
  );
}

/** All that is told of a point or a group once it is opened. */
export function EntryDetails({ entry, level }: { readonly entry: Entry; readonly level: 4 | 5 }) {
  return (
    <div class="opened">
      {entry.findings.length === 0 ? <p class="quiet">No rule that was asked says anything against it.</p> : null}
      {entry.findings.map((finding) => (
        <FindingView key={finding.rule} finding={finding} level={level} />
      ))}
      <dl class="notes">
        {entry.notes.map(([what, text]) => (
          <div key={what}>
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
    <section class="finding">
      <Heading>
        <Mark outcome={finding.outcome} />
        {finding.accepted === "" ? "" : ", accepted"}: {finding.title} <span class="quiet rule">{finding.rule}</span>
      </Heading>
      <dl>
        <Told what="Finding" text={finding.message} />
        {facts.length === 0 ? null : (
          <div>
            <dt>Read</dt>
            {facts.map(({ text, cells }) => (
              <dd key={text}>
                {text}
                {cells === "" ? null : <span class="cell"> {cells}</span>}
              </dd>
            ))}
          </div>
        )}
        <Told what="Limit" text={[limit, margin].filter((text) => text !== "").join("; ")} />
        <Told what="Source" text={source} />
        <Told what="Not known" text={finding.missing} />
        <Told what="What to do" text={finding.remedy} />
        <Told what="Accepted" text={finding.accepted.replace(/^accepted /, "")} />
        <Told what="Said of" text={finding.group} />
      </dl>
    </section>
  );
}

function Told({ what, text }: { readonly what: string; readonly text: string }) {
  if (text === "") return null;
  return (
    <div>
      <dt>{what}</dt>
      <dd>{text}</dd>
    </div>
  );
}

import type { ComponentChildren } from "preact";
import type { ResultHead, Summary } from "../../screening/index.js";
import { rowsInNoGroup } from "../findings/rows-in-no-group.js";
import { indexRules } from "../findings/rule-index.js";
import { Patterns } from "./charts/patterns.js";
import type { ReportData } from "./list/data.js";
import { Deviations } from "./sections/accepted.js";
import { MendedInTurn } from "./sections/mending.js";
import { Screened, Verdicts } from "./sections/overview.js";
import { PlainGroups, PlainPoints } from "./sections/plain-list.js";
import { Reading } from "./sections/reading.js";
import { RestsOn } from "./sections/rests-on.js";
import { NotAsked, Rules } from "./sections/rulebook.js";
import { RulesInTheWay } from "./sections/rules-in-the-way.js";
import { Margins, Speeds } from "./sections/spreads.js";
import { OtherMethods, ToFindOut } from "./sections/to-find-out.js";

interface ReportBodyProps {
  readonly head: ResultHead;
  readonly summary: Summary;
  /** How many machines the points are on. */
  readonly machines: number;
  readonly data: ReportData;
}

interface Part {
  readonly id: string;
  readonly title: string;
  readonly body: ComponentChildren;
}

/** Everything that stands in the page. */
export function ReportBody(props: ReportBodyProps) {
  const { head } = props;
  const [first, ...others] = head.cautions;
  const parts = partsOf(props);
  return (
    <>
      <Patterns />
      <header>
        <h1>Screening of measurement points{head.site.name === null ? "" : `: ${head.site.name}`}</h1>
        {first === undefined ? null : (
          <p class="cautions">
            {first}
            {others.length === 0 ? null : (
              <>
                {" "}
                <a href="#cautions">All cautions</a>
              </>
            )}
          </p>
        )}
        <Screened head={head} machines={props.machines} />
      </header>
      <nav aria-label="Contents" class="screen-only">
        <ol>
          {parts.map(({ id, title }) => (
            <li key={id}>
              <a href={`#${id}`}>{title}</a>
            </li>
          ))}
        </ol>
      </nav>
      <main>
        {parts.map(({ id, title, body }) => (
          <section key={id} id={id} aria-labelledby={`${id}-title`}>
            <h2 id={`${id}-title`}>{title}</h2>
            {body}
          </section>
        ))}
      </main>
    </>
  );
}

function partsOf({ head, summary, data }: ReportBodyProps): readonly Part[] {
  const rules = indexRules(head);
  const notCounted = rowsInNoGroup(head);
  const isAnyLeft = head.surveys.some(({ notAsked }) => notAsked.length > 0);
  const { otherMethods, distributions } = summary;
  const when = (isThere: boolean, part: Part): readonly Part[] => (isThere ? [part] : []);
  return [
    { id: "verdicts", title: "Verdicts", body: <Verdicts summary={summary} /> },
    { id: "in-the-way", title: "What stops most points", body: <RulesInTheWay summary={summary} rules={rules} /> },
    ...when(summary.fail > 0, {
      id: "mending",
      title: "What mending would free",
      body: <MendedInTurn summary={summary} rules={rules} />,
    }),
    { id: "to-find-out", title: "What to find out first", body: <ToFindOut summary={summary} /> },
    ...when(otherMethods.length > 0, {
      id: "methods",
      title: "By another mounting method than the proposed one",
      body: <OtherMethods summary={summary} />,
    }),
    { id: "speeds", title: "Speeds", body: <Speeds spread={distributions.lowestSpeed} /> },
    { id: "margins", title: "Margins", body: <Margins margins={distributions.margins} rules={rules} /> },
    { id: "points", title: "Points, machine by machine", body: <Points data={data} /> },
    ...when(data.groups.length > 0 || notCounted.length > 0, {
      id: "groups",
      title: "Points that belong together",
      body: <Groups data={data} notCounted={notCounted} />,
    }),
    ...(head.deviations === null
      ? []
      : [{ id: "deviations", title: "Accepted deviations", body: <Deviations deviations={head.deviations} /> }]),
    ...when(isAnyLeft, { id: "not-asked", title: "Rules not asked", body: <NotAsked head={head} rules={rules} /> }),
    { id: "reading", title: "How the surveys were read", body: <Reading head={head} /> },
    { id: "rules", title: "Rules and their sources", body: <Rules head={head} /> },
    { id: "rests-on", title: "What this rests on", body: <RestsOn head={head} /> },
    { id: "cautions", title: "Cautions", body: <Cautions cautions={head.cautions} /> },
  ];
}

function Points({ data }: { readonly data: ReportData }) {
  return (
    <>
      <div id="controls" class="screen-only" />
      <p id="status" role="status" class="status" />
      <div id="list">
        <noscript>
          <PlainPoints data={data} />
        </noscript>
      </div>
    </>
  );
}

interface GroupsProps {
  readonly data: ReportData;
  /** What is said of rows that no group counts. */
  readonly notCounted: readonly string[];
}

function Groups({ data, notCounted }: GroupsProps) {
  return (
    <>
      <p>Judged as a whole; what is said of a group counts in the verdict of each of its points.</p>
      {notCounted.length === 0 ? null : (
        <ul>
          {notCounted.map((text) => (
            <li key={text}>
              <strong>Not counted:</strong> {text}.
            </li>
          ))}
        </ul>
      )}
      <div id="group-list">
        <noscript>
          <PlainGroups data={data} />
        </noscript>
      </div>
    </>
  );
}

function Cautions({ cautions }: Pick<ResultHead, "cautions">) {
  return (
    <ul>
      {cautions.map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
    </ul>
  );
}

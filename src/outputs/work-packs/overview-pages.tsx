import type { HeldBackPoint, OutageTotal, WorkPack, WorkPacks } from "../../workpacks/index.js";
import { Mark } from "../html/mark.js";
import { htmlPage } from "../html/page.js";
import { shownText } from "../html/shown-text.js";
import { countOf } from "../wording/numbers.js";
import { rowInWords } from "../wording/places.js";
import { HELD_BACK_PAGE, packFile } from "./file-names.js";
import { PACK_STYLE } from "./pack-style.js";
import { outageText } from "./value-words.js";
import { Basis, Cautions, Supplies } from "./views.js";

/** All packs of a run by outage, with what is needed for each outage. */
export function overviewPage(packs: WorkPacks): string {
  const points = packs.packs.reduce((sum, pack) => sum + pack.points.length, 0);
  return htmlPage({
    title: "Work packs",
    style: PACK_STYLE,
    script: null,
    mainId: "main",
    body: (
      <main id="main">
        <h1>Work packs{packs.basis.site === null ? "" : `: ${shownText(packs.basis.site)}`}</h1>
        <p>
          {countOf(points, "point")} released in {countOf(packs.packs.length, "pack")}, one per machine and outage.{" "}
          <a href={HELD_BACK_PAGE}>{countOf(packs.heldBack.length, "point")} held back</a>, with the reasons.
        </p>
        <p class="notice">
          A verdict is a screening, not a permission. A released point is one that may be planned; whether and when work
          is done is decided by the site's permits and competent or licensed persons.
        </p>
        {packs.outages.map((total, i) => (
          <OutageView key={total.outage} total={total} packs={packs.packs} number={i + 1} />
        ))}
        <Cautions cautions={packs.cautions} />
        <Basis basis={packs.basis} />
      </main>
    ),
  });
}

interface OfOutage {
  readonly total: OutageTotal;
  readonly packs: readonly WorkPack[];
  readonly number: number;
}

function OutageView({ total, packs, number }: OfOutage) {
  const heading = `outage-${number}`;
  return (
    <section aria-labelledby={heading}>
      <h2 id={heading}>Outage: {outageText(total.outage)}</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">Machine</th>
            <th scope="col">Tag</th>
            <th scope="col" class="number">
              Points
            </th>
            <th scope="col" class="number">
              With something accepted
            </th>
            <th scope="col">Pack</th>
          </tr>
        </thead>
        <tbody>
          {packs
            .filter(({ id }) => total.packs.includes(id))
            .map(({ id, machine, assetTag, points }) => (
              <tr key={id}>
                <td>{shownText(machine)}</td>
                <td>{assetTag === null ? "" : shownText(assetTag)}</td>
                <td class="number">{points.length}</td>
                <td class="number">{points.filter(({ accepted }) => accepted.length > 0).length}</td>
                <td>
                  <a href={packFile(id)}>{id}</a>
                </td>
              </tr>
            ))}
        </tbody>
      </table>
      <h3>Tools and materials for {countOf(total.points, "point")}</h3>
      <Supplies supplies={total.supplies} of="for the outage" />
    </section>
  );
}

/** Every point that is held back, with the reasons and what to do. */
export function heldBackPage({ basis, cautions, heldBack }: WorkPacks): string {
  return htmlPage({
    title: "Points held back",
    style: PACK_STYLE,
    script: null,
    mainId: "main",
    body: (
      <main id="main">
        <h1>Points held back: {heldBack.length}</h1>
        <p>No work is planned on these points. Once the reasons are gone, screen again.</p>
        <table>
          <thead>
            <tr>
              <th scope="col">Point</th>
              <th scope="col">Verdict</th>
              <th scope="col">Why it is held back</th>
              <th scope="col">What to do</th>
            </tr>
          </thead>
          {heldBack.map((point) => (
            <HeldBackView key={`${point.file} ${point.sheet} ${point.row}`} held={point} />
          ))}
        </table>
        <Cautions cautions={cautions} />
        <Basis basis={basis} />
      </main>
    ),
  });
}

function HeldBackView({ held }: { readonly held: HeldBackPoint }) {
  return (
    <tbody>
      {held.reasons.map(({ cause, rule, text, remedy }, i) => (
        <tr key={`${cause} ${rule}`}>
          {i > 0 ? null : (
            <>
              <td rowSpan={held.reasons.length}>
                {[...new Set([held.machine ?? held.point, held.place, held.point])].map((line) => (
                  <div key={line}>{shownText(line)}</div>
                ))}
                <span class="source">{shownText(rowInWords(held))}</span>
              </td>
              <td rowSpan={held.reasons.length}>
                <Mark outcome={held.verdict} />
              </td>
            </>
          )}
          <td>
            {shownText(text)} {rule === null ? null : <span class="source">({rule})</span>}
            {cause.startsWith("never") ? <strong> Nothing makes up for this.</strong> : null}
          </td>
          <td>{shownText(remedy)}</td>
        </tr>
      ))}
    </tbody>
  );
}

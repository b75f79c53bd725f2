import type { HoldPoint, PackBasis, PointJob, WorkPack } from "../../workpacks/index.js";
import { Mark } from "../html/mark.js";
import { htmlPage } from "../html/page.js";
import { shownText } from "../html/shown-text.js";
import { countOf } from "../wording/numbers.js";
import { PACK_STYLE } from "./pack-style.js";
import { PointView } from "./point-view.js";
import { methodText, outageText, valueText } from "./value-words.js";
import { Basis, Blank, Cautions, Supplies, Values } from "./views.js";

/** What a pack is printed with beside itself. */
export interface PackContext {
  readonly basis: PackBasis;
  readonly cautions: readonly string[];
}

/** The work pack of one machine and outage as a page that stands alone and prints on A4 and Letter. */
export function packPage(pack: WorkPack, { basis, cautions }: PackContext): string {
  const machine = pack.assetTag === null || pack.assetTag === pack.machine ? "" : `, ${pack.assetTag}`;
  const title = `${pack.machine}${machine}`;
  return htmlPage({
    title: `Work pack: ${title}, outage ${outageText(pack.outage)}`,
    style: PACK_STYLE,
    script: null,
    mainId: "main",
    body: (
      <main id="main">
        <h1>Work pack: {shownText(title)}</h1>
        <dl class="facts">
          <dt>Outage</dt>
          <dd>
            {pack.outage === null ? (
              <>
                <Blank /> no day is stated: have one named
              </>
            ) : (
              pack.outage
            )}
          </dd>
          {basis.site === null ? null : (
            <>
              <dt>Site</dt>
              <dd>{shownText(basis.site)}</dd>
            </>
          )}
          {pack.where.map((value) => (
            <>
              <dt>{value.name}</dt>
              <dd>{shownText(valueText(value.fact))}</dd>
            </>
          ))}
          <dt>Points</dt>
          <dd>{pack.points.length}</dd>
          <dt>Pack</dt>
          <dd>{pack.id}</dd>
        </dl>
        <p class="notice">
          A verdict is a screening, not a permission. Local codes, the site's permits and competent or licensed persons
          decide.
        </p>
        <PointsOfPack points={pack.points} />
        <HoldPoints holdPoints={pack.holdPoints} all={pack.points.length} />
        <section aria-labelledby="supplies">
          <h2 id="supplies">Tools and materials</h2>
          <Supplies supplies={pack.supplies} of="for this pack" />
        </section>
        <Cautions cautions={cautions} />
        <Basis basis={basis} />
        {pack.points.map((job, i) => (
          <PointView key={job.id} job={job} number={i + 1} />
        ))}
      </main>
    ),
  });
}

function PointsOfPack({ points }: { readonly points: readonly PointJob[] }) {
  return (
    <section aria-labelledby="points">
      <h2 id="points">{countOf(points.length, "point")}</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">No.</th>
            <th scope="col">Point</th>
            <th scope="col">Where</th>
            <th scope="col">Fixed by</th>
            <th scope="col">Verdict</th>
          </tr>
        </thead>
        <tbody>
          {points.map(({ id, point, place, method, verdict, accepted }, i) => (
            <tr key={id}>
              <td>{i + 1}</td>
              <td>{shownText(point)}</td>
              <td>{shownText(place)}</td>
              <td>{methodText(method)}</td>
              <td>
                <Mark outcome={verdict} />
                {accepted.length > 0 ? ", accepted" : ""}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function HoldPoints({ holdPoints, all }: { readonly holdPoints: readonly HoldPoint[]; readonly all: number }) {
  return (
    <section aria-labelledby="holds">
      <h2 id="holds">Permits and hold points</h2>
      <p>Nobody goes on before the line is signed. What the survey says is no permit.</p>
      <table>
        <thead>
          <tr>
            <th scope="col">Kind</th>
            <th scope="col">What</th>
            <th scope="col">The survey says</th>
            <th scope="col" class="sign">
              Name, day, signature
            </th>
          </tr>
        </thead>
        <tbody>
          {holdPoints.map(({ kind, text, stated }) => (
            <tr key={text}>
              <td>{kind === "permit" ? "permit" : "hold point"}</td>
              <td>{text}</td>
              <td class="values">
                {stated.map(({ points, values }) => (
                  <div key={points[0]}>
                    {points.length === all || values.length === 0 ? null : (
                      <span class="quiet">{shownText(points.join("; "))}</span>
                    )}
                    <Values values={values} home={null} />
                  </div>
                ))}
              </td>
              <td class="box" />
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

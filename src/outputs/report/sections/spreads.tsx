import { formatNumber } from "../../../base/index.js";
import type { Bin, MarginSpread, Spread, Summary } from "../../../screening/index.js";
import type { RuleIndex } from "../../findings/rule-index.js";
import { countOf } from "../../wording/numbers.js";
import { MarginChart } from "../charts/margin-chart.js";
import { binInWords, SpeedChart } from "../charts/speed-chart.js";
import { FirstFew } from "./first-few.js";
import { Wide } from "./wide.js";

/** The lowest running speeds, drawn and as numbers. */
export function Speeds({ spread }: { readonly spread: Spread }) {
  const { bins, known, notKnown, unit } = spread;
  return (
    <>
      <p>
        The lowest speed at which the shaft may run is known of {countOf(known, "point")}
        {notKnown === 0 ? "" : `, and not known of ${notKnown}`}.
      </p>
      {known === 0 ? null : (
        <>
          <figure>
            <SpeedChart spread={spread} />
          </figure>
          <details>
            <summary>The numbers of this chart</summary>
            <table class="narrow">
              <caption>Points by lowest running speed</caption>
              <thead>
                <tr>
                  <th scope="col">speed</th>
                  <th scope="col" class="number">
                    points
                  </th>
                </tr>
              </thead>
              <tbody>
                {bins.map((bin) => (
                  <tr key={String(bin.from)}>
                    <th scope="row">{binInWords(bin, unit)}</th>
                    <td class="number">{bin.points}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </details>
        </>
      )}
    </>
  );
}

interface MarginsProps {
  readonly margins: Summary["distributions"]["margins"];
  readonly rules: RuleIndex;
}

/** Margins rule by rule, drawn beside each other on one scale and as numbers. */
export function Margins({ margins, rules }: MarginsProps) {
  if (margins.length === 0) return <p>No rule with a limit that is a number has decided any point.</p>;
  return (
    <>
      <p>
        How far the points lie from the limit at which they would fail, points that pass included. The upright line is
        the limit. Bars to its left (crossed) are beyond it, bars to its right have room to spare; each bar is a tenth
        of the limit wide, the outermost hold all that is further off. Of temperatures each bar is 5 K. Rules on groups
        count groups, each once.
      </p>
      <FirstFew
        rows={nearestFirst(margins)}
        what="rules"
        table={(rows, name) => (
          <Wide label={name("Margins rule by rule")}>
            <table>
              <caption>Margins, rule by rule</caption>
              <thead>
                <tr>
                  <th scope="col">rule</th>
                  <th scope="col">
                    <span class="ends">
                      <span>−100 %</span>
                      <span>limit</span>
                      <span>+100 %</span>
                    </span>
                  </th>
                  <th scope="col" class="number">
                    beyond the limit
                  </th>
                  <th scope="col" class="number">
                    in the nearest bar
                  </th>
                  <th scope="col" class="number">
                    further off
                  </th>
                  <th scope="col" class="number">
                    none known
                  </th>
                </tr>
              </thead>
              <tbody>
                {rows.map((spread) => {
                  const { beyond, close, further } = partsOf(spread);
                  const said = `${beyond} beyond the limit, ${close} close to it, ${further} further off`;
                  return (
                    <tr key={spread.rule}>
                      <th scope="row">
                        {rules.title(spread.rule)} <span class="quiet rule">{spread.rule}</span>
                        {spread.counts === "groups" ? <span class="quiet line">counts groups</span> : null}
                      </th>
                      <td>
                        <MarginChart spread={spread} title={`Margins of ${spread.rule}: ${said}`} />
                        {spread.unit === null ? null : (
                          <span class="quiet line">
                            −50 {spread.unit} to +50 {spread.unit}
                          </span>
                        )}
                      </td>
                      <td class="number">{beyond}</td>
                      <td class="number">{close}</td>
                      <td class="number">{further}</td>
                      <td class="number">{spread.notKnown}</td>
                    </tr>
                  );
                })}
              </tbody>
            </table>
          </Wide>
        )}
      />
      <details>
        <summary>The numbers of these charts</summary>
        <dl class="notes">
          {margins.map((spread) => (
            <div key={spread.rule}>
              <dt>{spread.rule}</dt>
              <dd>{numbersInWords(spread)}</dd>
            </div>
          ))}
        </dl>
      </details>
    </>
  );
}

/** Rules with the most points beyond their limit, then close to it; else in the order of the rulebook. */
function nearestFirst(margins: MarginsProps["margins"]): readonly MarginSpread[] {
  return margins.toSorted((a, b) => {
    const [one, other] = [partsOf(a), partsOf(b)];
    return other.beyond - one.beyond || other.close - one.close;
  });
}

function partsOf({ bins }: MarginSpread): {
  readonly beyond: number;
  readonly close: number;
  readonly further: number;
} {
  const sum = (test: (bin: Bin) => boolean): number =>
    bins.filter(test).reduce((points, bin) => points + bin.points, 0);
  return {
    beyond: sum(({ from }) => from === null || from < 0),
    close: sum(({ from }) => from === 0),
    further: sum(({ from }) => from !== null && from > 0),
  };
}

function numbersInWords({ bins, unit }: MarginSpread): string {
  const inPercent = (end: number | null): number | null => (end === null ? null : Number(formatNumber(end * 100)));
  return bins
    .filter(({ points }) => points > 0)
    .map((bin) => {
      const shown = unit === null ? { ...bin, from: inPercent(bin.from), to: inPercent(bin.to) } : bin;
      return `${binInWords(shown, unit ?? "%")}: ${bin.points}`;
    })
    .join("; ");
}

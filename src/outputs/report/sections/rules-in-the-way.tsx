import type { RuleCounts, Summary } from "../../../screening/index.js";
import type { RuleIndex } from "../../findings/rule-index.js";
import { countOf } from "../../wording/numbers.js";
import { markedOutcome } from "../../wording/outcomes.js";
import { StackedBar } from "../charts/stacked-bar.js";
import { Wide } from "./wide.js";

const KINDS = ["fail", "warn", "undecided"] as const;

/** Which rules stop most points, and what mending each alone would free. */
export function RulesInTheWay({ summary, rules }: { readonly summary: Summary; readonly rules: RuleIndex }) {
  const troubling = summary.byRule
    .filter((counts) => troubleOf(counts) > 0)
    .toSorted(
      (a, b) =>
        b.fail - a.fail || openOf(b) - openOf(a) || b.warn - a.warn || rules.order(a.rule) - rules.order(b.rule),
    );
  if (troubling.length === 0) return <p>No rule says anything against any point.</p>;
  const most = troubling.reduce((highest, counts) => Math.max(highest, troubleOf(counts)), 1);
  const freed = new Map(summary.freeing.alone.map((one) => [one.rule, one]));
  return (
    <Wide label="Rules that stand in the way">
      <table>
        <caption>Rules by the points they stop. The last columns count points that this rule alone stops.</caption>
        <thead>
          <tr>
            <th scope="col">rule</th>
            {KINDS.map((kind) => (
              <th key={kind} scope="col" class="number">
                {markedOutcome(kind)}
              </th>
            ))}
            <th scope="col" class="drawn">
              drawn
            </th>
            <th scope="col" class="number">
              mended, would pass
            </th>
            <th scope="col" class="number">
              mended, would warn
            </th>
          </tr>
        </thead>
        <tbody>
          {troubling.map((counts) => {
            const { failToPass = 0, failToWarn = 0, warnToPass = 0 } = freed.get(counts.rule) ?? {};
            return (
              <tr key={counts.rule}>
                <th scope="row">
                  {rules.title(counts.rule)} <span class="quiet rule">{counts.rule}</span>
                </th>
                <td class="number">{counts.fail}</td>
                <td class="number">{counts.warn}</td>
                <td class="number">{openOf(counts)}</td>
                <td class="drawn">
                  <StackedBar
                    counts={{ fail: counts.fail, warn: counts.warn, undecided: openOf(counts) }}
                    kinds={KINDS}
                    most={most}
                    width={160}
                    height={16}
                    title={`${counts.fail} fail, ${counts.warn} warn, ${openOf(counts)} undecided`}
                  />
                </td>
                <td class="number">{failToPass + warnToPass}</td>
                <td class="number">{failToWarn}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </Wide>
  );
}

/** Which rules to mend one after the other. */
export function MendedInTurn({ summary, rules }: { readonly summary: Summary; readonly rules: RuleIndex }) {
  const { inTurn } = summary.freeing;
  const freed = inTurn.at(-1)?.pointsSoFar ?? 0;
  const left = summary.fail - freed;
  return (
    <>
      <p>
        Counted as if the rule said nothing more against a point; what a change breaks elsewhere is not counted, and the
        remedies of each point say so.
        {left === 0
          ? ""
          : ` ${countOf(left, "point")} that ${left === 1 ? "fails" : "fail"} because something is not known ${left === 1 ? "is" : "are"} freed by no mending.`}
      </p>
      {inTurn.length === 0 ? null : (
        <Wide label="What to mend one after the other">
          <table>
            <caption>One after the other: each step frees the most further points per rule</caption>
            <thead>
              <tr>
                <th scope="col" class="number">
                  step
                </th>
                <th scope="col">rules to mend</th>
                <th scope="col" class="number">
                  points freed
                </th>
                <th scope="col" class="number">
                  of those would pass
                </th>
                <th scope="col" class="number">
                  freed so far
                </th>
                <th scope="col" class="drawn">
                  freed, of {summary.fail} that fail
                </th>
              </tr>
            </thead>
            <tbody>
              {inTurn.map(({ rules: mended, points, wouldPass, pointsSoFar }, step) => (
                <tr key={mended.join()}>
                  <td class="number">{step + 1}</td>
                  <th scope="row">
                    {mended.map((rule) => (
                      <span key={rule} class="line">
                        {rules.title(rule)} <span class="quiet rule">{rule}</span>
                      </span>
                    ))}
                  </th>
                  <td class="number">{points}</td>
                  <td class="number">{wouldPass}</td>
                  <td class="number">{pointsSoFar}</td>
                  <td class="drawn">
                    <StackedBar
                      counts={{ plain: pointsSoFar, fail: summary.fail - pointsSoFar }}
                      kinds={["plain", "fail"]}
                      most={summary.fail}
                      width={160}
                      height={16}
                      title={`${pointsSoFar} of ${summary.fail}`}
                    />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </Wide>
      )}
    </>
  );
}

function openOf({ undecided, noLimitInForce }: RuleCounts): number {
  return undecided + noLimitInForce;
}

function troubleOf(counts: RuleCounts): number {
  return counts.fail + counts.warn + openOf(counts);
}

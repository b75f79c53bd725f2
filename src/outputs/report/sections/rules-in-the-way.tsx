import type { FreedByRule, RuleCounts, Summary } from "../../../screening/index.js";
import type { RuleIndex } from "../../findings/rule-index.js";
import { markedOutcome } from "../../wording/outcomes.js";
import { StackedBar } from "../charts/stacked-bar.js";
import { FirstFew } from "./first-few.js";
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
  const row = (counts: RuleCounts) => (
    <RuleRow key={counts.rule} counts={counts} freed={freed.get(counts.rule)} most={most} rules={rules} />
  );
  return (
    <FirstFew
      rows={troubling}
      what="rules that stop fewer points"
      table={(rows, name) => (
        <Wide label={name("Rules that stand in the way")}>
          <table>
            <caption>
              Rules by the points they stop; the last two columns count points that this rule alone stops
            </caption>
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
            <tbody>{rows.map(row)}</tbody>
          </table>
        </Wide>
      )}
    />
  );
}

interface RuleRowProps {
  readonly counts: RuleCounts;
  readonly freed: FreedByRule | undefined;
  readonly most: number;
  readonly rules: RuleIndex;
}

function RuleRow({ counts, freed, most, rules }: RuleRowProps) {
  const { rule, fail, warn } = counts;
  const { failToPass = 0, failToWarn = 0, warnToPass = 0 } = freed ?? {};
  return (
    <tr>
      <th scope="row">
        {rules.title(rule)} <span class="quiet rule">{rule}</span>
      </th>
      <td class="number">{fail}</td>
      <td class="number">{warn}</td>
      <td class="number">{openOf(counts)}</td>
      <td class="drawn">
        <StackedBar
          counts={{ fail, warn, undecided: openOf(counts) }}
          kinds={KINDS}
          most={most}
          width={160}
          height={16}
          title={`${fail} fail, ${warn} warn, ${openOf(counts)} undecided`}
        />
      </td>
      <td class="number">{failToPass + warnToPass}</td>
      <td class="number">{failToWarn}</td>
    </tr>
  );
}

function openOf({ undecided, noLimitInForce }: RuleCounts): number {
  return undecided + noLimitInForce;
}

function troubleOf(counts: RuleCounts): number {
  return counts.fail + counts.warn + openOf(counts);
}

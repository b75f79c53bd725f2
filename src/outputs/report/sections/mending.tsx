import type { FreeingStep, Summary } from "../../../screening/index.js";
import type { RuleIndex } from "../../findings/rule-index.js";
import { countOf } from "../../wording/numbers.js";
import { StackedBar } from "../charts/stacked-bar.js";
import { FirstFew } from "./first-few.js";
import { Wide } from "./wide.js";

/** Which rules to mend one after the other. */
export function MendedInTurn({ summary, rules }: { readonly summary: Summary; readonly rules: RuleIndex }) {
  const { inTurn } = summary.freeing;
  const freed = inTurn.at(-1)?.pointsSoFar ?? 0;
  const left = summary.fail - freed;
  const steps = inTurn.map((step, place) => ({ ...step, number: place + 1 }));
  return (
    <>
      <p>
        Counted as if the rule said nothing more against a point; what a change breaks elsewhere is not counted, and the
        remedies of each point say so.
        {left === 0
          ? ""
          : ` ${countOf(left, "point")} that ${left === 1 ? "fails" : "fail"} because something is not known ${left === 1 ? "is" : "are"} freed by no mending.`}
      </p>
      {steps.length === 0 ? null : (
        <FirstFew
          rows={steps}
          what="steps"
          table={(rows, name) => (
            <Wide label={name("What to mend one after the other")}>
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
                  {rows.map((step) => (
                    <StepRow key={step.number} step={step} fail={summary.fail} rules={rules} />
                  ))}
                </tbody>
              </table>
            </Wide>
          )}
        />
      )}
    </>
  );
}

interface StepRowProps {
  readonly step: FreeingStep & { readonly number: number };
  /** Points that fail, before anything is mended. */
  readonly fail: number;
  readonly rules: RuleIndex;
}

function StepRow({ step, fail, rules }: StepRowProps) {
  const { pointsSoFar } = step;
  return (
    <tr>
      <td class="number">{step.number}</td>
      <th scope="row">
        {step.rules.map((rule) => (
          <span key={rule} class="line">
            {rules.title(rule)} <span class="quiet rule">{rule}</span>
          </span>
        ))}
      </th>
      <td class="number">{step.points}</td>
      <td class="number">{step.wouldPass}</td>
      <td class="number">{pointsSoFar}</td>
      <td class="drawn">
        <StackedBar
          counts={{ plain: pointsSoFar, fail: fail - pointsSoFar }}
          kinds={["plain", "fail"]}
          most={fail}
          width={160}
          height={16}
          title={`${pointsSoFar} of ${fail}`}
        />
      </td>
    </tr>
  );
}

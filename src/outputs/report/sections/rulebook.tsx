import { factName } from "../../../facts/index.js";
import type { ModelShown, ResultHead, RuleShown, TableShown } from "../../../screening/index.js";
import type { RuleIndex } from "../../findings/rule-index.js";
import { limitInForceInWords } from "../../wording/facts.js";
import { sourceInWords } from "../../wording/sources.js";
import { valueInWords } from "./model-value.js";

/** The rules applied, with their limits in force and sources; the sensor models and tables they rest on. */
export function Rules({ head }: { readonly head: ResultHead }) {
  return (
    <>
      <details class="printed">
        <summary>All {head.rules.length} rules with limits and sources</summary>
        <div class="rules-told">
          {head.rules.map((rule, place) => (
            <RuleView key={rule.id} rule={rule} number={place + 1} />
          ))}
        </div>
      </details>
      {head.models.map((model) => (
        <ModelView key={model.id} model={model} />
      ))}
      {head.tables.length === 0 ? null : (
        <details class="printed">
          <summary>Tables that the rules look up: {head.tables.length}</summary>
          <div class="rules-told">
            {head.tables.map((table) => (
              <TableView key={table.id} table={table} />
            ))}
          </div>
        </details>
      )}
    </>
  );
}

/** @param number - by which findings on paper refer to the rule */
function RuleView({ rule, number }: { readonly rule: RuleShown; readonly number: number }) {
  return (
    <section class="finding">
      <h3>
        {number}. {rule.title} <span class="quiet rule">{rule.id}</span>
      </h3>
      <ul>
        {rule.appliesWhen === null ? null : <li>asked where {rule.appliesWhen}</li>}
        {rule.limits.map((limit) => {
          const words = limitInForceInWords(limit, rule.judged);
          return <li key={words}>{words}</li>;
        })}
        {rule.undecided === "fail" ? <li>counts as a fail where it is not settled</li> : null}
        {rule.releases === "never" ? <li>no deviation from it is accepted, because somebody can be hurt</li> : null}
        {rule.reviewOverdue ? <li>its limit is overdue for review</li> : null}
        {rule.remedy === "" ? null : <li>what to do: {rule.remedy}</li>}
        {rule.citations.map((citation) => (
          <li key={citation.id}>source: {sourceInWords(citation)}</li>
        ))}
      </ul>
    </section>
  );
}

function ModelView({ model }: { readonly model: ModelShown }) {
  return (
    <details class="printed">
      <summary>
        Sensor model {model.id}: {model.title}
      </summary>
      <table class="narrow">
        <caption>Values of {model.id} in force</caption>
        <thead>
          <tr>
            <th scope="col">what</th>
            <th scope="col">value</th>
            <th scope="col">from</th>
            <th scope="col">stated in</th>
          </tr>
        </thead>
        <tbody>
          {model.facts.map((fact) => (
            <tr key={fact.fact}>
              <th scope="row">{factName(fact.fact)}</th>
              <td>{valueInWords(fact)}</td>
              <td>{fact.from}</td>
              <td>
                {fact.origin.file}, line {fact.origin.line}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <Sources citations={model.citations} />
    </details>
  );
}

function TableView({ table }: { readonly table: TableShown }) {
  return (
    <section class="finding">
      <h3>
        {table.title} <span class="quiet rule">{table.id}</span>
      </h3>
      <p>
        Gives {table.gives.map(factName).join(", ")}
        {table.by.length === 0 ? "" : ` by ${table.by.map(factName).join(", ")}`}; in force from {table.from}
        {table.until === null ? "" : ` until ${table.until}`}
        {table.reviewOverdue ? "; overdue for review" : ""}; {table.origin.file}, line {table.origin.line}
      </p>
      <Sources citations={table.citations} />
    </section>
  );
}

function Sources({ citations }: Pick<RuleShown, "citations">) {
  return (
    <ul>
      {citations.map((citation) => (
        <li key={citation.id}>source: {sourceInWords(citation)}</li>
      ))}
    </ul>
  );
}

/** Rules that could not be asked, each once with the facts that would let it be. */
export function NotAsked({ head, rules }: { readonly head: ResultHead; readonly rules: RuleIndex }) {
  return (
    <>
      {head.surveys.map(({ file, notAsked }) =>
        notAsked.length === 0 ? null : (
          <section key={file}>
            <h3>{file}</h3>
            <ul>
              {notAsked.map(({ rule, model, facts }) => (
                <li key={`${rule} ${model}`}>
                  {rules.title(rule)} <span class="quiet rule">{rule}</span>
                  {model === null ? "" : `, sensor model ${model}`}: needs {facts.map(factName).join(", ")}
                </li>
              ))}
            </ul>
          </section>
        ),
      )}
    </>
  );
}

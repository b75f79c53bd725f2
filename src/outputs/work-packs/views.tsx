import { formatNumber } from "../../base/index.js";
import type { JobValue, PackBasis, SupplyItem } from "../../workpacks/index.js";
import { LaidOver } from "../html/laid-over.js";
import { shownText } from "../html/shown-text.js";
import { countOf } from "../wording/numbers.js";
import { bookInWords } from "../wording/overlays.js";
import { bandText, isKnown, sourceText, valueText } from "./value-words.js";

/** An empty line to write on. */
export function Blank() {
  return <span class="blank" role="img" aria-label="to be filled in" />;
}

/** A value with its name, its band and where it comes from; one that is not known is a line to write on. */
function Value({ value: { name, fact, band }, home }: { readonly value: JobValue; readonly home: Home }) {
  if (!isKnown(fact)) {
    return (
      <>
        {name}: <Blank /> <span class="source">not stated</span>
      </>
    );
  }
  const source = home === null ? "" : sourceText(fact, home.sheet);
  return (
    <>
      {name}: <strong>{shownText(valueText(fact))}</strong>
      {band === null ? null : `, allowed ${bandText(band)}`}
      {source === "" ? null : <span class="source"> ({shownText(source)})</span>}
    </>
  );
}

/** Where the point of the values stands; null where sources are not to be shown. */
type Home = { readonly sheet: string | null } | null;

/** Several values. */
export function Values({ values, home }: { readonly values: readonly JobValue[]; readonly home: Home }) {
  if (values.length === 0) return null;
  return (
    <ul>
      {values.map((value) => (
        <li key={value.fact.fact}>
          <Value value={value} home={home} />
        </li>
      ))}
    </ul>
  );
}

/** Tools, then materials with their amounts. */
export function Supplies({ supplies, of }: { readonly supplies: readonly SupplyItem[]; readonly of: string }) {
  const tools = supplies.filter(({ kind }) => kind === "tool");
  const materials = supplies.filter(({ kind }) => kind === "material");
  return (
    <>
      <p>
        <strong>Tools:</strong> {shownText(tools.map(({ name }) => name).join("; "))}.
      </p>
      <table class="narrow">
        <caption>Materials {of}</caption>
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col" class="number">
              How much
            </th>
            <th scope="col">To be found out</th>
          </tr>
        </thead>
        <tbody>
          {materials.map(({ name, amount, unit, notKnown }) => (
            <tr key={name}>
              <td>{shownText(name)}</td>
              <td class="number">{amount === null ? "" : formatNumber(amount, unit === "m" ? unit : null)}</td>
              <td>{notKnown === 0 ? "" : `and what ${countOf(notKnown, "point")} need without stating it`}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

/** What has to be known before anybody works on a machine. */
export function Cautions({ cautions }: { readonly cautions: readonly string[] }) {
  return (
    <section class="cautions" aria-labelledby="cautions">
      <h2 id="cautions">Before anyone works on a machine</h2>
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </section>
  );
}

/** The verdict's foundations: rulebook, day, digests. */
export function Basis({ basis }: { readonly basis: PackBasis }) {
  const { program, rulebook, surveys, deviations } = basis;
  return (
    <section class="together" aria-labelledby="basis">
      <h2 id="basis">What this rests on</h2>
      <p>
        A verdict is a screening, not a permission. It holds for the survey and the rules named here; if either changes,
        screen again before the work.
      </p>
      <dl class="facts">
        <dt>Rulebook</dt>
        <dd>
          {shownText(`${bookInWords(rulebook)}, set ${basis.set}`)} <code>{rulebook.digest}</code>
        </dd>
        <dt>Limits as of</dt>
        <dd>{basis.asOf}</dd>
        <dt>Run</dt>
        <dd>
          {shownText(`${program.name} ${program.version}`)} <code>{basis.run}</code>
        </dd>
        {surveys.map(({ file, digest }) => (
          <>
            <dt>Survey</dt>
            <dd>
              {shownText(file)} <code>{digest}</code>
            </dd>
          </>
        ))}
        {deviations === null ? null : (
          <>
            <dt>Accepted deviations</dt>
            <dd>
              {shownText(deviations.file)} <code>{deviations.digest}</code>
            </dd>
          </>
        )}
      </dl>
      <LaidOver rulebook={rulebook} />
    </section>
  );
}

import type { ResultHead } from "../../../screening/index.js";
import { LaidOver } from "../../html/laid-over.js";
import { bookInWords } from "../../wording/overlays.js";

/** What the result rests on, with the digests by which it can be proved. */
export function RestsOn({ head }: { readonly head: ResultHead }) {
  const { program, rulebook, site, reading, deviations, surveys } = head;
  const files = [
    ...surveys.map(({ file, digest }) => ({ what: `survey ${file}`, digest })),
    { what: `rulebook ${bookInWords(rulebook)}`, digest: rulebook.digest },
    ...(site.file === null || site.digest === null ? [] : [{ what: `site file ${site.file}`, digest: site.digest }]),
    ...(deviations === null ? [] : [{ what: `deviations ${deviations.file}`, digest: deviations.digest }]),
    ...(reading.columnFile === null
      ? []
      : [{ what: `column file ${reading.columnFile.file}`, digest: reading.columnFile.digest }]),
    ...reading.wordFiles.map(({ file, digest }) => ({ what: `words of the site ${file}`, digest })),
    { what: "the whole run", digest: head.digest },
  ];
  return (
    <>
      <p>
        {program.name} {program.version}, limits as of {head.asOf}
        {reading.options.length === 0 ? "" : `, read with ${reading.options.join(" ")}`}. The same result stands, for
        programs, in the result document of the run.
      </p>
      <dl class="notes">
        {files.map(({ what, digest }) => (
          <div key={what}>
            <dt>{what}</dt>
            <dd>
              SHA-256 <span class="cell">{digest}</span>
            </dd>
          </div>
        ))}
      </dl>
      <LaidOver rulebook={rulebook} />
    </>
  );
}

import type { RulebookShown } from "../../screening/index.js";
import { overlayLines } from "../wording/overlays.js";
import { shownText } from "./shown-text.js";

/** What sites have laid over the rulebook, each change with its reason and who answers for it; nothing where nobody has. */
export function LaidOver({ rulebook }: { readonly rulebook: RulebookShown }) {
  if (rulebook.overlays.length === 0) return null;
  return (
    <>
      <p>
        <strong>Laid over the rulebook</strong>
      </p>
      {overlayLines(rulebook).map(([book, lines]) => (
        <div key={book}>
          <p>{shownText(book)}</p>
          <ul>
            {lines.length === 0 ? <li>nothing that an outcome rests on</li> : null}
            {lines.map((line) => (
              <li key={line}>{shownText(line)}</li>
            ))}
          </ul>
        </div>
      ))}
    </>
  );
}

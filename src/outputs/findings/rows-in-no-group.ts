import type { GroupShown, ResultHead } from "../../screening/index.js";
import { countOf } from "../wording/numbers.js";

type Surveys = Pick<ResultHead, "surveys">;

/** Code of the remark on rows that no group counts. */
const NO_GROUP = "no-group";

/**
 * What is said of rows that no group counts because they do not state its key: whoever reads that a group passes, or finds
 * nothing said of it, must know that rows were left out.
 *
 * @param files - surveys that are told of; null for all
 */
export function rowsInNoGroup({ surveys }: Surveys, files: ReadonlySet<string> | null = null): readonly string[] {
  return surveys
    .filter(({ file }) => files === null || files.has(file))
    .flatMap(({ file, problems }) =>
      problems
        .filter(({ code }) => code === NO_GROUP)
        .map(({ text }) => (surveys.length > 1 ? `${file}: ${text}` : text)),
    );
}

/** The same at a group that may lack rows; empty where all rows state its key. */
export function notCountedIn({ key }: Pick<GroupShown, "key">, { surveys }: Surveys): string {
  const last = key.at(-1)?.fact;
  const saying = surveys.filter(({ problems }) =>
    problems.some(({ code, fact }) => code === NO_GROUP && fact !== null && fact === last),
  );
  if (saying.length === 0) return "";
  return `rows that do not state what these rows share, and may belong here (see the remarks on ${countOf(saying.length, "survey")})`;
}

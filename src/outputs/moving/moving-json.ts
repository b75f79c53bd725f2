import type { Counted, LimitMoved } from "../../moving/index.js";
import { jsonText } from "../json/json-text.js";

/** How the counts move as one JSON document that ends in a line break. */
export function movingJson(moved: LimitMoved): string {
  const { head, rule, entry, place, model, inForce, alsoMoved, points, below, above } = moved;
  const { program, digest, asOf, stage, set, rulebook, site, reading, surveys, skipped } = head;
  const { bound } = place;
  return `${jsonText({
    program,
    digest,
    asOf,
    stage,
    set,
    rulebook,
    site,
    reading,
    surveys: surveys.map((survey) => ({ file: survey.file, digest: survey.digest })),
    skipped,
    rule: { id: rule.id, title: rule.title },
    limit: {
      name: place.name,
      moves: place.moves,
      fact: place.fact,
      boundFact: bound.kind === "fact" ? bound.fact : null,
      model,
      unit: place.unit,
      inForce,
      from: entry.from,
      cites: entry.cites,
      origin: { file: place.at.file, line: place.at.line },
    },
    alsoMoved,
    points,
    from: moved.from,
    to: moved.to,
    step: moved.step,
    steps: moved.steps.map(({ value, inForce: here, changes, ...counted }) => ({
      value,
      inForce: here,
      changes,
      ...counts(counted),
    })),
    stretches: moved.stretches.map(({ counted, ...ends }) => ({ ...ends, ...counts(counted) })),
    pointsBelow: below,
    pointsAbove: above,
  })}\n`;
}

function counts({ rule, points }: Counted): {
  readonly outcomes: Counted["rule"];
  readonly verdicts: Counted["points"];
} {
  return { outcomes: rule, verdicts: points };
}

import { type JobFacts, todo } from "../job-facts.js";
import type { JobLine } from "../pack.js";

const WHERE = ["load_zone_angle", "distance_to_bearing", "surface_temperature"];
/** Said at the head of every job; asked for where it is not known. */
const NAMED = ["component", "bearing_position", "direction"];

/** Finding and marking the place. */
export function placeLines(job: JobFacts): readonly JobLine[] {
  const values = [
    ...NAMED.filter((fact) => !job.isKnown(fact)).map((fact) => job.value(fact)),
    job.value("mounted_on"),
    ...job.known(...WHERE),
  ];
  const find = job.isKnown("photo")
    ? todo(
        "Find the place and compare it with the photo. If it is another one, stop and ask.",
        job.value("photo"),
        ...values,
      )
    : todo(
        "No photo is named: have the place shown by whoever surveyed it.",
        job.value("photo"),
        ...job.known("surveyed_by", "surveyed_on"),
        ...values,
      );
  return [
    find,
    ...(job.isKnown("notes") ? [todo("Mind what the survey notes here.", job.value("notes"))] : []),
    todo("Mark the point, and the measuring direction beside it."),
  ];
}

import { type JobFacts, todo } from "../job-facts.js";
import type { JobLine } from "../pack.js";

const WHERE = ["load_zone_angle", "distance_to_bearing", "surface_temperature"];

/** Finding and marking the place. */
export function placeLines(job: JobFacts): readonly JobLine[] {
  return [
    todo(
      "Find the place and compare it with the photo. If it is another one, stop and ask.",
      ...["component", "bearing_position", "direction", "mounted_on"].map((fact) => job.value(fact)),
      ...job.known(...WHERE),
      job.value("photo", "photo"),
    ),
    ...(job.isKnown("photo")
      ? []
      : [
          todo(
            "No photo is named: have the place shown by whoever surveyed it.",
            ...job.known("surveyed_by", "surveyed_on"),
          ),
        ]),
    ...(job.isKnown("notes") ? [todo("Mind what the survey notes here.", job.value("notes"))] : []),
    todo("Mark the point, and the measuring direction beside it."),
  ];
}

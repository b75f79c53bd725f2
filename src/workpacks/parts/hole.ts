import { cuttingDrillMm, threadDesignated } from "../../quantities/index.js";
import { holdUntil, type JobFacts, todo } from "../job-facts.js";
import type { JobLine, JobValue } from "../pack.js";

const CHIPS: Readonly<Record<string, string>> = {
  "greased-drill": "Grease drill and tap, so that the chips stick to them; wipe them off outside.",
  "magnet-tray": "Lay the magnet tray under the hole before drilling.",
  vacuum: "Hold the vacuum at the hole while drilling and tapping.",
  "stopped-short": "Stop short of breaking through.",
};

/** The drill of the survey, else the usual one for the thread; not known where neither is. */
export function drillOf(job: JobFacts): JobValue {
  const thread = threadDesignated(job.word("thread") ?? "");
  const usual = thread && cuttingDrillMm(thread);
  if (job.isKnown("drill_diameter") || usual === null) return job.value("drill_diameter");
  const source = `usual drill for cutting ${thread?.designation}, ISO 2306 as charts reprint it; the survey states none`;
  return job.usual("drill_diameter", usual, source);
}

/** Drilling and tapping, or looking at the hole that is there. */
export function holeLines(job: JobFacts): readonly JobLine[] {
  const method = job.word("mounting_method");
  if (method === "existing-hole") return existingHole(job);
  return method === "tapped-hole" ? newHole(job) : [];
}

function newHole(job: JobFacts): readonly JobLine[] {
  const drill = drillOf(job);
  return [
    todo(
      "Drilled is only where the wall is as the survey says. Stop at once if chips, sound or feed change, or anything comes out.",
      job.value("behind_wall"),
      job.value("wall_thickness"),
      ...job.known("wall_left"),
    ),
    chipsLine(job),
    ...(drill.fact.value === null
      ? [
          holdUntil(
            "No drill is named, and the thread names none: have it named before drilling.",
            drill,
            job.value("thread"),
          ),
        ]
      : []),
    todo(
      "Drill square to the seat, with a depth stop. The depth counts to the full diameter, without the drill point.",
      ...(drill.fact.value === null ? [] : [drill]),
      job.planned("hole_depth"),
    ),
    ...(job.isKnown("thread")
      ? []
      : [holdUntil("The thread is not stated: take it from the sheet of the sensor before tapping.")]),
    todo(
      "Tap by hand, the last turns with a bottoming tap. The depth counts full turns only.",
      job.value("thread"),
      job.planned("thread_depth"),
    ),
    todo("Clear all chips out, degrease the hole, and turn the bolt in by hand over its whole length."),
  ];
}

function chipsLine(job: JobFacts): JobLine {
  const text = CHIPS[job.word("chip_guard") ?? ""];
  if (text !== undefined) return todo(text, job.value("chip_guard"));
  const open = "No measure is stated that keeps chips out of bearing, winding or gears: agree on one before drilling.";
  return holdUntil(open, job.value("chip_guard"));
}

function existingHole(job: JobFacts): readonly JobLine[] {
  return [
    todo("The hole is there already. Make sure that it is no lifting thread and serves nothing else."),
    todo(
      "Clean it, measure it, and turn the bolt in by hand over its whole length. It is not recut.",
      job.value("thread"),
      job.planned("hole_depth"),
      job.planned("thread_depth"),
    ),
  ];
}

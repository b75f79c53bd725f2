import { holdUntil, type JobFacts, todo } from "../job-facts.js";
import type { JobLine } from "../pack.js";

const THREADS: Readonly<Record<string, string>> = {
  dry: "Threads clean and dry: the torque is meant for dry threads. Coupling grease only as a thin film on the faces.",
  oiled: "Oil the threads: the torque is meant for oiled threads. Coupling grease only as a thin film on the faces.",
  greased: "Grease the threads: the torque is meant for greased threads. A thin film of coupling grease on the faces.",
  locked: "Adhesive for threads on the threads alone, none on the faces. A thin film of coupling grease on the faces.",
};

/** Fitting and tightening the sensor. */
export function fitLines(job: JobFacts): readonly JobLine[] {
  const method = job.word("mounting_method");
  if (method === "magnet" || method === "clamp") {
    return [todo(`Set the sensor on by its ${method}, so that it does not rock.`, job.value("sensor_model"))];
  }
  return [
    todo(
      "Look at the plate of the sensor: is it the model of this point? Write its serial number down.",
      job.value("sensor_model"),
      job.value("sensor_thread"),
    ),
    ...(job.yesNo("threads_match") === false
      ? [
          holdUntil(
            "Hole and sensor have different threads: an adapter stud, or stop.",
            job.value("thread"),
            job.value("sensor_thread"),
          ),
        ]
      : []),
    threadsLine(job),
    todo(
      "Turn in by hand, then tighten with a torque wrench, once and smoothly. The base seats, not the tip of the bolt.",
      job.expected("applied_torque", "target_torque", "torque"),
      ...job.known("model.torque_max", "bolt_class", "bolt_reach"),
    ),
  ];
}

function threadsLine(job: JobFacts): JobLine {
  const text = THREADS[job.word("thread_state") ?? ""];
  if (text !== undefined) return todo(text, job.value("thread_state"));
  const open =
    "It is not stated whether the torque is meant for dry, oiled or greased threads: ask before anything is greased.";
  return holdUntil(open, job.value("thread_state"));
}

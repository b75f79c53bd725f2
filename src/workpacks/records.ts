import { factName, findFact } from "../facts/index.js";
import type { JobFacts } from "./job-facts.js";
import type { JobRecord, JobValue } from "./pack.js";

const ALWAYS = ["installed_on", "installed_by", "sensor_serial"];
const WHEN_WIRED = ["polarity_checked", "unused_sockets_capped", "channel_checked"];
/** Once the machine runs again, warm and steady. */
const BASELINE = [
  "baseline_on",
  "baseline_speed",
  "baseline_load",
  "baseline_warm",
  "baseline_velocity",
  "baseline_acceleration",
  "stopped_velocity",
];
const IN_A_HOLE = new Set(["tapped-hole", "existing-hole"]);

/** Facts that work packs ask to be written down, in the order of the work. */
export const RECORDED: readonly string[] = [
  "installed_on",
  "installed_by",
  "flat_diameter",
  "hole_depth",
  "thread_depth",
  "install_temperature",
  "cure_time",
  "sensor_serial",
  "applied_torque",
  "cable_length",
  ...WHEN_WIRED,
  "voltage_at_sensor",
  ...BASELINE,
];

/** What is measured and checked at a point, and written down. */
export function recordsOf(job: JobFacts): readonly JobRecord[] {
  const method = job.word("mounting_method") ?? "";
  const isTightened = method !== "magnet" && method !== "clamp";
  const asked = new Set([
    ...ALWAYS,
    ...(isTightened ? ["flat_diameter", "applied_torque"] : []),
    ...(IN_A_HOLE.has(method) ? ["hole_depth", "thread_depth"] : []),
    ...(method === "adhesive-pad" ? ["install_temperature", "cure_time"] : []),
    "cable_length",
    ...WHEN_WIRED,
    "voltage_at_sensor",
    ...BASELINE,
  ]);
  return RECORDED.filter((fact) => asked.has(fact)).map((fact) => ({
    fact,
    name: factName(fact),
    unit: findFact(fact)?.unit ?? null,
    whenRunning: BASELINE.includes(fact),
    expected: expectedOf(fact, job),
  }));
}

function expectedOf(fact: string, job: JobFacts): JobValue | null {
  if (fact === "applied_torque") return job.expected(fact, "target_torque");
  if (fact === "voltage_at_sensor") return job.expected(fact, "expected_voltage");
  if (findFact(fact)?.group === "as-built" || !job.isKnown(fact)) return null;
  return findFact(fact)?.kind === "quantity" ? job.planned(fact) : null;
}

import type { JobFacts } from "./job-facts.js";
import type { HoldPoint, JobValue } from "./pack.js";

interface Needed extends Pick<HoldPoint, "kind" | "text"> {
  readonly values: readonly JobValue[];
}

/** Methods for which metal is cut, ground or welded. */
const CUTTING = new Set(["tapped-hole", "adhesive-pad", "welded-pad"]);

/**
 * The permits and hold points of a point, in the order in which they are met. They repeat what the survey says; what
 * it does not say is asked for. They replace no permit system.
 */
export function holdPointsOf(job: JobFacts): readonly Needed[] {
  return [
    isolation(job),
    ...rotor(job),
    ...hotWork(job),
    ...area(job),
    ...enclosure(job),
    ...wall(job),
    ...height(job),
    ...maker(job),
    hold("Before the machine is handed back: guards in place, tools counted, locks taken off by those who set them."),
  ];
}

function isolation(job: JobFacts): Needed {
  return permit(
    "Machine isolated and locked out, stored energy released, proven dead with a tested tester, and unable to start.",
    job.value("isolation_possible"),
  );
}

function rotor(job: JobFacts): readonly Needed[] {
  if (job.yesNo("turns_by_itself") === false) return [];
  return [
    hold(
      "Rotor blocked, so that draught, backflow or weight cannot turn it.",
      ...values(job, "turns_by_itself", "rotor_blockable"),
    ),
  ];
}

function hotWork(job: JobFacts): readonly Needed[] {
  if (!CUTTING.has(job.word("mounting_method") ?? "")) return [];
  const stated = job.value("hot_work_allowed");
  if (job.word("hot_work_allowed") === "forbidden") {
    return [hold("Hot work is forbidden: no grinding, no sparks, the seat is worked by hand.", stated)];
  }
  return [
    permit("Grinding and welding throw sparks: hot work confirmed for the day by whoever issues permits.", stated),
  ];
}

function area(job: JobFacts): readonly Needed[] {
  if (job.word("hazardous_area") === "none") return [];
  const text =
    "Work in a hazardous area: only with the written authorisation of the area's owner, proven free of gas and dust.";
  return [permit(text, ...values(job, "hazardous_area", "sensor_certified"))];
}

function enclosure(job: JobFacts): readonly Needed[] {
  if (job.yesNo("certified_enclosure") !== true) return [];
  const text =
    "The enclosure is certified: nothing is drilled, tapped, ground or welded, and nothing fitted without its holder's consent.";
  return [hold(text, job.value("certified_enclosure"))];
}

function wall(job: JobFacts): readonly Needed[] {
  if (job.word("mounting_method") !== "tapped-hole") return [];
  const text =
    "Before drilling: what lies behind the wall compared with a drawing, or confirmed by somebody who knows the machine.";
  return [hold(text, job.value("behind_wall"))];
}

function height(job: JobFacts): readonly Needed[] {
  if (!job.isKnown("working_height")) {
    return [
      hold("The working height is not stated: look at the place, and have safe access agreed.", ...job.known("access")),
    ];
  }
  if (job.number("working_height") === 0) return [];
  const text =
    "Safe access to the place: the means of access inspected and released where the site's rules ask for it.";
  return [hold(text, ...values(job, "working_height", "access"))];
}

function maker(job: JobFacts): readonly Needed[] {
  if (job.yesNo("under_warranty") !== true) return [];
  const text = "The machine is under warranty: its maker has agreed to the work.";
  return [permit(text, ...values(job, "under_warranty", "maker_consent"))];
}

function values(job: JobFacts, ...facts: readonly string[]): readonly JobValue[] {
  return facts.map((fact) => job.value(fact));
}

function permit(text: string, ...of: readonly JobValue[]): Needed {
  return { kind: "permit", text, values: of };
}

function hold(text: string, ...of: readonly JobValue[]): Needed {
  return { kind: "hold", text, values: of };
}

/** The permits and hold points of a pack: what several points need stands once, with what the survey says of each. */
export function joinedHoldPoints(
  points: readonly { readonly name: string; readonly needed: readonly Needed[] }[],
): readonly HoldPoint[] {
  const joined = new Map<string, { readonly needed: Needed; readonly stated: Map<string, Stated> }>();
  for (const { name, needed } of points) {
    for (const one of needed) {
      const key = `${one.kind} ${one.text}`;
      const known = joined.get(key) ?? { needed: one, stated: new Map<string, Stated>() };
      joined.set(key, known);
      const said = one.values.map(({ fact: { fact, value, lowest, highest } }) => [fact, value, lowest, highest]);
      const same = known.stated.get(JSON.stringify(said)) ?? { points: [], values: one.values };
      same.points.push(name);
      known.stated.set(JSON.stringify(said), same);
    }
  }
  return [...joined.values()].map(({ needed: { kind, text }, stated }) => ({
    kind,
    text,
    stated: [...stated.values()],
  }));
}

interface Stated {
  readonly points: string[];
  readonly values: readonly JobValue[];
}

import { holdUntil, type JobFacts, todo } from "../job-facts.js";
import type { JobLine } from "../pack.js";

/** Methods that sit on a flat, worked face. */
const ON_A_FACE = new Set(["tapped-hole", "existing-hole", "adhesive-pad", "welded-pad", "magnet"]);

const COATING = "Remove the coating down to bright metal, as wide as the seat and no wider.";
const OLD_COATING =
  "Have the make-up of the coating known (lead, chromate) before it is worked dry. Until then: no dry grinding.";

/** What is done to the surface, by the state in which the survey found it. */
const BY_FINISH: Readonly<Record<string, readonly { readonly text: string; readonly hold?: true }[]>> = {
  "bare-machined": [{ text: "The face is machined and bare: clean it, and work it no more than it takes to be flat." }],
  "as-cast": [{ text: "Take the cast skin off down to flat, bright metal." }],
  painted: [{ text: OLD_COATING, hold: true }, { text: COATING }],
  "powder-coated": [{ text: COATING }],
  coated: [{ text: OLD_COATING, hold: true }, { text: COATING }],
  galvanised: [
    { text: "Take the zinc off down to bright steel. Ventilate: hot zinc gives off fumes that must not be breathed." },
  ],
  rusty: [{ text: "Take the rust off down to bright metal." }],
  oily: [{ text: "Degrease the spot first, and let the solvent dry before anything throws sparks." }],
  insulated: [
    {
      text: "Have the make-up of the lagging known before it is cut: old lagging may hold fibres that must not be breathed.",
      hold: true,
    },
    { text: "Take the lagging off the spot, and have it closed round the sensor afterwards." },
  ],
  rubber: [{ text: "Take the rubber off down to bright metal." }],
};

/** How the spot is worked where sparks are forbidden, and where they are not. */
function sparksLine(job: JobFacts): JobLine {
  if (job.word("hot_work_allowed") === "forbidden") {
    return todo("Work by hand and without sparks: hot work is forbidden here.", job.value("hot_work_allowed"));
  }
  return todo(
    "Grind or spot-face only under what the permits of this pack say of sparks.",
    ...job.known("hot_work_allowed"),
  );
}

/** Preparing the seat. */
export function seatLines(job: JobFacts): readonly JobLine[] {
  if (!ON_A_FACE.has(job.word("mounting_method") ?? "")) return [];
  const finish = job.word("surface_finish");
  const steps = (finish === null ? undefined : BY_FINISH[finish]) ?? [
    {
      text: "The survey does not say what is on the surface. Look, write it down, and stop if it is a coating.",
      hold: true,
    },
  ];
  return [
    ...steps.map(({ text, hold }, i): JobLine => {
      const values = i === 0 ? [job.value("surface_finish"), ...job.known("surface_material", "paint_thickness")] : [];
      return hold ? holdUntil(text, ...values) : todo(text, ...values);
    }),
    sparksLine(job),
    todo(
      "Measure the flat. The whole base of the sensor, or of the pad, has to lie on it.",
      job.planned("flat_diameter", "diameter of the flat"),
      ...job.known("model.seat_diameter_min", "surface_radius"),
      ...(job.isKnown("roughness") ? [job.planned("roughness")] : []),
    ),
  ];
}

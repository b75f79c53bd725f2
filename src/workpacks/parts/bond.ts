import { holdUntil, type JobFacts, todo } from "../job-facts.js";
import type { JobLine } from "../pack.js";

/** Metals that shed graphite and dust. */
const CAST_IRON = new Set(["grey-cast-iron", "ductile-iron"]);

/** Bonding or welding a pad. */
export function bondLines(job: JobFacts): readonly JobLine[] {
  const method = job.word("mounting_method");
  if (method === "adhesive-pad") return bonded(job);
  return method === "welded-pad" ? welded(job) : [];
}

function bonded(job: JobFacts): readonly JobLine[] {
  const iron = CAST_IRON.has(job.word("wall_metal") ?? "");
  return [
    todo(
      iron
        ? "Degrease, abrade, and degrease again: graphite and dust of cast iron spoil the bond."
        : "Degrease, abrade, and wipe clean. Do not touch the face any more.",
      ...job.known("surface_material"),
    ),
    todo(
      "No solvent on a surface as hot as its flash point.",
      job.value("solvent_flash_point"),
      ...job.known("surface_temperature"),
    ),
    ...(job.isKnown("adhesive")
      ? []
      : [
          holdUntil(
            "The adhesive is not stated: have it named, with its sheet at hand, before bonding.",
            job.value("adhesive"),
          ),
        ]),
    todo(
      "Measure the surface, write its temperature down, and bond only at or above the least temperature of the adhesive.",
      job.value("install_temperature", "surface temperature planned for"),
      ...job.known("table.bond_temperature_min"),
    ),
    todo(
      "Bond the pad, press it, and write down the time.",
      ...job.known("adhesive"),
      ...job.known("pad_gap", "adhesive_gap_max"),
      ...(job.isKnown("adhesive_gap_max") ? [] : job.known("table.bond_gap_max")),
    ),
    todo(
      "Wait before tightening. On a surface colder than planned ask the sheet of the adhesive: it takes longer.",
      job.planned("cure_time", "waiting time planned"),
      ...job.known("adhesive_set_time", "adhesive_set_temperature", "waiting_time"),
    ),
    todo("Hold the pad while tightening, so that the bond is not sheared.", ...job.known("bond_strength")),
  ];
}

function welded(job: JobFacts): readonly JobLine[] {
  return [
    holdUntil(
      "Welding only with the agreement of the machine's maker, by a procedure of the site and a qualified welder.",
      job.value("welding_agreed"),
    ),
    todo("Clamp the earth close to the pad, so that no current runs through a bearing."),
    todo("Let the spot cool down before the sensor is fitted."),
  ];
}

import type { BlankTexts } from "./blank-texts.js";

/** What a blank survey says of wall, hole, thread, bolt and bond in English. */
export const FIXING_ENGLISH: Pick<BlankTexts, "advice" | "words"> = {
  advice: {
    highest_frequency:
      "Highest frequency that is to be seen at this point, from the plan of the measurement; of gears and blades several times their meshing or passing frequency.",
    wall_thickness: "Thickness of the metal under the sensor, from the drawing or measured with ultrasound.",
    behind_wall:
      "What lies on the other side of the wall, from the drawing or the maker. Where nobody knows, say so; then nobody drills.",
    surface_radius:
      "Radius of the surface where it is curved, from the drawing or with a gauge. On a flat surface the cell stays empty.",
    roughness: "Roughness Ra of the finished seat, from the drawing or by a comparison specimen.",
    surface_temperature: "Highest temperature of the surface in operation, not on the day of the survey.",
    install_temperature:
      "Lowest temperature that the surface has while the sensor is fitted, with the machine at rest.",
    certified_enclosure:
      "Yes if the housing carries a certificate for explosive atmospheres (Ex d); look at its plate.",
    thread: "Thread of the hole, such as M6 or 1/4-28 UNF.",
    sensor_thread: "Thread of the sensor or of its stud, from its sheet, such as M6 or 1/4-28 UNF.",
    drill_diameter: "Diameter of the drill for the hole before it is tapped, from the chart for the thread.",
    bolt_reach: "How far the bolt stands out of the base of the sensor, and so reaches into the hole.",
    bolt_class:
      "Property class of the bolt as marked on its head or stated in the sheet of the sensor, such as 8.8 or A2-70.",
    thread_state: "What is on the threads when the sensor is tightened: nothing, oil, grease, or a locking adhesive.",
    chip_guard: "How chips are kept out of bearing, winding and gears while the hole is drilled and tapped.",
    adhesive: "Kind of adhesive under the pad, from its sheet; a kind that is not in the list is entered as other.",
    adhesive_set_time:
      "Time that the sheet of the adhesive asks for before the bond is loaded, at the temperature of the surface.",
    adhesive_gap_max: "Greatest gap that the adhesive fills, from its sheet.",
    welding_agreed: "Yes if the maker of the machine has agreed in writing that a pad is welded on at this place.",
  },
  words: {
    behind_wall: {
      solid: "solid metal",
      air: "air",
      oil: "oil",
      "water-jacket": "water jacket",
      pressure: "pressure",
      windings: "winding",
      unknown: "unknown",
    },
    bolt_class: {
      "4.6": "4.6",
      "4.8": "4.8",
      "5.6": "5.6",
      "5.8": "5.8",
      "6.8": "6.8",
      "8.8": "8.8",
      "9.8": "9.8",
      "10.9": "10.9",
      "12.9": "12.9",
      "A2-50": "A2-50",
      "A2-70": "A2-70",
      "A2-80": "A2-80",
      "A4-50": "A4-50",
      "A4-70": "A4-70",
      "A4-80": "A4-80",
      "A4-100": "A4-100",
    },
    thread_state: {
      dry: "dry",
      oiled: "oiled",
      greased: "greased",
      locked: "threadlocker",
    },
    adhesive: {
      "two-part-epoxy": "two-part epoxy",
      "heat-resistant-epoxy": "heat-resistant epoxy",
      "two-part-acrylic": "two-part acrylic",
      instant: "instant adhesive",
      polyurethane: "polyurethane adhesive",
      other: "other",
    },
    chip_guard: {
      none: "no measure",
      "greased-drill": "greased drill",
      "magnet-tray": "magnet tray",
      vacuum: "vacuum",
      "stopped-short": "stop before breakthrough",
    },
  },
};

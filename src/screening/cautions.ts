/**
 * What goes with every output that leads to work on a machine. Basis: the duties that site rules, permit systems
 * and machine safety law put on such work, as common practice states them; they replace none of those.
 */
export const CAUTIONS: readonly string[] = [
  "A verdict is a screening, not a permission. Local codes, the site's permit system and competent or licensed persons decide what is done.",
  "Isolate the machine, lock it out, and prove with a tested tester that it is dead and cannot start. Release stored energy (pressure, springs, weight, the capacitors of drives) and block rotors that can turn by themselves.",
  "Know what lies behind the wall (oil, pressure, water, a winding) before anyone drills.",
  "Wear eye protection and use guards for drilling, grinding and brushing. Sparks need a hot-work permit where they are a hazard.",
  "Old paint may hold lead or chromate, and old lagging or gaskets asbestos: no dry grinding and no stripping until their make-up is known.",
  "Adhesives and solvents need ventilation, gloves and no source of ignition.",
  "Mind hot surfaces, safe access at height, and strong magnets near implants.",
  "No work where an explosive atmosphere can occur without the written authorisation of the site, with the place proven free of gas and dust; an area that nobody has classified is not one without hazard.",
  "Switch the supply off before connecting. Close unused sockets and keep cables away from rotating parts.",
  "Put guards back and count the tools before the machine is released.",
];

/** The same in few words, for tables whose rows are handed on one by one. */
export const CAUTION_OF_A_ROW = "a screening, not a permission";

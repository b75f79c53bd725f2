import type { BlankTexts } from "./blank-texts.js";

/** What a blank survey says of precautions, cable, supply and fitting in English. */
export const WIRING_ENGLISH: Pick<BlankTexts, "advice" | "words"> = {
  advice: {
    isolation_possible:
      "Yes if the machine can be switched off, locked and proven dead for the work; no if there is no lockable isolator.",
    hot_work_allowed:
      "Whether grinding and welding are allowed at this place, need a permit, or are forbidden, and drilling where the site counts it as well. The site decides.",
    hazardous_area:
      "Zone or division by the plan of hazardous areas, or none. An empty cell does not mean that there is no hazard.",
    sensor_certified:
      "Yes if the certificate of the sensor names this zone or division, with gas group and temperature class.",
    solvent_flash_point: "Flash point of the agent that cleans the surface before bonding, from its safety data sheet.",
    under_warranty: "Yes if the maker of the machine still answers for it.",
    maker_consent: "Yes if the maker of the machine has agreed in writing to drilling or welding here.",
    turns_by_itself: "Yes if draught, backflow or weight can turn the rotor while the drive is isolated.",
    rotor_blockable: "Yes if there is a means of holding the rotor still for the time of the work.",
    working_height: "Height of the point above the floor or platform from which the work is done.",
    wetting:
      "Water at the place in the worst case, cleaning included: dry, splashes or rain, hose, high pressure or steam, or under water.",
    ip_rating:
      "Degree of protection of sensor, cable and connector as mated, from their sheets, such as IP67 or IP66/IP68.",
    ambient_max:
      "Highest temperature of the air along the cable and at the sensor, in summer and with the machine running.",
    supply_voltage_min: "Lowest voltage that the supply gives at its own terminals, from its sheet or setting.",
    sensor_current: "Highest steady current of one sensor, from its sheet.",
    sensors_on_supply: "How many sensors this supply feeds in all, this one included.",
    supply_rating: "Rated output current of the supply, from its plate, at the temperature in its cabinet.",
    cable_length: "Length of the cable from the supply to the sensor, one way, with all bends and drops.",
    conductor_size: "Cross-section of one conductor, from the sheet or the print on the cable.",
    power_cable_distance: "Least distance to power cables over the stretch in which the cables run side by side.",
    unused_sockets_capped: "Yes if every unused socket of the sensor and of its boxes wears its cap.",
    polarity_checked:
      "Yes if plus and minus at the connector were measured and found right; no if not, or if not measured.",
    supply_separation: "What is marked on the supply: SELV, PELV or FELV, or that it has no safe separation.",
    starting_current: "Current of one sensor while it starts, from its sheet.",
    conductor_class:
      "How the conductors are made: one solid wire (class 1), stranded (class 2), or flexible of fine wires (classes 5 and 6).",
    conductor_temperature:
      "Highest temperature that the conductors reach. May stay empty where the highest ambient temperature is stated.",
    cable_diameter: "Outer diameter of the cable, from its sheet or with a caliper.",
    bend_radius: "Radius of the tightest bend on the way of the cable, on its inner side.",
    strain_relief_distance: "Length of cable from the sensor to the first clamp or tie that holds it.",
    cable_temperature_max: "Highest temperature that the jacket of the cable bears, from its sheet.",
    screen_earthed: "At which end the screen of the cable is, or will be, connected to earth.",
    cable_route_clear: "Yes if the cable crosses no walkway and is out of reach of rotating parts; no if not.",
    channel_checked:
      "Yes if a tap on the machine in the stated direction moved the channel of this point; no if another one moved.",
  },
  words: {
    hot_work_allowed: { allowed: "allowed", "permit-needed": "permit needed", forbidden: "forbidden" },
    hazardous_area: {
      none: "non-hazardous area",
      "zone-0": "zone 0",
      "zone-1": "zone 1",
      "zone-2": "zone 2",
      "zone-20": "zone 20",
      "zone-21": "zone 21",
      "zone-22": "zone 22",
      "division-1": "Division 1",
      "division-2": "Division 2",
    },
    wetting: {
      dry: "dry",
      splash: "splash",
      jets: "water jet",
      "hot-high-pressure": "high pressure cleaning",
      submerged: "submerged",
    },
    supply_separation: { selv: "SELV", pelv: "PELV", felv: "FELV", none: "no separation" },
    conductor_class: { solid: "solid", stranded: "stranded rigid", flexible: "flexible" },
    screen_earthed: {
      "supply-end": "cabinet end",
      "sensor-end": "sensor end",
      "both-ends": "both ends",
      nowhere: "nowhere",
    },
  },
};

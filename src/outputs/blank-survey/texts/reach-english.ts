import type { FieldTexts } from "./blank-texts.js";

/** Fields on motor, bearing and support, on how far the sensor reaches, and on the bond, in English. */
export const REACH_ENGLISH: FieldTexts = {
  advice: {
    pole_count:
      "Poles of the motor (not pairs), from its plate or its sheet; a motor of about 1480 r/min at 50 Hz has 4.",
    mains_frequency: "Frequency of the mains that feeds the motor; behind an inverter the cell stays empty.",
    speed_taken_from:
      "Which shaft of the machine gives the speed signal, and whether the ratio to the shaft of this point is written down.",
    step_named:
      "Yes if the measurement is taken in one step of speed and load that has a name and is written in the order.",
    velocity_of_interest:
      "Lowest vibration velocity that is to be told from nothing at this point, r.m.s., by the person who will read the values.",
    accepted_error:
      "By how much per cent a reading at the top of the band may be wrong; the person who reads the values decides it.",
    bearing_elements: "Balls or rollers in one row of the bearing, from its sheet or counted.",
    element_diameter: "Diameter of the balls, or mean diameter of the rollers, from the sheet of the bearing.",
    pitch_diameter:
      "Diameter of the circle through the middles of the balls or rollers, from the sheet of the bearing.",
    contact_angle:
      "Contact angle of the bearing, from its sheet; 0 for deep-groove ball and cylindrical roller bearings.",
    support_stiffness:
      "Rigid if the machine stands on concrete or a stiff frame, flexible if on springs, rubber or a light frame.",
    shaft_height: "Height of the shaft of the motor above its feet; it is the number in the frame size.",
    moving_mass:
      "Mass of the part that shakes with the point, such as a bearing cover or a light housing, not of the whole machine.",
    mounted_resonance:
      "Resonance of the sensor as it is mounted here, measured with a tap or a shaker; empty if nobody measured it.",
    mount_mass: "Mass of pad, adapter and cable end together; 0 if the sensor sits on the machine itself.",
    adhesive_set_temperature: "Temperature for which the sheet of the adhesive states the waiting time.",
    bond_strength:
      "Shear strength that the bond has reached when the sensor is tightened, from the sheet of the adhesive.",
    pad_held: "Yes if the pad is held with a spanner while the sensor on it is tightened.",
    hole_tilt:
      "Angle between the hole and the perpendicular of the ground area, by a square or the tilt of a test bolt.",
    drip_loop: "Yes if the cable hangs in a loop below the connector, so that water drips off before it gets there.",
  },
  words: {
    speed_taken_from: {
      "fastest-shaft": "fastest shaft",
      "ratio-stated": "ratio stated",
      "other-shaft": "other shaft",
    },
    support_stiffness: { rigid: "rigid", flexible: "flexible" },
  },
};

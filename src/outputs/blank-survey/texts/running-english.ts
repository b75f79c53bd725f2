import type { FieldTexts } from "./blank-texts.js";

/** Fields on how the machine runs, where the point lies and what was measured first, in English. */
export const RUNNING_ENGLISH: FieldTexts = {
  advice: {
    criticality: "How much depends on the machine: A most, C least. The owner of the plant decides it.",
    has_standby: "Yes if a second machine stands installed and can take over; a spare on a shelf does not count.",
    replacement_planned:
      "Yes if the machine is to be scrapped, replaced or rebuilt before fixed points have paid for themselves.",
    access:
      "When and how a person can reach the point: while the machine runs, only when it is stopped, from a scaffold, or not at all.",
    power: "Rated power of the machine, from the rating plate; of a driven machine, that of its driver.",
    duty: "How the machine runs as a rule. Reversing means that the shaft turns both ways or swings.",
    shortest_run:
      "Shortest time for which the machine runs steadily without a break, from the operators or from the control system.",
    load_steady: "Yes if the load stays the same while the machine runs; no if it follows batches, level or demand.",
    speed_change:
      "By how much the speed changes while one record is taken, in per cent of the speed, from a trend of the drive.",
    evaluation:
      "What will be made of the signal: its overall level is trended, spectra are taken, or a record is taken on a trigger.",
    low_band_wanted:
      "Yes if the cage of a rolling bearing or a belt is to be seen; both lie below the turning frequency.",
    spectrum_lines: "Number of lines of the spectrum, from the settings of the measurement.",
    averages: "How many records are averaged for one result, from the settings of the measurement; 1 if none are.",
    settling_time:
      "Time from switching on, or from the start of the machine, until sensor and filters have settled; from their sheets.",
    shaft_orientation:
      "How the shaft lies in the machine. On a vertical shaft the axial direction is the vertical one.",
    drive_type:
      "How the power comes to this shaft: coupled directly, by belt, gears or chain, or with the machine on the motor shaft.",
    belt_pull: "Where the belt pulls: look from the shaft of the point to the other pulley.",
    bearing_type: "What carries the shaft at this point, from the drawing or the list of spare parts.",
    gear_teeth: "Teeth of the wheel on the shaft of this bearing, from the drawing or the plate of the gearbox.",
    blade_count: "Blades of the fan or vanes of the impeller on this shaft, from the drawing or counted.",
    highest_frequency:
      "Upper end of the spectrum that is to be measured at this point, from the settings of the measurement.",
    load_zone_angle:
      "Angle round the shaft between the point and the direction of the load: down for weight, toward the pull for a belt.",
    distance_to_bearing: "Shortest way through the metal from the bearing to the middle of the sensor.",
    joints_in_path: "Joints that the vibration crosses between bearing and sensor; bearing to housing counts as one.",
    soft_layer: "Yes if a gasket, rubber, a loose part or an air gap lies between the bearing and the sensor.",
    axis_deviation: "Angle between the axis of the sensor and the stated direction, by spirit level or protractor.",
    local_resonance: "Lowest peak that a tap test beside the point shows, with the machine stopped and locked out.",
    baseline_speed: "Speed of the shaft while the first values were taken.",
    baseline_warm: "Yes if the machine was at its usual temperature and run in when the first values were taken.",
    baseline_records: "How many records were taken for the first values, one after another.",
    baseline_spread: "Difference of the highest and the lowest of these records, in per cent of their mean.",
    stopped_velocity: "Overall vibration velocity with this machine stopped and its neighbours running; r.m.s. value.",
    handheld_velocity:
      "Overall vibration velocity taken by hand at the same spot and at the same time; r.m.s. value over the same band.",
    full_scale_velocity:
      "Highest vibration velocity that the measurement can show, from the settings or the sheet of the sensor.",
  },
  words: {
    criticality: { A: "A", B: "B", C: "C" },
    access: { running: "while running", "stopped-only": "stopped only", scaffold: "scaffold", none: "no access" },
    duty: {
      continuous: "continuous",
      intermittent: "intermittent",
      standby: "standby",
      "short-time": "short-time",
      reversing: "reversing",
    },
    evaluation: { overall: "overall level", spectrum: "spectrum", triggered: "triggered record" },
    shaft_orientation: { horizontal: "horizontal shaft", vertical: "vertical shaft", inclined: "inclined" },
    drive_type: {
      direct: "direct coupled",
      belt: "belt",
      gear: "gear",
      chain: "chain",
      "close-coupled": "close coupled",
    },
    belt_pull: { horizontal: "horizontal", vertical: "vertical", inclined: "inclined" },
    bearing_type: { rolling: "rolling bearing", plain: "plain bearing" },
  },
};

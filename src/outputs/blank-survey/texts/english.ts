import type { BlankTexts } from "./blank-texts.js";
import { FIXING_ENGLISH } from "./fixing-english.js";
import { WIRING_ENGLISH } from "./wiring-english.js";

/** The blank survey in English. */
export const ENGLISH: BlankTexts = {
  sheets: { survey: "Survey", legend: "Legend", lists: "Lists" },
  title: {
    proposed: "Survey of proposed places for permanently wired vibration sensors",
    installed: "Survey of permanently wired vibration sensors as installed",
  },
  howTo: [
    "One row per point. Click on a cell to see what is meant and how to find it; the sheet Legend says the same on paper.",
    'What is not known stays empty or gets "-" or "tbc": the rule that needs it then stays undecided. Please do not guess.',
  ],
  legend: {
    title: "What each column means",
    columns: ["Column", "What is meant, and how to find or measure it", "What the cell takes"],
    place: "{heading}, column {letter}",
    examples: "Example of one filled row. It is an example, not a point; it is not read.",
    cautions: "Before anyone works on a machine",
  },
  takes: {
    number: "a number in {unit}, from {lowest} to {highest}",
    count: "a whole number, from {lowest} to {highest}",
    words: "one of: {words}",
    date: "a date, such as 2026-03-27",
    text: "text",
  },
  checks: {
    title: "Please check this value",
    number:
      'A number from {lowest} to {highest} is expected here ({unit}). If it is not known, leave the cell empty or write "-" or "tbc".',
    words: 'Please choose a word of the list. If the answer is not known, leave the cell empty or write "-" or "tbc".',
    date: 'A date is expected here, such as 2026-03-27. If it is not known, leave the cell empty or write "-" or "tbc".',
  },
  notKnown: 'Not known: leave it empty, or "-" or "tbc".',
  noAdvice: "Write what was found on site. What is not known stays empty.",
  listsTitle: "Words of the drop-down lists; please leave this sheet as it is",
  footer: "a screening, not a permission",
  yesNo: { yes: "yes", no: "no" },
  units: {},
  headings: { flat_diameter: "Flat diameter" },
  advice: {
    point_id: "Name of the measurement point. It must occur only once in the whole survey.",
    asset_tag:
      "Tag of the machine as on its plate or in the maintenance system. It is kept as typed, zeros in front too.",
    machine_name: "Name of the machine as the plant calls it.",
    machine_type:
      "What the machine as a whole is: for a pump with its motor, pump. The part under the sensor has a column of its own.",
    surveyed_by: "Initials of whoever looked at the point on site.",
    surveyed_on: "Day on which the point was looked at on site.",
    photo: "Number or file name of a photo that shows the place and what lies around it.",
    notes: "Anything that has no column of its own. It is kept for people; no rule reads it.",
    nominal_speed:
      "Speed of the shaft that turns in this bearing, from the rating plate. Behind a gearbox, belt or chain it is not the speed of the motor.",
    lowest_speed:
      "Slowest speed at which this shaft runs steadily, from the settings of the drive or from the process. At fixed speed the cell may stay empty.",
    highest_speed:
      "Highest speed at which this shaft runs steadily, from the settings of the drive or from the process. At fixed speed the cell may stay empty.",
    variable_speed:
      "Yes if a frequency converter or another drive changes the speed in operation; no if the speed is fixed.",
    speed_reference:
      "Speed signal that is or will be wired to the measurement: one pulse per turn, several pulses, an analogue signal, or a value from the drive or control system.",
    component: "Part of the machine set on which the sensor will sit.",
    bearing_position:
      "Bearing that the point belongs to. The drive end is the side of the coupling or pulley through which the power passes.",
    direction: "Direction in which the sensor measures. Axial is along the shaft, radial is across it.",
    mounted_on:
      "What the sensor will sit on. Knock on it: a cover, guard or fin sounds thin and does not show how the bearing vibrates.",
    surface_material:
      "Material of the wall under the sensor, from the drawing or a casting mark. A magnet holds on iron and plain steel, not on aluminium.",
    surface_finish: "State of the surface as found today, before anything is ground or cleaned.",
    flat_diameter:
      "Diameter of the largest circle that lies flat and solid on the surface, ground or free to be ground. Measure across the narrowest width.",
    sensor_model:
      "Model of the sensor, by its name in the rulebook. While it is empty, the limits that depend on the model stay undecided.",
    mounting_method: "How the sensor, or the pad under it, will be fixed to the machine.",
    thread_depth:
      "Depth of the full thread, from the finished surface to the last complete turn. It is less than the depth of the hole.",
    hole_depth:
      "Depth of the hole to its full diameter, from the finished surface, without the cone of the drill point.",
    target_torque: "Torque with which the sensor will be tightened, as planned; not that of the bolts of the machine.",
    cure_time:
      "Time from bonding the pad to tightening the sensor. The sheet of the adhesive gives it for the temperature on site.",
    supply_voltage:
      "Voltage that will feed the sensor, from the plan or the plate of its supply; not that of the motor.",
    supply_kind: "Whether that supply gives direct or alternating current. Look at the output side of the supply.",
    installed_on: "Day on which the sensor was mounted.",
    installed_by: "Initials of whoever mounted the sensor.",
    applied_torque: "Torque with which the sensor was really tightened, as set or read on the torque wrench.",
    voltage_at_sensor:
      "DC voltage at the connector of the sensor while the sensor is running, measured by a competent person.",
    sensor_serial: "Serial number on the body of the sensor, with all zeros in front.",
    baseline_velocity:
      "First overall vibration velocity after mounting, at normal running; r.m.s. value, not the peak.",
    baseline_acceleration:
      "First overall vibration acceleration after mounting, at normal running; r.m.s. value. 1 g is 9.81 m/s².",
    baseline_load: "Load of the machine while the first values were taken, in per cent of its rated load.",
    baseline_on: "Day on which the first values were taken.",
    ...FIXING_ENGLISH.advice,
    ...WIRING_ENGLISH.advice,
  },
  words: {
    machine_type: {
      pump: "pump",
      fan: "fan",
      motor: "electric motor",
      gearbox: "gearbox",
      compressor: "compressor",
      agitator: "agitator",
      conveyor: "conveyor",
      mill: "mill",
      turbine: "turbine",
      generator: "generator",
      centrifuge: "centrifuge",
      roll: "roll",
    },
    component: {
      motor: "motor",
      gearbox: "gearbox",
      pump: "pump",
      fan: "fan",
      compressor: "compressor",
      "bearing-housing": "bearing housing",
      roll: "roll",
      other: "other",
    },
    bearing_position: {
      "drive-end": "drive end",
      "non-drive-end": "non-drive end",
      "input-drive-side": "input shaft DE",
      "output-drive-side": "output shaft DE",
      intermediate: "intermediate shaft",
      thrust: "thrust bearing",
    },
    direction: {
      horizontal: "horizontal",
      vertical: "vertical",
      axial: "axial",
      radial: "radial",
      triaxial: "triaxial",
    },
    variable_speed: { yes: "yes", no: "no" },
    speed_reference: {
      none: "no signal",
      "once-per-turn": "once per turn",
      pulses: "multiple pulses",
      analogue: "analogue signal",
      network: "from drive",
      unspecified: "available",
    },
    mounted_on: {
      "bearing-housing": "bearing housing",
      casing: "casing",
      "cooling-fin": "cooling fin",
      "fan-cover": "fan cover",
      guard: "guard",
      foot: "foot",
      pipe: "pipe",
    },
    surface_material: {
      "grey-cast-iron": "grey cast iron",
      "ductile-iron": "ductile iron",
      "carbon-steel": "carbon steel",
      "austenitic-stainless": "stainless steel",
      "ferritic-stainless": "ferritic stainless steel",
      "cast-steel": "cast steel",
      aluminium: "aluminium",
      bronze: "bronze",
      "sheet-metal": "sheet metal",
      plastic: "plastic",
    },
    surface_finish: {
      "bare-machined": "machined",
      "as-cast": "as cast",
      painted: "painted",
      "powder-coated": "powder coated",
      galvanised: "galvanised",
      rusty: "rusty",
      oily: "oily",
      insulated: "insulated",
      rubber: "rubber lined",
      coated: "coated otherwise",
    },
    mounting_method: {
      "tapped-hole": "tapped hole",
      "adhesive-pad": "adhesive pad",
      "welded-pad": "welded pad",
      magnet: "magnet",
      clamp: "clamp",
      "existing-hole": "existing hole",
    },
    supply_kind: { dc: "DC", ac: "AC" },
    ...FIXING_ENGLISH.words,
    ...WIRING_ENGLISH.words,
  },
  example: { machine_name: "Feed water pump 1", notes: "pipe in front of the housing, 120 mm free" },
  cautions: [
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
  ],
};

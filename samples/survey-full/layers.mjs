/**
 * What a good point looks like: values by the id of the fact, in the units of the catalogue, from the whole site down
 * to what was built. A machine, a part of it and a single deviation each write over what stands here.
 */

/** Holds for every point unless something says otherwise. */
export const EVERYWHERE = {
  has_standby: "no",
  replacement_planned: "no",
  access: "stopped-only",
  variable_speed: "no",
  speed_reference: "none",
  duty: "continuous",
  load_steady: "yes",
  evaluation: "spectrum",
  low_band_wanted: "no",
  averages: 4,
  settling_time: 5,
  shaft_orientation: "horizontal",
  drive_type: "direct",
  bearing_type: "rolling",
  joints_in_path: 1,
  soft_layer: "no",
  mounted_on: "bearing-housing",
  sensor_model: "baseline",
  isolation_possible: "yes",
  hot_work_allowed: "allowed",
  hazardous_area: "none",
  certified_enclosure: "no",
  working_height: 1.2,
  under_warranty: "no",
  turns_by_itself: "no",
  wetting: "splash",
  ip_rating: "IP67",
  ambient_max: 40,
  supply_voltage: 24,
  supply_voltage_min: 23,
  supply_kind: "dc",
  supply_separation: "selv",
  sensor_current: 25,
  starting_current: 60,
  supply_rating: 1300,
  conductor_size: 0.75,
  conductor_class: "flexible",
  conductor_temperature: 70,
  cable_diameter: 6,
  cable_temperature_max: 90,
  screen_earthed: "supply-end",
  cable_route_clear: "yes",
  drip_loop: "yes",
  support_stiffness: "rigid",
  shaft_height: 225,
  moving_mass: 140,
  bearing_elements: 9,
  element_diameter: 17,
  pitch_diameter: 70,
  contact_angle: 0,
  velocity_of_interest: 0.7,
  accepted_error: 12,
  next_outage: new Date("2026-12-14T00:00:00Z"),
};

const IN_A_HOLE = {
  surface_material: "grey-cast-iron",
  surface_finish: "bare-machined",
  behind_wall: "solid",
  roughness: 1.6,
  thread: "M6",
  sensor_thread: "M6",
  thread_depth: 11,
  hole_depth: 16,
  drill_diameter: 5,
  bolt_reach: 10,
  bolt_class: "8.8",
  thread_state: "oiled",
  target_torque: 5,
  chip_guard: "magnet-tray",
  hole_tilt: 0.5,
  mount_mass: 0,
  mounted_resonance: 18000,
};

/** By how the sensor is fixed. */
export const BY_METHOD = {
  "tapped-hole": IN_A_HOLE,
  "existing-hole": IN_A_HOLE,
  "adhesive-pad": {
    surface_material: "carbon-steel",
    surface_finish: "bare-machined",
    target_torque: 5,
    cure_time: 120,
    adhesive: "two-part-epoxy",
    adhesive_set_time: 60,
    adhesive_gap_max: 0.5,
    install_temperature: 22,
    solvent_flash_point: 62,
    adhesive_set_temperature: 20,
    bond_strength: 12,
    pad_held: "yes",
    mount_mass: 35,
    mounted_resonance: 15000,
  },
  magnet: { surface_material: "carbon-steel", surface_finish: "bare-machined", target_torque: 5 },
  clamp: {
    surface_material: "carbon-steel",
    surface_finish: "bare-machined",
    target_torque: 5,
    mount_mass: 120,
    mounted_resonance: 7000,
  },
  "welded-pad": {
    surface_material: "carbon-steel",
    surface_finish: "bare-machined",
    behind_wall: "solid",
    target_torque: 5,
    welding_agreed: "yes",
    mount_mass: 60,
    mounted_resonance: 18000,
  },
};

/** Of a point that is fitted, tapped through and has its baseline. */
export const BUILT = {
  installed_by: "M. Odrey",
  channel_checked: "yes",
  polarity_checked: "yes",
  unused_sockets_capped: "yes",
  baseline_load: 85,
  baseline_warm: "yes",
  baseline_records: 5,
  stopped_velocity: 0.1,
  full_scale_velocity: 40,
};

/** A drive with a converter, and a pulse per turn. */
export const VARIABLE = {
  variable_speed: "yes",
  lowest_speed: 930,
  highest_speed: 1485,
  speed_reference: "once-per-turn",
  speed_taken_from: "fastest-shaft",
  step_named: "yes",
  power_cable_distance: 600,
};

/** A shaft too slow for the usual sensor: the invented model for slow shafts, on a stouter bolt. */
export const SLOW_SHAFT = {
  sensor_model: "example-slow-shaft",
  flat_diameter: 48,
  thread: "M8",
  sensor_thread: "M8",
  drill_diameter: 6.8,
  hole_depth: 22,
  thread_depth: 15,
  bolt_reach: 14,
  target_torque: 12,
  wall_thickness: 36,
};

export const BONDED = { mounting_method: "adhesive-pad" };

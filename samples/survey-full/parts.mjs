/** Where a point is ("motor, drive end, horizontal"), as the catalogue's words. */
export function placeOf(place) {
  const [component, bearing_position, direction] = place.split(", ").map((word) => word.replaceAll(" ", "-"));
  return { component, bearing_position, direction };
}

/** The usual points of a machine, by what drives what. */
export const TRAINS = {
  /** Every bearing in two directions, and where the thrust is taken. */
  "motor and pump, in full": [
    "motor, non drive end, horizontal",
    "motor, non drive end, vertical",
    "motor, drive end, horizontal",
    "motor, drive end, vertical",
    "pump, drive end, horizontal",
    "pump, drive end, vertical",
    "pump, non drive end, horizontal",
    "pump, non drive end, vertical",
    "pump, non drive end, axial",
  ],
  "motor and pump": [
    "motor, non drive end, horizontal",
    "motor, drive end, horizontal",
    "pump, drive end, horizontal",
    "pump, non drive end, horizontal",
    "pump, non drive end, axial",
  ],
  "motor and small pump": [
    "motor, non drive end, horizontal",
    "motor, drive end, horizontal",
    "pump, drive end, horizontal",
    "pump, non drive end, horizontal",
  ],
  "motor and fan, in full": [
    "motor, non drive end, horizontal",
    "motor, non drive end, vertical",
    "motor, drive end, horizontal",
    "motor, drive end, vertical",
    "fan, drive end, horizontal",
    "fan, drive end, vertical",
    "fan, non drive end, horizontal",
    "fan, non drive end, vertical",
    "fan, non drive end, axial",
  ],
  "motor and fan": [
    "motor, non drive end, horizontal",
    "motor, drive end, horizontal",
    "fan, drive end, horizontal",
    "fan, non drive end, horizontal",
    "fan, non drive end, axial",
  ],
  "motor and compressor": [
    "motor, non drive end, horizontal",
    "motor, non drive end, vertical",
    "motor, drive end, horizontal",
    "motor, drive end, vertical",
    "compressor, drive end, horizontal",
    "compressor, drive end, vertical",
    "compressor, non drive end, horizontal",
    "compressor, non drive end, vertical",
    "compressor, thrust, horizontal",
    "compressor, thrust, vertical",
    "compressor, thrust, axial",
  ],
  "motor, gearbox and mill": [
    "motor, non drive end, horizontal",
    "motor, non drive end, vertical",
    "motor, drive end, horizontal",
    "motor, drive end, vertical",
    "gearbox, input drive side, horizontal",
    "gearbox, input drive side, vertical",
    "gearbox, output drive side, horizontal",
    "gearbox, output drive side, vertical",
    "bearing housing, drive end, horizontal",
    "bearing housing, drive end, vertical",
    "bearing housing, non drive end, horizontal",
    "bearing housing, non drive end, vertical",
    "bearing housing, non drive end, axial",
  ],
  "motor, gearbox and bearing": [
    "motor, non drive end, horizontal",
    "motor, drive end, horizontal",
    "gearbox, input drive side, horizontal",
    "gearbox, output drive side, horizontal",
    "bearing housing, drive end, horizontal",
    "bearing housing, non drive end, horizontal",
  ],
  "motor, gearbox and roll": [
    "motor, non drive end, horizontal",
    "motor, drive end, horizontal",
    "gearbox, input drive side, horizontal",
    "gearbox, output drive side, horizontal",
    "roll, drive end, horizontal",
    "roll, non drive end, horizontal",
  ],
};

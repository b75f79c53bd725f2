/** The quantities that a survey, a rule or a model can speak of. */
export const DIMENSIONS = [
  "length",
  "area",
  "rotational-speed",
  "frequency",
  "temperature",
  "temperature-difference",
  "power",
  "time",
  "dc-voltage",
  "current",
  "torque",
  "angle",
  "vibration-velocity",
  "vibration-acceleration",
  "ratio",
  "mass",
  "stress",
  "resistance",
  "resistance-per-length",
  "acceleration-noise-density",
] as const;

export type Dimension = (typeof DIMENSIONS)[number];

/** One unit of one dimension. A name that serves two dimensions (Hz, K) stands once in each. */
export interface Unit {
  readonly id: string;
  readonly dimension: Dimension;
  readonly spellings: readonly string[];
  /** Wire gauge stands in front of its number (AWG 22); all others follow it. */
  readonly leads?: true;
  readonly toBase: (value: number) => number;
  readonly fromBase: (value: number) => number;
}

/** Inch-pounds and foot-pounds, which people write either way round, glued, with a hyphen or with a dot. */
function spelledBothWays(lengths: string, forces: string): string {
  const pairs = lengths.split(" ").flatMap((length) => forces.split(" ").map((force) => [length, force] as const));
  const spelled = pairs.flatMap(([l, f]) => ["", "-", "·"].flatMap((sign) => [`${l}${sign}${f}`, `${f}${sign}${l}`]));
  return spelled.join(" | ");
}

/** Id, factor to the first unit of the dimension, other spellings divided by " | ". */
type Row = readonly [id: string, factor: number, spellings?: string];

function linear(dimension: Dimension, rows: readonly Row[]): readonly Unit[] {
  return rows.map(([id, factor, spellings]) => ({
    id,
    dimension,
    spellings: spellings?.split(" | ") ?? [],
    toBase: (value) => value * factor,
    fromBase: (value) => value / factor,
  }));
}

// Factors: the international inch (25.4 mm), pound (0.45359237 kg), standard gravity (9.80665 m/s²) and the
// definitions that follow from them (exact; BIPM SI brochure and NIST SP 811 list the same figures).
// The metric horsepower is 75 kgf·m/s, the mechanical one 550 ft·lbf/s.
const LINEAR: readonly Unit[] = [
  ...linear("length", [
    [
      "mm",
      1,
      "millimetre | millimeter | millimetres | millimeters | milímetro | milímetros | millimètre | millimètres",
    ],
    ["µm", 0.001, "um | micron | microns | mikrometer | micra | micras | micrometre | micrometer"],
    ["cm", 10, "centimetre | centimeter | zentimeter | centímetro | centímetros | centimètre | centimètres"],
    ["m", 1000, "metre | meter | metres | meters | mtr | mtrs | mts | metro | metros | mètre | mètres"],
    ["in", 25.4, `" | ″ | ” | '' | inch | inches | ins | zoll | pulg | pulgada | pulgadas | po | pouce | pouces`],
    ["dm", 100],
    ["yd", 914.4, "yards | yds"],
    ["ft", 304.8, "' | ′ | ’ | foot | feet | fuß | pie | pies | pied | pieds"],
    ["mil", 0.0254, "thou | mils"],
    ["µin", 2.54e-5, "uin | microinch | microinches"],
  ]),
  ...linear("area", [
    ["mm²", 1, "mm2 | qmm | mm^2 | sqmm | mmq"],
    ["kcmil", 0.5067075, "mcm"],
  ]),
  ...linear("rotational-speed", [
    [
      "r/min",
      1,
      "rpm | 1/min | min-1 | min⁻¹ | min^-1 | u/min | upm | umin | tr/min | t/min | trs/min | tpm | rev/min | revs/min | cpm | vpm | rev/minute | umdr/min | umdrehungen/min",
    ],
    ["r/h", 1 / 60, "rph | 1/h | u/h | tr/h | rev/h | h-1"],
    ["r/s", 60, "rps | 1/s | s-1 | s⁻¹ | s^-1 | u/s | tr/s | rev/s"],
    ["Hz", 60],
    ["rad/s", 9.549296585513721],
    ["°/s", 1 / 6, "deg/s"],
  ]),
  ...linear("frequency", [
    ["Hz", 1, "hertz | 1/s | s-1"],
    ["kHz", 1000],
    ["cpm", 1 / 60],
    ["kcpm", 1000 / 60],
  ]),
  ...linear("power", [
    ["kW", 1, "kilowatt"],
    ["W", 0.001, "watt"],
    ["MW", 1000],
    ["mW", 1e-6],
    ["HP", 0.7456998715822702, "bhp"],
    ["PS", 0.73549875, "CV | ch"],
  ]),
  ...linear("time", [
    [
      "s",
      1,
      "sec | secs | second | seconds | sek | seg | segundo | segundos | sekunde | sekunden | seconde | secondes",
    ],
    ["ms", 0.001],
    ["min", 60, "mn | mins | minute | minutes | minuten | minuto | minutos"],
    ["h", 3600, "hr | hrs | hour | hours | std | stunde | stunden | hora | horas | heure | heures"],
    ["d", 86400, "day | days | tag | tage | día | dias | días | dia | jour | jours"],
    ["week", 604800, "weeks | wk | wks | woche | wochen | semana | semanas | semaine | semaines"],
  ]),
  ...linear("dc-voltage", [
    ["V", 1, "volt | volts | voltios"],
    ["mV", 0.001],
    ["kV", 1000],
  ]),
  ...linear("current", [
    ["mA", 1],
    ["A", 1000, "amp | amps | ampere"],
    ["µA", 0.001, "uA"],
  ]),
  ...linear("torque", [
    ["N·m", 1, "Nm | N*m | N-m | newton metre | newton metres | newton meter | newton meters | newtonmeter"],
    ["daN·m", 10, "daNm | daN*m | m·daN | mdaN"],
    ["kN·m", 1000, "kNm"],
    ["N·cm", 0.01, "Ncm"],
    ["cN·m", 0.01, "cNm"],
    ["N·mm", 0.001, "Nmm"],
    ["in·lbf", 0.1129848290276167, spelledBothWays("in inch inches", "lb lbs lbf pound pounds")],
    ["ft·lbf", 1.3558179483314003, spelledBothWays("ft foot feet", "lb lbs lbf pound pounds")],
    ["ozf·in", 0.007061551814226044, "oz-in | ozin | in-oz | ozf-in | ozfin"],
    ["kgf·m", 9.80665, "kgfm | kpm | kgm | mkgf | mkp | kp·m"],
    ["kgf·cm", 0.0980665, "kgfcm | kpcm"],
  ]),
  ...linear("angle", [
    ["deg", 1, "° | degree | degrees | grad | grados | degrés"],
    ["rad", 57.29577951308232],
  ]),
  ...linear("vibration-velocity", [
    ["mm/s", 1, "mm/sec"],
    ["in/s", 25.4, "ips | in/sec"],
    ["cm/s", 10],
    ["m/s", 1000],
  ]),
  ...linear("vibration-acceleration", [
    ["m/s²", 1, "m/s2 | m/s^2"],
    ["g", 9.80665],
    ["mg", 0.00980665],
    ["gal", 0.01],
    ["mm/s²", 0.001, "mm/s2 | mm/s^2"],
  ]),
  ...linear("ratio", [
    ["%", 1, "percent | per cent | prozent | por ciento | pour cent"],
    ["pu", 100],
  ]),
  ...linear("mass", [
    ["g", 1, "gram | grams | gramm | gramo | gramos | gramme | grammes"],
    ["kg", 1000, "kgs | kilo | kilos | kilogram | kilograms | kilogramm"],
    ["lb", 453.59237, "lbs"],
    ["oz", 28.349523125],
  ]),
  ...linear("stress", [
    ["MPa", 1, "N/mm² | N/mm2 | N/mm^2"],
    ["kPa", 0.001],
    ["bar", 0.1],
    ["psi", 0.006894757293168361],
  ]),
  ...linear("resistance", [
    ["Ω", 1, "ohm | ohms"],
    ["mΩ", 0.001],
    ["kΩ", 1000],
    ["MΩ", 1e6],
  ]),
  ...linear("resistance-per-length", [["Ω/km", 1, "ohm/km"]]),
  ...linear("acceleration-noise-density", [
    ["µg/√Hz", 1, "ug/√Hz | µg/sqrt(Hz) | ug/sqrt(Hz) | µg/rtHz | ug/rtHz"],
    ["mg/√Hz", 1000],
    ["m/s²/√Hz", 1e6 / 9.80665, "(m/s²)/√Hz | m/s2/√Hz"],
  ]),
  ...linear("temperature-difference", [
    ["K", 1, "kelvin"],
    ["°F", 1 / 1.8, "F | degF"],
  ]),
];

const BENT: readonly Unit[] = [
  {
    id: "°C",
    dimension: "temperature",
    spellings: ["C", "degC", "ºC", "deg C", "grad", "grad C", "celsius", "grados", "grados C"],
    toBase: (value) => value,
    fromBase: (value) => value,
  },
  {
    id: "°F",
    dimension: "temperature",
    spellings: ["F", "degF", "ºF", "deg F", "fahrenheit"],
    toBase: (value) => (value - 32) / 1.8,
    fromBase: (value) => value * 1.8 + 32,
  },
  {
    id: "K",
    dimension: "temperature",
    spellings: ["kelvin"],
    toBase: (value) => value - 273.15,
    fromBase: (value) => value + 273.15,
  },
  {
    // Wire gauge by its definition (ASTM B258): diameter 0.127 mm × 92^((36 − n)/39); area π/4 times its square.
    id: "AWG",
    dimension: "area",
    spellings: ["gauge"],
    leads: true,
    toBase: (gauge) => 0.012667686977 * 92 ** ((36 - gauge) / 19.5),
    fromBase: (area) => 36 - (19.5 * Math.log(area / 0.012667686977)) / Math.log(92),
  },
];

/** Every unit the project knows; factors turn a number into the first unit of its dimension. */
export const UNITS: readonly Unit[] = [...LINEAR, ...BENT];

/** Units of quantities that no field of a survey has; met in a cell they are the wrong dimension, not an unknown word. */
const OTHER_QUANTITIES: ReadonlyMap<string, string> = new Map([
  ["t", "mass"],
  ["kVA", "apparent power"],
  ["VA", "apparent power"],
  ["l/min", "flow"],
  ["m³/h", "flow"],
  ["m3/h", "flow"],
  ["dB", "level"],
  ["Ah", "charge"],
  ["N", "force"],
  ["kN", "force"],
]);

/** What quantity the text is a unit of when no field of a survey has that quantity, or null. */
export function otherQuantityOf(text: string): string | null {
  return OTHER_QUANTITIES.get(text.replace(/[\s.]/g, "")) ?? null;
}

/** The unit of the dimension with this id, in the table's spelling. */
export function findUnitById(id: string, dimension: Dimension): Unit | undefined {
  return UNITS.find((unit) => unit.id === id && unit.dimension === dimension);
}

/** The sheets of the survey: whose they are, and how they are written. */
import { HALL_4 } from "./hall-4-machines.mjs";
import { HALL_5 } from "./hall-5-machines.mjs";
import { HALLE_6 } from "./halle-6-machines.mjs";
import { UTILITIES } from "./utilities-machines.mjs";

const day = (text) => new Date(`${text}T00:00:00Z`);

const ENGLISH_GROUPS = {
  identity: "Point",
  selection: "Machine in the plant",
  operation: "How it runs",
  machine: "Machine part",
  point: "Place of the sensor",
  surface: "Surface",
  mounting: "Mounting",
  safety: "Safety",
  environment: "Surroundings",
  electrical: "Cable and supply",
  "as-built": "As built",
};

const GERMAN_GROUPS = {
  identity: "Messstelle",
  selection: "Maschine im Werk",
  operation: "Betrieb",
  machine: "Maschinenteil",
  point: "Ort des Sensors",
  surface: "Oberfläche",
  mounting: "Befestigung",
  safety: "Sicherheit",
  environment: "Umgebung",
  electrical: "Kabel und Versorgung",
  "as-built": "Ausgeführt",
};

/** An inch has 25.4 mm; sizes are written to a thousandth of it. */
const inches = (mm) => Math.round((mm / 25.4) * 1000) / 1000;
const fahrenheit = (celsius) => Math.round((celsius * 1.8 + 32) * 10) / 10;

export const SHEETS = [
  {
    name: "Hall 4 wet end",
    hall: 4,
    language: "en",
    title: [
      "Vellamoor starch works: vibration points, hall 4 (wet end)",
      "surveyed 12 to 16 October 2026, fitted from 3 November",
    ],
    say: { surveyed_by: "O. Tressick", surveyed_on: day("2026-10-13") },
    groups: ENGLISH_GROUPS,
    notes: ["tbc = to be confirmed; empty = not looked at"],
    units: {},
    ditto: [],
    /** What single supplies have otherwise. */
    supplies: { "PS-47": { supply_rating: 120 } },
    machines: HALL_4,
  },
  {
    name: "Hall 5 drying",
    hall: 5,
    language: "en",
    title: [
      "Vellamoor starch works: vibration points, hall 5 (drying)",
      "surveyed 19 to 21 October 2026, fitting under way",
    ],
    say: { surveyed_by: "O. Tressick", surveyed_on: day("2026-10-20") },
    groups: ENGLISH_GROUPS,
    notes: ["tbc = to be confirmed; empty = not looked at"],
    units: {},
    /** Columns in which a value that repeats is written as "as above". */
    ditto: ["nominal_speed", "supply_voltage", "supply_kind", "ambient_max", "surveyed_by"],
    supplies: { "PS-57": { supply_rating: 90 } },
    machines: HALL_5,
  },
  {
    name: "Halle 6",
    hall: 6,
    language: "de",
    title: ["Stärkewerk Vellamoor: Schwingungsmessstellen Halle 6", "aufgenommen am 22. und 23. Oktober 2026"],
    say: { surveyed_by: "I. Brandtner", surveyed_on: day("2026-10-22") },
    groups: GERMAN_GROUPS,
    notes: ["k.A. = keine Angabe; leer = nicht angesehen"],
    units: {},
    ditto: ["surveyed_by"],
    supplies: {},
    machines: HALLE_6,
  },
  {
    name: "Utilities",
    hall: 7,
    language: "en",
    title: [
      "Vellamoor starch works: vibration points, boiler house and compressed air",
      "surveyed 26 and 27 October 2026",
    ],
    say: { surveyed_by: "J. Haskerly", surveyed_on: day("2026-10-26") },
    groups: ENGLISH_GROUPS,
    notes: ["sizes of holes, threads and flats in inches, surface temperature in °F"],
    /** Columns in other units than those of the catalogue: the unit in the heading, and how a value gets there. */
    units: {
      hole_depth: ["in", inches],
      thread_depth: ["in", inches],
      flat_diameter: ["in", inches],
      surface_temperature: ["°F", fahrenheit],
    },
    ditto: [],
    supplies: {},
    machines: UTILITIES,
  },
];

import type { BlankTexts } from "./blank-texts.js";

/** What a blank survey says of wall, hole, thread, bolt and bond in German. */
export const FIXING_GERMAN: Pick<BlankTexts, "advice" | "words"> = {
  advice: {
    highest_frequency:
      "Höchste Frequenz, die an dieser Stelle zu sehen sein soll, aus dem Messplan; bei Zahnrädern und Schaufeln ein Mehrfaches der Eingriffs- oder Durchgangsfrequenz.",
    wall_thickness: "Dicke des Metalls unter dem Sensor, aus der Zeichnung oder mit Ultraschall gemessen.",
    behind_wall:
      "Was auf der anderen Seite der Wand liegt, aus der Zeichnung oder vom Hersteller. Weiß es niemand, so eintragen; dann bohrt niemand.",
    surface_radius:
      "Radius der Oberfläche, wo sie gewölbt ist, aus der Zeichnung oder mit einer Lehre. Auf ebener Fläche bleibt die Zelle leer.",
    roughness: "Rauheit Ra der fertigen Auflage, aus der Zeichnung oder mit einem Vergleichsmuster.",
    surface_temperature: "Höchste Temperatur der Oberfläche im Betrieb, nicht am Tag der Aufnahme.",
    install_temperature: "Niedrigste Temperatur der Oberfläche während der Montage, bei stehender Maschine.",
    certified_enclosure:
      "Ja, wenn das Gehäuse eine Bescheinigung für explosionsfähige Atmosphäre hat (Ex d); es steht auf dem Schild.",
    thread: "Gewinde der Bohrung, zum Beispiel M6 oder 1/4-28 UNF.",
    sensor_thread: "Gewinde des Sensors oder seines Bolzens aus dem Datenblatt, zum Beispiel M6 oder 1/4-28 UNF.",
    drill_diameter: "Durchmesser des Bohrers für das Kernloch, aus der Tabelle für das Gewinde.",
    bolt_reach: "Wie weit der Bolzen aus dem Fuß des Sensors vorsteht und damit in die Bohrung reicht.",
    bolt_class:
      "Festigkeitsklasse der Schraube, vom Kopf oder aus dem Datenblatt des Sensors, zum Beispiel 8.8 oder A2-70.",
    thread_state: "Was beim Anziehen auf dem Gewinde ist: nichts, Öl, Fett oder ein Sicherungskleber.",
    chip_guard: "Wie Späne beim Bohren und Gewindeschneiden von Lager, Wicklung und Zahnrädern ferngehalten werden.",
    adhesive:
      "Art des Klebstoffs unter dem Sockel, aus seinem Datenblatt; was nicht in der Liste steht, ist ein anderer.",
    adhesive_set_time:
      "Zeit, die das Datenblatt des Klebstoffs bei der Temperatur der Oberfläche verlangt, bevor die Klebung belastet wird.",
    adhesive_gap_max: "Größter Spalt, den der Klebstoff füllt, aus seinem Datenblatt.",
    welding_agreed:
      "Ja, wenn der Hersteller der Maschine schriftlich zugestimmt hat, dass hier ein Sockel angeschweißt wird.",
  },
  words: {
    behind_wall: {
      solid: "Vollmaterial",
      air: "Luft",
      oil: "Öl",
      "water-jacket": "Kühlmantel",
      pressure: "Druck",
      windings: "Wicklung",
      unknown: "unbekannt",
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
      dry: "trocken",
      oiled: "geölt",
      greased: "gefettet",
      locked: "Schraubensicherung",
    },
    adhesive: {
      "two-part-epoxy": "2K-Epoxid",
      "heat-resistant-epoxy": "Hochtemperatur-Epoxid",
      "two-part-acrylic": "2K-Acrylat",
      instant: "Sekundenkleber",
      polyurethane: "Polyurethan",
      other: "anderer",
    },
    chip_guard: {
      none: "keine",
      "greased-drill": "Bohrer gefettet",
      "magnet-tray": "Magnetschale",
      vacuum: "Absaugung",
      "stopped-short": "nur Sackloch",
    },
  },
};

import type { BlankTexts } from "./blank-texts.js";

/** What a blank survey says of precautions, cable, supply and fitting in German. */
export const WIRING_GERMAN: Pick<BlankTexts, "advice" | "words"> = {
  advice: {
    isolation_possible:
      "Ja, wenn die Maschine für die Arbeit abgeschaltet, verriegelt und spannungsfrei nachgewiesen werden kann; nein, wenn ein abschließbarer Schalter fehlt.",
    hot_work_allowed:
      "Ob Schleifen und Schweißen hier erlaubt, nur mit Erlaubnisschein erlaubt oder verboten ist. Der Betrieb entscheidet.",
    hazardous_area:
      "Zone oder Division nach dem Ex-Zonenplan, oder keine. Eine leere Zelle heißt nicht, dass keine Gefahr besteht.",
    sensor_certified:
      "Ja, wenn die Bescheinigung des Sensors diese Zone oder Division nennt, mit Gasgruppe und Temperaturklasse.",
    solvent_flash_point:
      "Flammpunkt des Mittels, mit dem die Fläche vor dem Kleben gereinigt wird, aus dem Sicherheitsdatenblatt.",
    under_warranty: "Ja, wenn der Hersteller der Maschine noch für sie einsteht.",
    maker_consent: "Ja, wenn der Hersteller der Maschine dem Bohren oder Schweißen hier schriftlich zugestimmt hat.",
    turns_by_itself: "Ja, wenn Luftzug, Rückstrom oder Gewicht den Läufer bei freigeschaltetem Antrieb drehen können.",
    rotor_blockable: "Ja, wenn sich der Läufer für die Dauer der Arbeit festhalten lässt.",
    working_height: "Höhe der Messstelle über dem Boden oder der Bühne, von wo aus gearbeitet wird.",
    wetting:
      "Wasser am Ort im schlimmsten Fall, auch bei der Reinigung: trocken, Spritzwasser oder Regen, Schlauch, Hochdruck oder Dampf, unter Wasser.",
    ip_rating: "Schutzart von Sensor, Kabel und gestecktem Stecker nach ihren Datenblättern, etwa IP67 oder IP66/IP68.",
    ambient_max: "Höchste Lufttemperatur entlang des Kabels und am Sensor, im Sommer und bei laufender Maschine.",
    supply_voltage_min:
      "Niedrigste Spannung, die das Netzteil an seinen Klemmen liefert, nach Datenblatt oder Einstellung.",
    sensor_current: "Höchster Dauerstrom eines Sensors, aus seinem Datenblatt.",
    sensors_on_supply: "Wie viele Sensoren dieses Netzteil insgesamt speist, dieser mitgezählt.",
    supply_rating: "Nennausgangsstrom des Netzteils, vom Typenschild, bei der Temperatur im Schrank.",
    cable_length: "Länge des Kabels vom Netzteil zum Sensor, einfacher Weg, mit allen Bögen und Abgängen.",
    conductor_size: "Querschnitt eines Leiters, aus dem Datenblatt oder dem Aufdruck des Kabels.",
    power_cable_distance:
      "Kleinster Abstand zu Leistungskabeln auf der Strecke, auf der die Kabel nebeneinander liegen.",
    unused_sockets_capped: "Ja, wenn jede unbenutzte Buchse am Sensor und an seinen Kästen eine Kappe trägt.",
    polarity_checked:
      "Ja, wenn Plus und Minus am Stecker gemessen und richtig sind; nein, wenn nicht, oder wenn nicht gemessen wurde.",
    supply_separation: "Was auf dem Netzteil steht: SELV, PELV oder FELV, oder dass es keine sichere Trennung hat.",
    starting_current: "Strom eines Sensors beim Einschalten, aus seinem Datenblatt.",
    conductor_class:
      "Aufbau der Leiter: ein massiver Draht (Klasse 1), mehrdrähtig (Klasse 2) oder feindrähtig (Klassen 5 und 6).",
    conductor_temperature:
      "Höchste Temperatur, die die Leiter erreichen. Darf leer bleiben, wenn die höchste Umgebungstemperatur angegeben ist.",
    cable_diameter: "Außendurchmesser des Kabels, aus dem Datenblatt oder mit dem Messschieber.",
    bend_radius: "Radius des engsten Bogens auf dem Weg des Kabels, an der Innenseite.",
    strain_relief_distance: "Kabellänge vom Sensor bis zur ersten Schelle oder zum ersten Binder, der das Kabel hält.",
    cable_temperature_max: "Höchste Temperatur, die der Mantel des Kabels verträgt, aus dem Datenblatt.",
    screen_earthed: "An welchem Ende der Schirm des Kabels mit Erde verbunden ist oder wird.",
    cable_route_clear: "Ja, wenn das Kabel keinen Laufweg kreuzt und kein drehendes Teil erreichen kann; sonst nein.",
    channel_checked:
      "Ja, wenn ein Klopfen an der Maschine in der genannten Richtung den Kanal dieser Messstelle bewegt hat; nein, wenn ein anderer ausschlug.",
  },
  words: {
    hot_work_allowed: { allowed: "erlaubt", "permit-needed": "mit Erlaubnisschein", forbidden: "verboten" },
    hazardous_area: {
      none: "kein Ex-Bereich",
      "zone-0": "Zone 0",
      "zone-1": "Zone 1",
      "zone-2": "Zone 2",
      "zone-20": "Zone 20",
      "zone-21": "Zone 21",
      "zone-22": "Zone 22",
      "division-1": "Division 1",
      "division-2": "Division 2",
    },
    wetting: {
      dry: "trocken",
      splash: "Spritzwasser",
      jets: "Strahlwasser",
      "hot-high-pressure": "Hochdruckreinigung",
      submerged: "unter Wasser",
    },
    supply_separation: { selv: "SELV", pelv: "PELV", felv: "FELV", none: "ohne sichere Trennung" },
    conductor_class: { solid: "eindrähtig", stranded: "mehrdrähtig", flexible: "feindrähtig" },
    screen_earthed: {
      "supply-end": "schaltschrankseitig",
      "sensor-end": "sensorseitig",
      "both-ends": "beidseitig",
      nowhere: "nirgends",
    },
  },
};

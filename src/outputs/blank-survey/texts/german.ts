import type { BlankTexts } from "./blank-texts.js";
import { FIXING_GERMAN } from "./fixing-german.js";
import { WIRING_GERMAN } from "./wiring-german.js";

/** The blank survey in German. */
export const GERMAN: BlankTexts = {
  sheets: { survey: "Aufnahme", legend: "Legende", lists: "Listen" },
  title: {
    proposed: "Aufnahme vorgeschlagener Messstellen für fest verdrahtete Schwingungssensoren",
    installed: "Aufnahme fest verdrahteter Schwingungssensoren nach der Montage",
  },
  howTo: [
    "Eine Zeile je Messstelle. Ein Klick in eine Zelle zeigt, was gemeint ist und wie man es feststellt; das Blatt Legende sagt dasselbe auf Papier.",
    'Was nicht bekannt ist, bleibt leer oder bekommt "-" oder "tbc": Die Regel, die es braucht, bleibt dann unentschieden. Bitte nicht raten.',
  ],
  legend: {
    title: "Was die Spalten bedeuten",
    columns: ["Spalte", "Was gemeint ist und wie man es feststellt oder misst", "Was die Zelle aufnimmt"],
    place: "{heading}, Spalte {letter}",
    examples: "Beispiel einer ausgefüllten Zeile. Es ist ein Beispiel und keine Messstelle; es wird nicht eingelesen.",
    cautions: "Bevor jemand an einer Maschine arbeitet",
  },
  takes: {
    number: "eine Zahl in {unit}, von {lowest} bis {highest}",
    count: "eine ganze Zahl, von {lowest} bis {highest}",
    words: "eines von: {words}",
    date: "ein Datum, zum Beispiel 27.03.2026",
    text: "Text",
  },
  checks: {
    title: "Bitte den Wert prüfen",
    number:
      'Hier wird eine Zahl von {lowest} bis {highest} erwartet ({unit}). Ist sie nicht bekannt, die Zelle leer lassen oder "-" oder "tbc" schreiben.',
    words:
      'Bitte ein Wort der Liste wählen. Ist die Antwort nicht bekannt, die Zelle leer lassen oder "-" oder "tbc" schreiben.',
    date: 'Hier wird ein Datum erwartet, zum Beispiel 27.03.2026. Ist es nicht bekannt, die Zelle leer lassen oder "-" oder "tbc" schreiben.',
  },
  notKnown: 'Nicht bekannt: leer lassen, "-" oder "tbc".',
  noAdvice: "Eintragen, was vor Ort vorgefunden wurde. Was nicht bekannt ist, bleibt leer.",
  listsTitle: "Wörter der Auswahllisten; dieses Blatt bitte unverändert lassen",
  footer: "eine Vorprüfung, keine Freigabe",
  yesNo: { yes: "ja", no: "nein" },
  units: { "r/min": "1/min", N·m: "Nm" },
  headings: { flat_diameter: "Planfläche Durchmesser" },
  advice: {
    point_id: "Name der Messstelle. Er darf in der ganzen Aufnahme nur einmal vorkommen.",
    asset_tag:
      "Kennzeichen der Maschine, wie es auf dem Schild oder im Instandhaltungssystem steht. Es bleibt, wie es getippt wird, auch mit führenden Nullen.",
    machine_name: "Name der Maschine, wie er im Betrieb üblich ist.",
    machine_type:
      "Was die Maschine im Ganzen ist: bei einer Pumpe mit Motor die Pumpe. Das Teil unter dem Sensor hat eine eigene Spalte.",
    surveyed_by: "Kürzel der Person, die die Stelle vor Ort angesehen hat.",
    surveyed_on: "Tag, an dem die Stelle vor Ort angesehen wurde.",
    photo: "Nummer oder Dateiname eines Fotos, das die Stelle und ihre Umgebung zeigt.",
    notes: "Alles, was keine eigene Spalte hat. Es bleibt für Menschen erhalten; keine Regel liest es.",
    nominal_speed:
      "Drehzahl der Welle, die in diesem Lager läuft, vom Typenschild. Hinter Getriebe, Riemen oder Kette ist es nicht die Drehzahl des Motors.",
    lowest_speed:
      "Kleinste Drehzahl, mit der diese Welle dauernd läuft, aus den Einstellungen des Antriebs oder vom Betrieb. Bei fester Drehzahl kann die Zelle leer bleiben.",
    highest_speed:
      "Größte Drehzahl, mit der diese Welle dauernd läuft, aus den Einstellungen des Antriebs oder vom Betrieb. Bei fester Drehzahl kann die Zelle leer bleiben.",
    variable_speed:
      "Ja, wenn ein Frequenzumrichter oder ein anderer Antrieb die Drehzahl im Betrieb ändert; nein bei fester Drehzahl.",
    speed_reference:
      "Drehzahlsignal, das an die Messung angeschlossen ist oder wird: ein Impuls je Umdrehung, mehrere Impulse, ein Analogsignal oder ein Wert aus Antrieb oder Steuerung.",
    component: "Teil des Maschinensatzes, auf dem der Sensor sitzen soll.",
    bearing_position:
      "Lager, zu dem die Messstelle gehört. Die Antriebsseite ist die Seite der Kupplung oder Riemenscheibe, über die die Leistung fließt.",
    direction: "Richtung, in der der Sensor misst. Axial ist längs der Welle, radial ist quer dazu.",
    mounted_on:
      "Worauf der Sensor sitzen soll. Klopfprobe: Haube, Verkleidung oder Rippe klingen dünn und zeigen nicht, wie das Lager schwingt.",
    surface_material:
      "Werkstoff der Wand unter dem Sensor, aus der Zeichnung oder von einem Gusszeichen. Ein Magnet hält auf Guss und einfachem Stahl, nicht auf Aluminium.",
    surface_finish:
      "Zustand der Oberfläche, wie er heute vorgefunden wird, bevor etwas geschliffen oder gereinigt ist.",
    flat_diameter:
      "Durchmesser des größten Kreises, der eben und massiv auf der Oberfläche liegt, geschliffen oder zum Schleifen frei. An der schmalsten Stelle messen.",
    sensor_model:
      "Modell des Sensors mit seinem Namen im Regelwerk. Solange die Zelle leer ist, bleiben die Grenzwerte, die vom Modell abhängen, unentschieden.",
    mounting_method: "Wie der Sensor oder der Sockel unter ihm an der Maschine befestigt werden soll.",
    thread_depth:
      "Tiefe des vollen Gewindes, von der fertigen Oberfläche bis zum letzten ganzen Gang. Sie ist kleiner als die Bohrtiefe.",
    hole_depth:
      "Tiefe der Bohrung mit vollem Durchmesser, von der fertigen Oberfläche an, ohne den Kegel der Bohrerspitze.",
    target_torque:
      "Drehmoment, mit dem der Sensor angezogen werden soll, laut Planung; nicht das der Schrauben der Maschine.",
    cure_time:
      "Zeit vom Aufkleben des Sockels bis zum Anziehen des Sensors. Das Datenblatt des Klebstoffs nennt sie für die Temperatur vor Ort.",
    supply_voltage:
      "Spannung, die den Sensor speisen soll, aus dem Plan oder vom Typenschild des Netzteils; nicht die des Motors.",
    supply_kind: "Ob diese Versorgung Gleich- oder Wechselstrom liefert. Es gilt die Ausgangsseite des Netzteils.",
    installed_on: "Tag, an dem der Sensor montiert wurde.",
    installed_by: "Kürzel der Person, die den Sensor montiert hat.",
    applied_torque:
      "Drehmoment, mit dem der Sensor wirklich angezogen wurde, wie am Drehmomentschlüssel eingestellt oder abgelesen.",
    voltage_at_sensor:
      "Gleichspannung am Stecker des Sensors, während der Sensor läuft, gemessen von einer befähigten Person.",
    sensor_serial: "Seriennummer auf dem Gehäuse des Sensors, mit allen führenden Nullen.",
    baseline_velocity:
      "Erste Schwinggeschwindigkeit nach der Montage, bei normalem Betrieb; Effektivwert des Summenpegels, nicht der Spitzenwert.",
    baseline_acceleration:
      "Erste Schwingbeschleunigung nach der Montage, bei normalem Betrieb; Effektivwert des Summenpegels. 1 g ist 9,81 m/s².",
    baseline_load: "Last der Maschine, während die ersten Werte aufgenommen wurden, in Prozent ihrer Nennlast.",
    baseline_on: "Tag, an dem die ersten Werte aufgenommen wurden.",
    ...FIXING_GERMAN.advice,
    ...WIRING_GERMAN.advice,
  },
  words: {
    machine_type: {
      pump: "Pumpe",
      fan: "Ventilator",
      motor: "Elektromotor",
      gearbox: "Getriebe",
      compressor: "Verdichter",
      agitator: "Rührwerk",
      conveyor: "Förderer",
      mill: "Mühle",
      turbine: "Turbine",
      generator: "Generator",
      centrifuge: "Zentrifuge",
      roll: "Walze",
    },
    component: {
      motor: "Motor",
      gearbox: "Getriebe",
      pump: "Pumpe",
      fan: "Ventilator",
      compressor: "Verdichter",
      "bearing-housing": "Lagergehäuse",
      roll: "Walze",
      other: "Sonstiges",
    },
    bearing_position: {
      "drive-end": "Antriebsseite",
      "non-drive-end": "Nichtantriebsseite",
      "input-drive-side": "Eingangswelle AS",
      "output-drive-side": "Ausgangswelle AS",
      intermediate: "Zwischenwelle",
      thrust: "Axiallager",
    },
    direction: {
      horizontal: "horizontal",
      vertical: "vertikal",
      axial: "axial",
      radial: "radial",
      triaxial: "triaxial",
    },
    variable_speed: { yes: "ja", no: "nein" },
    speed_reference: {
      none: "kein Signal",
      "once-per-turn": "ein Impuls je Umdrehung",
      pulses: "mehrere Impulse",
      analogue: "Analogsignal",
      network: "vom FU",
      unspecified: "vorhanden",
    },
    mounted_on: {
      "bearing-housing": "Lagergehäuse",
      casing: "Gehäuse",
      "cooling-fin": "Kühlrippe",
      "fan-cover": "Lüfterhaube",
      guard: "Schutzhaube",
      foot: "Fuß",
      pipe: "Rohr",
    },
    surface_material: {
      "grey-cast-iron": "Grauguss",
      "ductile-iron": "Sphäroguss",
      "carbon-steel": "unlegierter Stahl",
      "austenitic-stainless": "austenitischer Edelstahl",
      "ferritic-stainless": "ferritischer Edelstahl",
      "cast-steel": "Stahlguss",
      aluminium: "Aluminium",
      bronze: "Bronze",
      "sheet-metal": "Blech",
      plastic: "Kunststoff",
    },
    surface_finish: {
      "bare-machined": "mechanisch bearbeitet",
      "as-cast": "gussroh",
      painted: "lackiert",
      "powder-coated": "pulverbeschichtet",
      galvanised: "verzinkt",
      rusty: "rostig",
      oily: "ölig",
      insulated: "wärmegedämmt",
      rubber: "gummiert",
      coated: "anders beschichtet",
    },
    mounting_method: {
      "tapped-hole": "Gewindebohrung",
      "adhesive-pad": "Klebesockel",
      "welded-pad": "Schweißsockel",
      magnet: "Haftmagnet",
      clamp: "Schelle",
      "existing-hole": "vorhandenes Gewinde",
    },
    supply_kind: { dc: "Gleichspannung", ac: "Wechselspannung" },
    ...FIXING_GERMAN.words,
    ...WIRING_GERMAN.words,
  },
  example: { machine_name: "Speisewasserpumpe 1", notes: "Rohr vor dem Gehäuse, 120 mm frei" },
  cautions: [
    "Ein Urteil ist eine Vorprüfung, keine Freigabe. Örtliche Vorschriften, das Freigabesystem des Werks und befähigte oder zugelassene Personen entscheiden, was getan wird.",
    "Die Maschine freischalten, gegen Wiedereinschalten sichern und mit einem geprüften Prüfgerät nachweisen, dass sie spannungsfrei ist und nicht anlaufen kann. Gespeicherte Energie abbauen (Druck, Federn, Gewichte, Kondensatoren von Umrichtern) und Läufer blockieren, die von selbst drehen können.",
    "Wissen, was hinter der Wand liegt (Öl, Druck, Wasser, eine Wicklung), bevor jemand bohrt.",
    "Beim Bohren, Schleifen und Bürsten Augenschutz tragen und Schutzvorrichtungen benutzen. Wo Funken eine Gefahr sind, brauchen sie einen Erlaubnisschein für Feuerarbeiten.",
    "Alter Lack kann Blei oder Chromat enthalten, alte Isolierungen und Dichtungen Asbest: kein trockenes Schleifen und kein Abreißen, bevor ihre Zusammensetzung bekannt ist.",
    "Klebstoffe und Lösemittel brauchen Lüftung, Handschuhe und keine Zündquelle.",
    "Auf heiße Oberflächen, sicheren Zugang in der Höhe und starke Magnete in der Nähe von Implantaten achten.",
    "Keine Arbeit, wo explosionsfähige Atmosphäre auftreten kann, ohne die schriftliche Genehmigung des Werks und den Nachweis, dass der Ort frei von Gas und Staub ist; ein Bereich, den niemand eingestuft hat, ist nicht ungefährlich.",
    "Die Versorgung vor dem Anschließen abschalten. Freie Buchsen verschließen und Kabel von drehenden Teilen fernhalten.",
    "Schutzeinrichtungen wieder anbringen und die Werkzeuge zählen, bevor die Maschine freigegeben wird.",
  ],
};

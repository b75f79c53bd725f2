import type { FieldTexts } from "./blank-texts.js";

/** Fields on motor, bearing and support, on how far the sensor reaches, and on the bond, in German. */
export const REACH_GERMAN: FieldTexts = {
  advice: {
    pole_count:
      "Pole des Motors (nicht Polpaare), vom Typenschild oder Datenblatt; ein Motor mit etwa 1480 U/min an 50 Hz hat 4.",
    mains_frequency: "Frequenz des Netzes, das den Motor speist; hinter einem Umrichter bleibt die Zelle leer.",
    speed_taken_from:
      "Welche Welle der Maschine das Drehzahlsignal gibt, und ob die Übersetzung zur Welle dieser Messstelle angegeben ist.",
    step_named:
      "Ja, wenn in einer Stufe von Drehzahl und Last gemessen wird, die einen Namen hat und im Auftrag steht.",
    velocity_of_interest:
      "Kleinste Schwinggeschwindigkeit, die hier noch zu erkennen sein soll, Effektivwert; sagt, wer die Werte liest.",
    accepted_error:
      "Um wie viel Prozent ein Wert am oberen Ende des Bandes falsch sein darf; entscheidet, wer die Werte liest.",
    bearing_elements: "Kugeln oder Rollen in einer Reihe des Lagers, aus dem Datenblatt oder gezählt.",
    element_diameter: "Durchmesser der Kugeln oder mittlerer Durchmesser der Rollen, aus dem Datenblatt des Lagers.",
    pitch_diameter: "Durchmesser des Kreises durch die Mitten der Kugeln oder Rollen, aus dem Datenblatt des Lagers.",
    contact_angle: "Druckwinkel des Lagers, aus dem Datenblatt; 0 bei Rillenkugel- und Zylinderrollenlagern.",
    support_stiffness: "Starr auf Beton oder steifem Rahmen, elastisch auf Federn, Gummi oder leichtem Rahmen.",
    shaft_height: "Höhe der Motorwelle über den Füßen; es ist die Zahl in der Baugröße.",
    moving_mass:
      "Masse des Teils, das mit der Messstelle schwingt, etwa Lagerdeckel oder leichtes Gehäuse, nicht der ganzen Maschine.",
    mounted_resonance:
      "Resonanz des hier montierten Sensors, mit Anschlag oder Schwingerreger gemessen; leer, wenn niemand gemessen hat.",
    mount_mass:
      "Masse von Klebeplatte, Adapter und Kabelende zusammen; 0, wenn der Sensor direkt auf der Maschine sitzt.",
    adhesive_set_temperature: "Temperatur, für die das Datenblatt des Klebers die Wartezeit angibt.",
    bond_strength:
      "Scherfestigkeit, die die Klebung beim Anziehen des Sensors erreicht hat, aus dem Datenblatt des Klebers.",
    pad_held: "Ja, wenn die Platte mit einem Schlüssel gehalten wird, während der Sensor darauf angezogen wird.",
    hole_tilt:
      "Winkel zwischen der Bohrung und der Senkrechten der geschliffenen Fläche, mit Winkel oder Probeschraube.",
    drip_loop:
      "Ja, wenn das Kabel unter dem Stecker eine Schlaufe bildet, an der Wasser abtropft, bevor es dorthin kommt.",
  },
  words: {
    speed_taken_from: {
      "fastest-shaft": "schnellste Welle",
      "ratio-stated": "Übersetzung angegeben",
      "other-shaft": "andere Welle",
    },
    support_stiffness: { rigid: "starr", flexible: "elastisch" },
  },
};

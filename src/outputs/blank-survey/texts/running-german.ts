import type { FieldTexts } from "./blank-texts.js";

/** Fields on how the machine runs, where the point lies and what was measured first, in German. */
export const RUNNING_GERMAN: FieldTexts = {
  advice: {
    criticality: "Wie viel an der Maschine hängt: A am meisten, C am wenigsten. Der Betreiber legt es fest.",
    has_standby: "Ja, wenn eine zweite Maschine eingebaut ist und übernehmen kann; ein Ersatz im Lager zählt nicht.",
    replacement_planned:
      "Ja, wenn die Maschine verschrottet, ersetzt oder umgebaut wird, bevor sich feste Messstellen bezahlt machen.",
    access: "Wann und wie die Stelle zu erreichen ist: im Betrieb, nur im Stillstand, vom Gerüst oder gar nicht.",
    power: "Nennleistung der Maschine vom Typenschild; bei einer angetriebenen Maschine die des Antriebs.",
    duty: "Wie die Maschine in der Regel läuft. Reversierbetrieb heißt, dass die Welle in beide Richtungen dreht oder schwenkt.",
    shortest_run:
      "Kürzeste Zeit, in der die Maschine ohne Unterbrechung gleichmäßig läuft, vom Betrieb oder aus der Steuerung.",
    load_steady: "Ja, wenn die Last im Betrieb gleich bleibt; nein, wenn sie Chargen, Füllstand oder Bedarf folgt.",
    speed_change:
      "Um wie viel sich die Drehzahl während einer Aufnahme ändert, in Prozent der Drehzahl, aus einem Verlauf des Antriebs.",
    evaluation:
      "Was aus dem Signal wird: Verlauf des Summenpegels, Spektren, oder eine Aufnahme auf ein Startsignal hin.",
    low_band_wanted:
      "Ja, wenn der Käfig eines Wälzlagers oder ein Riemen zu sehen sein soll; beide liegen unter der Drehfrequenz.",
    spectrum_lines: "Zahl der Linien des Spektrums, aus den Einstellungen der Messung.",
    averages:
      "Wie viele Aufnahmen für ein Ergebnis gemittelt werden, aus den Einstellungen der Messung; 1, wenn nicht gemittelt wird.",
    settling_time:
      "Zeit vom Einschalten oder Anlaufen, bis Sensor und Filter eingeschwungen sind; aus ihren Datenblättern.",
    shaft_orientation: "Wie die Welle in der Maschine liegt. Bei vertikaler Welle ist axial die senkrechte Richtung.",
    drive_type:
      "Wie die Kraft auf diese Welle kommt: direkt gekuppelt, über Riemen, Getriebe oder Kette, oder auf der Motorwelle.",
    belt_pull: "Wohin der Riemen zieht: von der Welle der Messstelle zur anderen Scheibe sehen.",
    bearing_type: "Was die Welle an dieser Stelle trägt, aus der Zeichnung oder der Ersatzteilliste.",
    gear_teeth: "Zähne des Rades auf der Welle dieses Lagers, aus der Zeichnung oder vom Schild des Getriebes.",
    blade_count: "Schaufeln oder Flügel des Laufrads auf dieser Welle, aus der Zeichnung oder gezählt.",
    highest_frequency: "Oberes Ende des Spektrums, das hier gemessen werden soll, aus den Einstellungen der Messung.",
    load_zone_angle:
      "Winkel um die Welle zwischen Messstelle und Lastrichtung: nach unten beim Gewicht, zum Zug hin beim Riemen.",
    distance_to_bearing: "Kürzester Weg durch das Metall vom Lager bis zur Mitte des Sensors.",
    joints_in_path: "Trennfugen, die die Schwingung vom Lager zum Sensor überquert; Lager zum Gehäuse zählt als eine.",
    soft_layer: "Ja, wenn eine Dichtung, Gummi, ein loses Teil oder ein Luftspalt zwischen Lager und Sensor liegt.",
    axis_deviation:
      "Winkel zwischen der Achse des Sensors und der angegebenen Richtung, mit Wasserwaage oder Winkelmesser.",
    local_resonance:
      "Tiefste Spitze, die ein Anschlagversuch neben der Stelle zeigt, bei stehender und gesicherter Maschine.",
    baseline_speed: "Drehzahl der Welle, während die ersten Werte aufgenommen wurden.",
    baseline_warm: "Ja, wenn die Maschine betriebswarm und eingelaufen war, als die ersten Werte aufgenommen wurden.",
    baseline_records: "Wie viele Aufnahmen hintereinander für die ersten Werte gemacht wurden.",
    baseline_spread:
      "Unterschied zwischen der höchsten und der niedrigsten dieser Aufnahmen, in Prozent ihres Mittelwerts.",
    stopped_velocity: "Schwinggeschwindigkeit bei stehender Maschine und laufenden Nachbarn; Effektivwert.",
    handheld_velocity:
      "Schwinggeschwindigkeit, von Hand an derselben Stelle zur selben Zeit gemessen; Effektivwert im selben Band.",
    full_scale_velocity:
      "Größte Schwinggeschwindigkeit, die die Messung anzeigen kann, aus den Einstellungen oder dem Datenblatt.",
  },
  words: {
    criticality: { A: "A", B: "B", C: "C" },
    access: { running: "im Betrieb", "stopped-only": "nur im Stillstand", scaffold: "Gerüst", none: "kein Zugang" },
    duty: {
      continuous: "Dauerbetrieb",
      intermittent: "Aussetzbetrieb",
      standby: "Reservebetrieb",
      "short-time": "Kurzzeitbetrieb",
      reversing: "Reversierbetrieb",
    },
    evaluation: { overall: "Summenpegel", spectrum: "Spektrum", triggered: "getriggerte Aufnahme" },
    shaft_orientation: { horizontal: "horizontale Welle", vertical: "vertikale Welle", inclined: "geneigt" },
    drive_type: {
      direct: "direkt gekuppelt",
      belt: "Riemen",
      gear: "Getriebe",
      chain: "Kette",
      "close-coupled": "Blockbauweise",
    },
    belt_pull: { horizontal: "waagerecht", vertical: "senkrecht", inclined: "schräg" },
    bearing_type: { rolling: "Wälzlager", plain: "Gleitlager" },
  },
};

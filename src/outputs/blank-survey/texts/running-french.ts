import type { FieldTexts } from "./blank-texts.js";

/** Fields on how the machine runs, where the point lies and what was measured first, in French. */
export const RUNNING_FRENCH: FieldTexts = {
  advice: {
    criticality: "Ce qui dépend de la machine : A le plus, C le moins. C'est l'exploitant qui en décide.",
    has_standby: "Oui si une seconde machine installée peut prendre le relais ; une pièce en magasin ne compte pas.",
    replacement_planned:
      "Oui si la machine doit être retirée, remplacée ou refondue avant que les points fixes soient amortis.",
    access:
      "Quand et comment on atteint le point : en marche, seulement à l'arrêt, depuis un échafaudage, ou pas du tout.",
    power: "Puissance nominale de la machine, d'après la plaque ; pour une machine entraînée, celle de son moteur.",
    duty: "Comment la machine tourne d'ordinaire. Inversion veut dire que l'arbre tourne dans les deux sens ou oscille.",
    shortest_run: "Durée la plus courte de marche stable sans interruption, d'après les opérateurs ou la conduite.",
    load_steady: "Oui si la charge reste la même en marche ; non si elle suit les lots, le niveau ou la demande.",
    speed_change:
      "De combien la vitesse change pendant un enregistrement, en pour cent de la vitesse, d'après une tendance du variateur.",
    evaluation:
      "Ce que l'on fera du signal : suivre son niveau global, prendre des spectres, ou enregistrer sur un déclenchement.",
    low_band_wanted:
      "Oui si la cage d'un roulement ou une courroie doit être vue ; toutes deux sont sous la fréquence de rotation.",
    spectrum_lines: "Nombre de lignes du spectre, d'après les réglages de la mesure.",
    averages:
      "Combien d'enregistrements sont moyennés pour un résultat, d'après les réglages de la mesure ; 1 s'il n'y en a pas.",
    settling_time:
      "Temps entre la mise en marche et la stabilisation du capteur et des filtres ; d'après leurs fiches.",
    shaft_orientation:
      "Comment l'arbre est placé dans la machine. Sur un arbre vertical, la direction axiale est la verticale.",
    drive_type:
      "Comment la force arrive à cet arbre : accouplé directement, par courroie, engrenages ou chaîne, ou sur l'arbre moteur.",
    belt_pull: "Vers où la courroie tire : regarder de l'arbre du point vers l'autre poulie.",
    bearing_type: "Ce qui porte l'arbre à cet endroit, d'après le plan ou la liste des pièces.",
    gear_teeth: "Dents de la roue sur l'arbre de ce palier, d'après le plan ou la plaque du réducteur.",
    blade_count: "Aubes ou pales de la roue sur cet arbre, d'après le plan ou comptées.",
    highest_frequency: "Limite haute du spectre à mesurer à ce point, d'après les réglages de la mesure.",
    load_zone_angle:
      "Angle autour de l'arbre entre le point et la direction de la charge : vers le bas pour le poids, vers la traction pour une courroie.",
    distance_to_bearing: "Chemin le plus court dans le métal, du palier au milieu du capteur.",
    joints_in_path:
      "Jonctions que la vibration traverse entre palier et capteur ; du palier à son corps, on en compte une.",
    soft_layer:
      "Oui si une garniture, du caoutchouc, une pièce desserrée ou un jeu se trouve entre le palier et le capteur.",
    axis_deviation: "Angle entre l'axe du capteur et la direction indiquée, au niveau ou au rapporteur.",
    local_resonance: "Pic le plus bas que montre un test de choc près du point, machine arrêtée et consignée.",
    baseline_speed: "Vitesse de l'arbre pendant la prise des premières valeurs.",
    baseline_warm: "Oui si la machine était à sa température habituelle et rodée lors des premières valeurs.",
    baseline_records: "Combien d'enregistrements ont été pris à la suite pour les premières valeurs.",
    baseline_spread: "Écart entre le plus haut et le plus bas de ces enregistrements, en pour cent de leur moyenne.",
    stopped_velocity:
      "Vitesse vibratoire globale, cette machine à l'arrêt et ses voisines en marche ; valeur efficace.",
    handheld_velocity:
      "Vitesse vibratoire globale prise à la main au même endroit et au même moment ; valeur efficace sur la même bande.",
    full_scale_velocity:
      "Plus grande vitesse vibratoire que la mesure peut montrer, d'après les réglages ou la fiche du capteur.",
  },
  words: {
    criticality: { A: "A", B: "B", C: "C" },
    access: {
      running: "en marche",
      "stopped-only": "uniquement à l'arrêt",
      scaffold: "échafaudage",
      none: "pas d'accès",
    },
    duty: {
      continuous: "service continu",
      intermittent: "service intermittent",
      standby: "de secours",
      "short-time": "service temporaire",
      reversing: "inversion de marche",
    },
    evaluation: { overall: "niveau global", spectrum: "spectre", triggered: "enregistrement déclenché" },
    shaft_orientation: { horizontal: "arbre horizontal", vertical: "arbre vertical", inclined: "incliné" },
    drive_type: {
      direct: "accouplement direct",
      belt: "courroie",
      gear: "engrenages",
      chain: "chaîne",
      "close-coupled": "monobloc",
    },
    belt_pull: { horizontal: "horizontale", vertical: "verticale", inclined: "inclinée" },
    bearing_type: { rolling: "roulement", plain: "palier lisse" },
  },
};

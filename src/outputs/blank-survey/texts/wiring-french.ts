import type { BlankTexts } from "./blank-texts.js";

/** What a blank survey says of precautions, cable, supply and fitting in French. */
export const WIRING_FRENCH: Pick<BlankTexts, "advice" | "words"> = {
  advice: {
    isolation_possible:
      "Oui si la machine peut être coupée, consignée et vérifiée hors tension pour le travail ; non s'il n'y a pas de sectionneur cadenassable.",
    hot_work_allowed: "Si meuler et souder sont ici autorisés, soumis à permis ou interdits. C'est le site qui décide.",
    hazardous_area:
      "Zone ou division d'après le plan de zonage, ou aucune. Une cellule vide ne veut pas dire qu'il n'y a pas de danger.",
    sensor_certified:
      "Oui si le certificat du capteur nomme cette zone ou division, avec groupe de gaz et classe de température.",
    solvent_flash_point:
      "Point d'éclair du produit qui nettoie la surface avant le collage, d'après sa fiche de sécurité.",
    under_warranty: "Oui si le constructeur de la machine en répond encore.",
    maker_consent: "Oui si le constructeur de la machine a accepté par écrit le perçage ou le soudage à cet endroit.",
    turns_by_itself:
      "Oui si le tirage d'air, un reflux ou le poids peuvent faire tourner le rotor, entraînement consigné.",
    rotor_blockable: "Oui s'il existe un moyen de tenir le rotor immobile pendant le travail.",
    working_height: "Hauteur du point au-dessus du sol ou de la plateforme d'où l'on travaille.",
    wetting:
      "Eau à cet endroit dans le pire des cas, nettoyage compris : sec, éclaboussures ou pluie, jet, haute pression ou vapeur, sous l'eau.",
    ip_rating:
      "Degré de protection du capteur, du câble et du connecteur accouplé, d'après leurs fiches, par exemple IP67 ou IP66/IP68.",
    ambient_max: "Température la plus haute de l'air le long du câble et au capteur, en été et machine en marche.",
    supply_voltage_min: "Tension la plus basse que l'alimentation donne à ses bornes, d'après sa fiche ou son réglage.",
    sensor_current: "Courant permanent le plus élevé d'un capteur, d'après sa fiche.",
    sensors_on_supply: "Combien de capteurs cette alimentation nourrit en tout, celui-ci compris.",
    supply_rating: "Courant nominal de sortie de l'alimentation, d'après sa plaque, à la température de l'armoire.",
    cable_length: "Longueur du câble de l'alimentation au capteur, aller simple, avec toutes les courbes et descentes.",
    conductor_size: "Section d'un conducteur, d'après la fiche ou le marquage du câble.",
    power_cable_distance: "Distance la plus faible aux câbles de puissance sur le parcours où les câbles se longent.",
    unused_sockets_capped: "Oui si chaque connecteur inutilisé du capteur et de ses boîtes porte son bouchon.",
    polarity_checked:
      "Oui si le plus et le moins au connecteur ont été mesurés et sont justes ; non sinon, ou si ce n'est pas mesuré.",
    supply_separation:
      "Ce qui est marqué sur l'alimentation : TBTS (SELV), TBTP (PELV) ou FELV, ou qu'elle n'a pas de séparation sûre.",
    starting_current: "Courant d'un capteur à son démarrage, d'après sa fiche.",
    conductor_class:
      "Comment sont faits les conducteurs : un fil massif (classe 1), câblé rigide (classe 2) ou souple en fils fins (classes 5 et 6).",
    conductor_temperature:
      "Température la plus haute des conducteurs. Peut rester vide si la température ambiante la plus haute est donnée.",
    cable_diameter: "Diamètre extérieur du câble, d'après la fiche ou au pied à coulisse.",
    bend_radius: "Rayon de la courbe la plus serrée du parcours du câble, du côté intérieur.",
    strain_relief_distance: "Longueur de câble entre le capteur et la première attache qui le tient.",
    cable_temperature_max: "Température la plus haute que supporte la gaine du câble, d'après sa fiche.",
    screen_earthed: "À quel bout le blindage du câble est, ou sera, relié à la terre.",
    cable_route_clear:
      "Oui si le câble ne traverse aucun passage et reste hors d'atteinte des pièces tournantes ; non sinon.",
    channel_checked:
      "Oui si un coup sur la machine dans la direction indiquée a fait bouger la voie de ce point ; non si une autre a bougé.",
  },
  words: {
    hot_work_allowed: { allowed: "autorisé", "permit-needed": "avec permis", forbidden: "interdit" },
    hazardous_area: {
      none: "zone non classée",
      "zone-0": "zone 0",
      "zone-1": "zone 1",
      "zone-2": "zone 2",
      "zone-20": "zone 20",
      "zone-21": "zone 21",
      "zone-22": "zone 22",
      "division-1": "Classe I Division 1",
      "division-2": "Classe I Division 2",
    },
    wetting: {
      dry: "sec",
      splash: "éclaboussures",
      jets: "jet d'eau",
      "hot-high-pressure": "haute pression",
      submerged: "sous l'eau",
    },
    supply_separation: { selv: "TBTS", pelv: "TBTP", felv: "FELV", none: "sans séparation" },
    conductor_class: { solid: "âme massive", stranded: "âme câblée rigide", flexible: "âme souple" },
    screen_earthed: {
      "supply-end": "côté armoire",
      "sensor-end": "côté capteur",
      "both-ends": "aux deux bouts",
      nowhere: "nulle part",
    },
  },
};

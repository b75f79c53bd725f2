import type { BlankTexts } from "./blank-texts.js";

/** What a blank survey says of wall, hole, thread, bolt and bond in French. */
export const FIXING_FRENCH: Pick<BlankTexts, "advice" | "words"> = {
  advice: {
    highest_frequency:
      "Fréquence la plus haute à voir en ce point, d'après le plan de mesure ; pour engrenages et aubes, plusieurs fois leur fréquence d'engrènement ou de passage.",
    wall_thickness: "Épaisseur du métal sous le capteur, d'après le plan ou mesurée aux ultrasons.",
    behind_wall:
      "Ce qui se trouve de l'autre côté de la paroi, d'après le plan ou le constructeur. Si personne ne le sait, l'écrire ; alors on ne perce pas.",
    surface_radius:
      "Rayon de la surface là où elle est courbe, d'après le plan ou au gabarit. Sur une surface plane la cellule reste vide.",
    roughness: "Rugosité Ra de l'appui fini, d'après le plan ou un échantillon de comparaison.",
    surface_temperature: "Température la plus haute de la surface en service, et non le jour du relevé.",
    install_temperature: "Température la plus basse de la surface pendant la pose, machine à l'arrêt.",
    certified_enclosure: "Oui si le boîtier porte un certificat pour atmosphères explosives (Ex d) ; voir sa plaque.",
    thread: "Filetage du trou, par exemple M6 ou 1/4-28 UNF.",
    sensor_thread: "Filetage du capteur ou de son goujon, d'après sa fiche, par exemple M6 ou 1/4-28 UNF.",
    drill_diameter: "Diamètre du foret avant taraudage, d'après le tableau du filetage.",
    bolt_reach: "De combien la vis dépasse de la base du capteur, donc entre dans le trou.",
    bolt_class:
      "Classe de qualité de la vis, marquée sur sa tête ou donnée par la fiche du capteur, par exemple 8.8 ou A2-70.",
    thread_state: "Ce qui se trouve sur les filets au serrage : rien, de l'huile, de la graisse ou un frein-filet.",
    chip_guard:
      "Comment les copeaux sont tenus à l'écart du palier, du bobinage et des engrenages pendant perçage et taraudage.",
    adhesive:
      "Nature de la colle sous l'embase, d'après sa fiche ; ce qui n'est pas dans la liste est une autre colle.",
    adhesive_set_time:
      "Temps que demande la fiche de la colle avant de charger le collage, à la température de la surface.",
    adhesive_gap_max: "Plus grand jeu que la colle comble, d'après sa fiche.",
    welding_agreed: "Oui si le constructeur de la machine a accepté par écrit qu'une embase soit soudée ici.",
  },
  words: {
    behind_wall: {
      solid: "plein métal",
      air: "air",
      oil: "huile",
      "water-jacket": "chemise d'eau",
      pressure: "pression",
      windings: "bobinage",
      unknown: "inconnu",
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
      dry: "sec",
      oiled: "huilé",
      greased: "graissé",
      locked: "frein-filet",
    },
    adhesive: {
      "two-part-epoxy": "époxy bicomposant",
      "heat-resistant-epoxy": "époxy haute température",
      "two-part-acrylic": "acrylique bicomposant",
      instant: "colle instantanée",
      polyurethane: "polyuréthane",
      other: "autre colle",
    },
    chip_guard: {
      none: "aucune",
      "greased-drill": "foret graissé",
      "magnet-tray": "bac magnétique",
      vacuum: "aspiration",
      "stopped-short": "trou borgne seulement",
    },
  },
};

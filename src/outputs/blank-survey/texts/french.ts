import type { BlankTexts } from "./blank-texts.js";
import { FIXING_FRENCH } from "./fixing-french.js";
import { WIRING_FRENCH } from "./wiring-french.js";

/** The blank survey in French. */
export const FRENCH: BlankTexts = {
  sheets: { survey: "Relevé", legend: "Légende", lists: "Listes" },
  title: {
    proposed: "Relevé des points proposés pour des capteurs de vibrations câblés à demeure",
    installed: "Relevé des capteurs de vibrations câblés à demeure, tels que posés",
  },
  howTo: [
    "Une ligne par point. En cliquant dans une cellule, on voit ce qui est demandé et comment le trouver ; la feuille Légende le dit aussi sur papier.",
    'Ce qui n\'est pas connu reste vide ou reçoit "-" ou "tbc" : la règle qui en a besoin reste alors indécise. Prière de ne pas deviner.',
  ],
  legend: {
    title: "Ce que signifie chaque colonne",
    columns: ["Colonne", "Ce qui est demandé, et comment le trouver ou le mesurer", "Ce que la cellule accepte"],
    place: "{heading}, colonne {letter}",
    examples: "Exemple d'une ligne remplie. C'est un exemple, pas un point ; il n'est pas lu.",
    cautions: "Avant toute intervention sur une machine",
  },
  takes: {
    number: "un nombre en {unit}, de {lowest} à {highest}",
    count: "un nombre entier, de {lowest} à {highest}",
    words: "au choix : {words}",
    date: "une date, par exemple 27/03/2026",
    text: "texte",
  },
  checks: {
    title: "Valeur à vérifier",
    number:
      'Un nombre de {lowest} à {highest} est attendu ici ({unit}). S\'il n\'est pas connu, laisser la cellule vide ou écrire "-" ou "tbc".',
    words:
      'Choisir un mot de la liste. Si la réponse n\'est pas connue, laisser la cellule vide ou écrire "-" ou "tbc".',
    date: 'Une date est attendue ici, par exemple 27/03/2026. Si elle n\'est pas connue, laisser la cellule vide ou écrire "-" ou "tbc".',
  },
  notKnown: 'Si inconnu : vide, "-" ou "tbc".',
  noAdvice: "Écrire ce qui a été constaté sur place. Ce qui n'est pas connu reste vide.",
  listsTitle: "Mots des listes déroulantes ; prière de ne pas modifier cette feuille",
  footer: "un tri préalable, pas une autorisation",
  yesNo: { yes: "oui", no: "non" },
  units: { "r/min": "tr/min" },
  headings: { flat_diameter: "Diamètre plan" },
  advice: {
    point_id: "Nom du point de mesure. Il ne doit figurer qu'une seule fois dans tout le relevé.",
    asset_tag:
      "Repère de la machine, tel qu'il figure sur sa plaque ou dans la GMAO. Il est conservé tel qu'il est saisi, zéros de tête compris.",
    machine_name: "Nom de la machine, tel qu'il est employé sur le site.",
    machine_type:
      "Ce qu'est la machine dans son ensemble : pour une pompe et son moteur, pompe. L'organe qui porte le capteur a sa propre colonne.",
    surveyed_by: "Initiales de la personne qui a vu le point sur place.",
    surveyed_on: "Jour où le point a été vu sur place.",
    photo: "Numéro ou nom de fichier d'une photo qui montre l'endroit et ses abords.",
    notes: "Tout ce qui n'a pas de colonne propre. C'est conservé pour les lecteurs ; aucune règle ne le lit.",
    nominal_speed:
      "Vitesse de l'arbre qui tourne dans ce palier, d'après la plaque. Derrière un réducteur, une courroie ou une chaîne, ce n'est pas celle du moteur.",
    lowest_speed:
      "Vitesse la plus basse à laquelle cet arbre tourne de façon stable, d'après les réglages du variateur ou le procédé. À vitesse fixe, laisser vide au besoin.",
    highest_speed:
      "Vitesse la plus haute à laquelle cet arbre tourne de façon stable, d'après les réglages du variateur ou le procédé. À vitesse fixe, laisser vide au besoin.",
    variable_speed:
      "Oui si un variateur ou un autre entraînement change la vitesse en marche ; non si la vitesse est fixe.",
    speed_reference:
      "Signal de vitesse raccordé, ou à raccorder, à la mesure : une impulsion par tour, plusieurs impulsions, un signal analogique ou une valeur du variateur ou de l'automate.",
    component: "Organe de l'ensemble sur lequel le capteur sera posé.",
    bearing_position:
      "Palier auquel appartient le point. Le côté accouplement est celui de l'accouplement ou de la poulie par où passe la puissance.",
    direction: "Direction dans laquelle le capteur mesure. Axial : le long de l'arbre ; radial : en travers.",
    mounted_on:
      "Ce sur quoi le capteur sera posé. Frapper dessus : un capot, un protecteur ou une ailette sonne creux et ne montre pas comment le palier vibre.",
    surface_material:
      "Matériau de la paroi sous le capteur, d'après le plan ou une marque de fonderie. Un aimant tient sur la fonte et l'acier ordinaire, pas sur l'aluminium.",
    surface_finish: "État de la surface telle qu'elle est aujourd'hui, avant tout meulage ou nettoyage.",
    flat_diameter:
      "Diamètre du plus grand cercle plan et massif de la surface, dressé ou pouvant l'être. Mesurer à l'endroit le plus étroit.",
    sensor_model:
      "Modèle du capteur, sous son nom dans les règles. Tant que la cellule est vide, les limites qui dépendent du modèle restent indécises.",
    mounting_method: "Comment le capteur, ou l'embase placée dessous, sera fixé à la machine.",
    thread_depth:
      "Profondeur de filetage complet, de la surface finie au dernier filet entier. Elle est inférieure à la profondeur de perçage.",
    hole_depth:
      "Profondeur du trou à son plein diamètre, depuis la surface finie, sans le cône laissé par la pointe du foret.",
    target_torque: "Couple prévu pour serrer le capteur ; ce n'est pas celui des vis de la machine.",
    cure_time:
      "Temps entre le collage de l'embase et le serrage du capteur. La fiche de la colle l'indique pour la température du lieu.",
    supply_voltage:
      "Tension qui alimentera le capteur, d'après le plan ou la plaque de son alimentation ; ce n'est pas celle du moteur.",
    supply_kind:
      "Si cette alimentation délivre du courant continu ou alternatif. C'est le côté sortie de l'alimentation qui compte.",
    installed_on: "Jour où le capteur a été posé.",
    installed_by: "Initiales de la personne qui a posé le capteur.",
    applied_torque: "Couple réellement appliqué au capteur, tel que réglé ou lu sur la clé dynamométrique.",
    voltage_at_sensor:
      "Tension continue au connecteur du capteur, capteur en marche, mesurée par une personne compétente.",
    sensor_serial: "Numéro de série sur le corps du capteur, avec tous les zéros de tête.",
    baseline_velocity:
      "Première vitesse vibratoire globale après la pose, en marche normale ; valeur efficace (RMS), pas la valeur crête.",
    baseline_acceleration:
      "Première accélération vibratoire globale après la pose, en marche normale ; valeur efficace (RMS). 1 g vaut 9,81 m/s².",
    baseline_load: "Charge de la machine lors des premières mesures, en pour cent de sa charge nominale.",
    baseline_on: "Jour des premières mesures.",
    ...FIXING_FRENCH.advice,
    ...WIRING_FRENCH.advice,
  },
  words: {
    machine_type: {
      pump: "pompe",
      fan: "ventilateur",
      motor: "moteur électrique",
      gearbox: "réducteur",
      compressor: "compresseur",
      agitator: "agitateur",
      conveyor: "convoyeur",
      mill: "broyeur",
      turbine: "turbine",
      generator: "générateur",
      centrifuge: "centrifugeuse",
      roll: "rouleau",
    },
    component: {
      motor: "moteur",
      gearbox: "réducteur",
      pump: "pompe",
      fan: "ventilateur",
      compressor: "compresseur",
      "bearing-housing": "corps de palier",
      roll: "rouleau",
      other: "autre",
    },
    bearing_position: {
      "drive-end": "côté accouplement",
      "non-drive-end": "côté opposé",
      "input-drive-side": "arbre d'entrée",
      "output-drive-side": "arbre de sortie",
      intermediate: "arbre intermédiaire",
      thrust: "palier de butée",
    },
    direction: {
      horizontal: "horizontal",
      vertical: "vertical",
      axial: "axial",
      radial: "radial",
      triaxial: "triaxial",
    },
    variable_speed: { yes: "oui", no: "non" },
    speed_reference: {
      none: "aucun signal",
      "once-per-turn": "une impulsion par tour",
      pulses: "train d'impulsions",
      analogue: "signal analogique",
      network: "du variateur",
      unspecified: "disponible",
    },
    mounted_on: {
      "bearing-housing": "corps de palier",
      casing: "carter",
      "cooling-fin": "ailette",
      "fan-cover": "capot de ventilateur",
      guard: "protecteur",
      foot: "pied",
      pipe: "tuyauterie",
    },
    surface_material: {
      "grey-cast-iron": "fonte grise",
      "ductile-iron": "fonte ductile",
      "carbon-steel": "acier au carbone",
      "austenitic-stainless": "acier inoxydable austénitique",
      "ferritic-stainless": "acier inoxydable ferritique",
      "cast-steel": "acier moulé",
      aluminium: "aluminium",
      bronze: "bronze",
      "sheet-metal": "tôlerie",
      plastic: "plastique",
    },
    surface_finish: {
      "bare-machined": "usiné",
      "as-cast": "brut de fonderie",
      painted: "peint",
      "powder-coated": "thermolaqué",
      galvanised: "galvanisé",
      rusty: "rouillé",
      oily: "huileux",
      insulated: "calorifugé",
      rubber: "caoutchouté",
      coated: "autre revêtement",
    },
    mounting_method: {
      "tapped-hole": "trou taraudé",
      "adhesive-pad": "embase collée",
      "welded-pad": "embase soudée",
      magnet: "aimant",
      clamp: "collier de serrage",
      "existing-hole": "taraudage existant",
    },
    supply_kind: { dc: "courant continu", ac: "courant alternatif" },
    ...FIXING_FRENCH.words,
    ...WIRING_FRENCH.words,
  },
  example: { machine_name: "Pompe alimentaire 1", notes: "tuyau devant le palier, 120 mm libres" },
  cautions: [
    "Un verdict est un tri préalable, pas une autorisation. Les règles locales, le système de permis du site et des personnes compétentes ou habilitées décident de ce qui est fait.",
    "Isoler la machine, la consigner et prouver avec un vérificateur contrôlé qu'elle est hors tension et ne peut pas démarrer. Libérer l'énergie accumulée (pression, ressorts, poids, condensateurs des variateurs) et bloquer les rotors qui peuvent tourner d'eux-mêmes.",
    "Savoir ce qu'il y a derrière la paroi (huile, pression, eau, un bobinage) avant que quiconque ne perce.",
    "Porter une protection oculaire et utiliser les protecteurs pour percer, meuler et brosser. Là où les étincelles sont un danger, elles exigent un permis de feu.",
    "Une peinture ancienne peut contenir du plomb ou du chromate, un calorifuge ou un joint ancien de l'amiante : pas de meulage à sec ni d'arrachage tant que leur composition n'est pas connue.",
    "Les colles et les solvants exigent une ventilation, des gants et aucune source d'inflammation.",
    "Attention aux surfaces chaudes, à l'accès sûr en hauteur et aux aimants puissants près des implants.",
    "Aucun travail là où une atmosphère explosive peut se présenter sans l'autorisation écrite du site et sans preuve que l'endroit est exempt de gaz et de poussières ; une zone que personne n'a classée n'est pas une zone sans danger.",
    "Couper l'alimentation avant de raccorder. Fermer les connecteurs inutilisés et tenir les câbles à l'écart des pièces tournantes.",
    "Remettre les protecteurs en place et compter les outils avant de rendre la machine.",
  ],
};

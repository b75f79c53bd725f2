import type { FieldTexts } from "./blank-texts.js";

/** Fields on motor, bearing and support, on how far the sensor reaches, and on the bond, in French. */
export const REACH_FRENCH: FieldTexts = {
  advice: {
    pole_count:
      "Pôles du moteur (pas les paires), de sa plaque ou de sa fiche ; un moteur d'environ 1480 tr/min à 50 Hz en a 4.",
    mains_frequency: "Fréquence du réseau qui alimente le moteur ; derrière un variateur la cellule reste vide.",
    speed_taken_from:
      "Quel arbre de la machine donne le signal de vitesse, et si le rapport à l'arbre de ce point est indiqué.",
    step_named: "Oui si l'on mesure à un palier de vitesse et de charge qui a un nom et figure dans l'ordre.",
    velocity_of_interest:
      "Plus petite vitesse vibratoire à distinguer en ce point, valeur efficace ; la dit qui lira les valeurs.",
    accepted_error:
      "De combien pour cent une lecture en haut de la bande peut être fausse ; le décide qui lit les valeurs.",
    bearing_elements: "Billes ou rouleaux d'une rangée du roulement, de sa fiche ou comptés.",
    element_diameter: "Diamètre des billes, ou diamètre moyen des rouleaux, de la fiche du roulement.",
    pitch_diameter: "Diamètre du cercle par les centres des billes ou rouleaux, de la fiche du roulement.",
    contact_angle:
      "Angle de contact du roulement, de sa fiche ; 0 pour ceux à gorge profonde et à rouleaux cylindriques.",
    support_stiffness: "Rigide sur béton ou châssis raide, souple sur ressorts, caoutchouc ou châssis léger.",
    shaft_height: "Hauteur de l'axe du moteur au-dessus des pattes ; c'est le nombre de la taille de carcasse.",
    moving_mass:
      "Masse de la partie qui vibre avec le point, comme un couvercle de palier ou un carter léger, pas de toute la machine.",
    mounted_resonance:
      "Résonance du capteur tel qu'il est monté ici, mesurée par choc ou excitateur ; vide si personne ne l'a mesurée.",
    mount_mass:
      "Masse de l'embase, de l'adaptateur et du bout de câble ensemble ; 0 si le capteur est sur la machine même.",
    adhesive_set_temperature: "Température pour laquelle la fiche de la colle donne le temps d'attente.",
    bond_strength:
      "Résistance au cisaillement que le collage a atteinte au serrage du capteur, de la fiche de la colle.",
    pad_held: "Oui si l'embase est tenue par une clé pendant que le capteur est serré dessus.",
    hole_tilt:
      "Angle entre le trou et la perpendiculaire de la surface rectifiée, à l'équerre ou avec une vis d'essai.",
    drip_loop: "Oui si le câble pend en boucle sous le connecteur, pour que l'eau s'égoutte avant d'y arriver.",
  },
  words: {
    speed_taken_from: {
      "fastest-shaft": "arbre le plus rapide",
      "ratio-stated": "rapport indiqué",
      "other-shaft": "autre arbre",
    },
    support_stiffness: { rigid: "rigide", flexible: "souple" },
  },
};

import type { FieldTexts } from "./blank-texts.js";

/** Fields on motor, bearing and support, on how far the sensor reaches, and on the bond, in Spanish. */
export const REACH_SPANISH: FieldTexts = {
  advice: {
    pole_count: "Polos del motor (no pares), de su placa o de su ficha; un motor de unas 1480 r/min a 50 Hz tiene 4.",
    mains_frequency: "Frecuencia de la red que alimenta el motor; detrás de un variador la celda queda vacía.",
    speed_taken_from:
      "Qué eje de la máquina da la señal de velocidad, y si está indicada la relación con el eje de este punto.",
    step_named: "Sí si se mide en un régimen de velocidad y carga que tiene nombre y figura en la orden.",
    velocity_of_interest:
      "Menor velocidad de vibración que debe distinguirse en este punto, valor eficaz; la dice quien leerá los valores.",
    accepted_error:
      "En qué tanto por ciento puede errar una lectura en lo alto de la banda; lo decide quien lee los valores.",
    bearing_elements: "Bolas o rodillos en una hilera del rodamiento, de su ficha o contados.",
    element_diameter: "Diámetro de las bolas, o diámetro medio de los rodillos, de la ficha del rodamiento.",
    pitch_diameter: "Diámetro del círculo por los centros de las bolas o rodillos, de la ficha del rodamiento.",
    contact_angle:
      "Ángulo de contacto del rodamiento, de su ficha; 0 en los de bolas de ranura profunda y de rodillos cilíndricos.",
    support_stiffness: "Rígido sobre hormigón o bastidor firme; flexible sobre muelles, goma o un bastidor ligero.",
    shaft_height: "Altura del eje del motor sobre sus patas; es el número del tamaño de carcasa.",
    moving_mass:
      "Masa de la parte que vibra con el punto, como una tapa de rodamiento o una carcasa ligera, no de toda la máquina.",
    mounted_resonance:
      "Resonancia del sensor tal como está montado aquí, medida con golpe o excitador; vacía si nadie la midió.",
    mount_mass: "Masa de base, adaptador y extremo del cable juntos; 0 si el sensor va sobre la propia máquina.",
    adhesive_set_temperature: "Temperatura para la que la ficha del adhesivo da el tiempo de espera.",
    bond_strength:
      "Resistencia a cortante que la unión ha alcanzado cuando se aprieta el sensor, de la ficha del adhesivo.",
    pad_held: "Sí si la base se sujeta con una llave mientras se aprieta el sensor sobre ella.",
    hole_tilt:
      "Ángulo entre el taladro y la perpendicular de la superficie rectificada, con escuadra o con un tornillo de prueba.",
    drip_loop: "Sí si el cable cuelga en un bucle bajo el conector, de modo que el agua gotee antes de llegar a él.",
  },
  words: {
    speed_taken_from: {
      "fastest-shaft": "eje más rápido",
      "ratio-stated": "relación indicada",
      "other-shaft": "otro eje",
    },
    support_stiffness: { rigid: "rígido", flexible: "flexible" },
  },
};

import type { BlankTexts } from "./blank-texts.js";

/** What a blank survey says of wall, hole, thread, bolt and bond in Spanish. */
export const FIXING_SPANISH: Pick<BlankTexts, "advice" | "words"> = {
  advice: {
    highest_frequency:
      "Frecuencia más alta que debe verse en este punto, según el plan de medición; en engranajes y álabes, varias veces su frecuencia de engrane o de paso.",
    wall_thickness: "Espesor del metal bajo el sensor, según el plano o medido con ultrasonidos.",
    behind_wall:
      "Qué hay al otro lado de la pared, según el plano o el fabricante. Si nadie lo sabe, indíquelo; entonces no se taladra.",
    surface_radius:
      "Radio de la superficie donde es curva, según el plano o con una galga. En una superficie plana la celda queda vacía.",
    roughness: "Rugosidad Ra del asiento acabado, según el plano o con una muestra de comparación.",
    surface_temperature: "Temperatura más alta de la superficie en servicio, no la del día de la visita.",
    install_temperature: "Temperatura más baja de la superficie durante el montaje, con la máquina parada.",
    certified_enclosure: "Sí, si la carcasa tiene certificado para atmósferas explosivas (Ex d); consta en su placa.",
    thread: "Rosca del agujero, por ejemplo M6 o 1/4-28 UNF.",
    sensor_thread: "Rosca del sensor o de su espárrago, según su hoja, por ejemplo M6 o 1/4-28 UNF.",
    drill_diameter: "Diámetro de la broca del agujero antes de roscar, según la tabla de la rosca.",
    bolt_reach: "Cuánto sobresale el perno de la base del sensor, y por tanto entra en el agujero.",
    bolt_class:
      "Clase de resistencia del perno, según la marca de su cabeza o la hoja del sensor, por ejemplo 8.8 o A2-70.",
    thread_state: "Qué hay en las roscas al apretar el sensor: nada, aceite, grasa o un fijador.",
    chip_guard:
      "Cómo se evita que las virutas lleguen al rodamiento, al bobinado o a los engranajes al taladrar y roscar.",
    adhesive: "Clase de adhesivo bajo la base, según su hoja; lo que no está en la lista es otro.",
    adhesive_set_time:
      "Tiempo que pide la hoja del adhesivo antes de cargar la unión, a la temperatura de la superficie.",
    adhesive_gap_max: "Mayor holgura que rellena el adhesivo, según su hoja.",
    welding_agreed: "Sí, si el fabricante de la máquina ha aceptado por escrito que aquí se suelde una base.",
  },
  words: {
    behind_wall: {
      solid: "metal macizo",
      air: "aire",
      oil: "aceite",
      "water-jacket": "camisa de agua",
      pressure: "presión",
      windings: "bobinado",
      unknown: "desconocido",
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
      dry: "seco",
      oiled: "aceitado",
      greased: "engrasado",
      locked: "fijador de roscas",
    },
    adhesive: {
      "two-part-epoxy": "epoxi bicomponente",
      "heat-resistant-epoxy": "epoxi de alta temperatura",
      "two-part-acrylic": "acrílico bicomponente",
      instant: "adhesivo instantáneo",
      polyurethane: "poliuretano",
      other: "otro",
    },
    chip_guard: {
      none: "ninguna",
      "greased-drill": "broca engrasada",
      "magnet-tray": "bandeja magnética",
      vacuum: "aspiración",
      "stopped-short": "sólo agujero ciego",
    },
  },
};

import type { BlankTexts } from "./blank-texts.js";

/** What a blank survey says of precautions, cable, supply and fitting in Spanish. */
export const WIRING_SPANISH: Pick<BlankTexts, "advice" | "words"> = {
  advice: {
    isolation_possible:
      "Sí, si la máquina puede desconectarse, bloquearse y comprobarse sin tensión para el trabajo; no, si falta un seccionador bloqueable.",
    hot_work_allowed:
      "Si aquí se permite amolar y soldar, se necesita un permiso o está prohibido. Lo decide la planta.",
    hazardous_area:
      "Zona o división según el plano de áreas clasificadas, o ninguna. Una celda vacía no significa que no haya peligro.",
    sensor_certified:
      "Sí, si el certificado del sensor nombra esta zona o división, con grupo de gas y clase de temperatura.",
    solvent_flash_point:
      "Punto de inflamación del producto con que se limpia la superficie antes de pegar, según su ficha de seguridad.",
    under_warranty: "Sí, si el fabricante de la máquina aún responde por ella.",
    maker_consent: "Sí, si el fabricante de la máquina ha aceptado por escrito que se taladre o suelde aquí.",
    turns_by_itself:
      "Sí, si el tiro de aire, el reflujo o el peso pueden girar el rotor con el accionamiento desconectado.",
    rotor_blockable: "Sí, si hay un medio de sujetar el rotor mientras dura el trabajo.",
    working_height: "Altura del punto sobre el suelo o la plataforma desde donde se trabaja.",
    wetting:
      "Agua en el lugar en el peor caso, limpieza incluida: seco, salpicaduras o lluvia, manguera, alta presión o vapor, bajo el agua.",
    ip_rating:
      "Grado de protección de sensor, cable y conector acoplado, según sus fichas, por ejemplo IP67 o IP66/IP68.",
    ambient_max:
      "Temperatura más alta del aire a lo largo del cable y en el sensor, en verano y con la máquina en marcha.",
    supply_voltage_min: "Tensión más baja que da la fuente en sus propios bornes, según su ficha o su ajuste.",
    sensor_current: "Corriente permanente más alta de un sensor, según su ficha.",
    sensors_on_supply: "Cuántos sensores alimenta esta fuente en total, contando este.",
    supply_rating: "Corriente nominal de salida de la fuente, según su placa, a la temperatura del armario.",
    cable_length: "Longitud del cable de la fuente al sensor, solo ida, con todas las curvas y bajadas.",
    conductor_size: "Sección de un conductor, según la ficha o la marca del cable.",
    power_cable_distance: "Distancia mínima a los cables de fuerza en el tramo en que van en paralelo.",
    unused_sockets_capped: "Sí, si cada conector sin uso del sensor y de sus cajas lleva su tapón.",
    polarity_checked: "Sí, si se midieron más y menos en el conector y están bien; no, si no lo están o no se midió.",
    supply_separation:
      "Lo que está marcado en la fuente: MBTS (SELV), MBTP (PELV) o FELV, o que no tiene separación segura.",
    starting_current: "Corriente de un sensor al arrancar, según su ficha.",
    conductor_class:
      "Cómo son los conductores: un hilo macizo (clase 1), cableado rígido (clase 2) o flexible de hilos finos (clases 5 y 6).",
    conductor_temperature:
      "Temperatura más alta que alcanzan los conductores. Puede quedar vacía si se indica la temperatura ambiente más alta.",
    cable_diameter: "Diámetro exterior del cable, según la ficha o medido con calibre.",
    bend_radius: "Radio de la curva más cerrada del recorrido del cable, por su lado interior.",
    strain_relief_distance: "Longitud de cable desde el sensor hasta la primera abrazadera o brida que lo sujeta.",
    cable_temperature_max: "Temperatura más alta que soporta la cubierta del cable, según su ficha.",
    screen_earthed: "En qué extremo la pantalla del cable está, o estará, unida a tierra.",
    cable_route_clear: "Sí, si el cable no cruza ningún paso y queda lejos de partes giratorias; si no, no.",
    channel_checked:
      "Sí, si un golpe en la máquina en la dirección indicada movió el canal de este punto; no, si se movió otro.",
  },
  words: {
    hot_work_allowed: { allowed: "permitido", "permit-needed": "con permiso", forbidden: "prohibido" },
    hazardous_area: {
      none: "zona no clasificada",
      "zone-0": "zona 0",
      "zone-1": "zona 1",
      "zone-2": "zona 2",
      "zone-20": "zona 20",
      "zone-21": "zona 21",
      "zone-22": "zona 22",
      "division-1": "Clase I División 1",
      "division-2": "Clase I División 2",
    },
    wetting: {
      dry: "seco",
      splash: "salpicaduras",
      jets: "chorro de agua",
      "hot-high-pressure": "alta presión",
      submerged: "bajo el agua",
    },
    supply_separation: { selv: "MBTS", pelv: "MBTP", felv: "FELV", none: "sin separación" },
    conductor_class: { solid: "unifilar", stranded: "cableado rígido", flexible: "flexible" },
    screen_earthed: {
      "supply-end": "en el armario",
      "sensor-end": "en el sensor",
      "both-ends": "ambos extremos",
      nowhere: "en ningún extremo",
    },
  },
};

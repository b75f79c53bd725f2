import type { BlankTexts } from "./blank-texts.js";
import { FIXING_SPANISH } from "./fixing-spanish.js";
import { WIRING_SPANISH } from "./wiring-spanish.js";

/** The blank survey in Spanish. */
export const SPANISH: BlankTexts = {
  sheets: { survey: "Toma de datos", legend: "Leyenda", lists: "Listas" },
  title: {
    proposed: "Toma de datos de puntos propuestos para sensores de vibración cableados de forma permanente",
    installed: "Toma de datos de sensores de vibración cableados de forma permanente, tal como se instalaron",
  },
  howTo: [
    "Una fila por punto. Al seleccionar una celda se ve qué se pide y cómo averiguarlo; la hoja Leyenda dice lo mismo en papel.",
    'Lo que no se sabe queda vacío o lleva "-" o "tbc": la regla que lo necesita queda entonces sin decidir. No adivine, por favor.',
  ],
  legend: {
    title: "Qué significa cada columna",
    columns: ["Columna", "Qué se pide y cómo averiguarlo o medirlo", "Qué admite la celda"],
    place: "{heading}, columna {letter}",
    examples: "Ejemplo de una fila rellenada. Es un ejemplo, no un punto; no se lee.",
    cautions: "Antes de que nadie trabaje en una máquina",
  },
  takes: {
    number: "un número en {unit}, de {lowest} a {highest}",
    count: "un número entero, de {lowest} a {highest}",
    words: "una de estas: {words}",
    date: "una fecha, por ejemplo 27/03/2026",
    text: "texto",
  },
  checks: {
    title: "Compruebe este valor",
    number:
      'Aquí se espera un número de {lowest} a {highest} ({unit}). Si no se sabe, deje la celda vacía o escriba "-" o "tbc".',
    words: 'Elija una palabra de la lista. Si no se sabe, deje la celda vacía o escriba "-" o "tbc".',
    date: 'Aquí se espera una fecha, por ejemplo 27/03/2026. Si no se sabe, deje la celda vacía o escriba "-" o "tbc".',
  },
  notKnown: 'Si no se sabe: vacío, "-" o "tbc".',
  noAdvice: "Escriba lo que se encontró en planta. Lo que no se sabe queda vacío.",
  listsTitle: "Palabras de las listas desplegables; por favor, no cambie esta hoja",
  footer: "una comprobación previa, no un permiso",
  yesNo: { yes: "sí", no: "no" },
  units: { N·m: "Nm" },
  headings: { flat_diameter: "Diámetro plano" },
  advice: {
    point_id: "Nombre del punto de medida. Debe aparecer una sola vez en toda la toma de datos.",
    asset_tag:
      "Código de la máquina, como figura en su placa o en el sistema de mantenimiento. Se conserva como se escribe, también con ceros delante.",
    machine_name: "Nombre de la máquina, como se la conoce en la planta.",
    machine_type:
      "Qué es la máquina en su conjunto: en una bomba con su motor, bomba. La parte que lleva el sensor tiene su propia columna.",
    surveyed_by: "Iniciales de quien vio el punto en planta.",
    surveyed_on: "Día en que se vio el punto en planta.",
    photo: "Número o nombre de archivo de una foto que muestre el lugar y lo que hay alrededor.",
    notes: "Todo lo que no tiene columna propia. Se conserva para las personas; ninguna regla lo lee.",
    nominal_speed:
      "Velocidad del eje que gira en este rodamiento, según la placa. Después de un reductor, una correa o una cadena no es la velocidad del motor.",
    lowest_speed:
      "Velocidad más baja a la que este eje gira de forma estable, según los ajustes del accionamiento o el proceso. Con velocidad fija puede quedar vacía.",
    highest_speed:
      "Velocidad más alta a la que este eje gira de forma estable, según los ajustes del accionamiento o el proceso. Con velocidad fija puede quedar vacía.",
    variable_speed:
      "Sí, si un variador u otro accionamiento cambia la velocidad en servicio; no, si la velocidad es fija.",
    speed_reference:
      "Señal de velocidad que está o estará conectada a la medición: un pulso por vuelta, varios pulsos, una señal analógica o un valor del variador o del control.",
    component: "Parte del conjunto sobre la que irá el sensor.",
    bearing_position:
      "Rodamiento al que pertenece el punto. El lado de acoplamiento es el del acoplamiento o la polea por donde pasa la potencia.",
    direction: "Dirección en la que mide el sensor. Axial es a lo largo del eje; radial, perpendicular a él.",
    mounted_on:
      "Sobre qué irá el sensor. Dé unos golpes: una tapa, una protección o una aleta suena a hueco y no muestra cómo vibra el rodamiento.",
    surface_material:
      "Material de la pared bajo el sensor, según el plano o la marca de fundición. Un imán se pega a la fundición y al acero común, no al aluminio.",
    surface_finish: "Estado de la superficie tal como está hoy, antes de amolar o limpiar nada.",
    flat_diameter:
      "Diámetro del mayor círculo plano y macizo de la superficie, rectificado o que se pueda rectificar. Mida por donde es más estrecho.",
    sensor_model:
      "Modelo del sensor, con su nombre en las reglas. Mientras esté vacío, los límites que dependen del modelo quedan sin decidir.",
    mounting_method: "Cómo se fijará a la máquina el sensor, o la base que va debajo.",
    thread_depth:
      "Profundidad de rosca completa, desde la superficie terminada hasta el último filete entero. Es menor que la profundidad del taladro.",
    hole_depth:
      "Profundidad del taladro con su diámetro completo, desde la superficie terminada, sin el cono que deja la punta de la broca.",
    target_torque: "Par con el que se apretará el sensor, según lo previsto; no el de los tornillos de la máquina.",
    cure_time:
      "Tiempo desde pegar la base hasta apretar el sensor. La hoja del adhesivo lo indica para la temperatura del lugar.",
    supply_voltage: "Tensión que alimentará el sensor, según el plano o la placa de su fuente; no la del motor.",
    supply_kind: "Si esa alimentación da corriente continua o alterna. Cuenta el lado de salida de la fuente.",
    installed_on: "Día en que se montó el sensor.",
    installed_by: "Iniciales de quien montó el sensor.",
    applied_torque:
      "Par con el que se apretó de verdad el sensor, según lo ajustado o leído en la llave dinamométrica.",
    voltage_at_sensor:
      "Tensión continua en el conector del sensor mientras el sensor funciona, medida por una persona competente.",
    sensor_serial: "Número de serie en el cuerpo del sensor, con todos los ceros de delante.",
    baseline_velocity:
      "Primera velocidad de vibración global después del montaje, en marcha normal; valor eficaz (RMS), no el de pico.",
    baseline_acceleration:
      "Primera aceleración de vibración global después del montaje, en marcha normal; valor eficaz (RMS). 1 g son 9,81 m/s².",
    baseline_load: "Carga de la máquina al tomar los primeros valores, en tanto por ciento de su carga nominal.",
    baseline_on: "Día en que se tomaron los primeros valores.",
    ...FIXING_SPANISH.advice,
    ...WIRING_SPANISH.advice,
  },
  words: {
    machine_type: {
      pump: "bomba",
      fan: "ventilador",
      motor: "motor eléctrico",
      gearbox: "reductor",
      compressor: "compresor",
      agitator: "agitador",
      conveyor: "transportador",
      mill: "molino",
      turbine: "turbina",
      generator: "generador",
      centrifuge: "centrífuga",
      roll: "rodillo",
    },
    component: {
      motor: "motor",
      gearbox: "reductor",
      pump: "bomba",
      fan: "ventilador",
      compressor: "compresor",
      "bearing-housing": "caja de rodamientos",
      roll: "rodillo",
      other: "otro",
    },
    bearing_position: {
      "drive-end": "lado acoplamiento",
      "non-drive-end": "lado opuesto",
      "input-drive-side": "eje entrada",
      "output-drive-side": "eje salida",
      intermediate: "eje intermedio",
      thrust: "cojinete axial",
    },
    direction: {
      horizontal: "horizontal",
      vertical: "vertical",
      axial: "axial",
      radial: "radial",
      triaxial: "triaxial",
    },
    variable_speed: { yes: "sí", no: "no" },
    speed_reference: {
      none: "sin señal",
      "once-per-turn": "un pulso por vuelta",
      pulses: "varios pulsos",
      analogue: "señal analógica",
      network: "del variador",
      unspecified: "disponible",
    },
    mounted_on: {
      "bearing-housing": "caja de rodamientos",
      casing: "carcasa",
      "cooling-fin": "aleta de refrigeración",
      "fan-cover": "tapa del ventilador",
      guard: "protección",
      foot: "pata",
      pipe: "tubería",
    },
    surface_material: {
      "grey-cast-iron": "fundición gris",
      "ductile-iron": "fundición nodular",
      "carbon-steel": "acero al carbono",
      "austenitic-stainless": "acero inoxidable austenítico",
      "ferritic-stainless": "acero inoxidable ferrítico",
      "cast-steel": "acero moldeado",
      aluminium: "aluminio",
      bronze: "bronce",
      "sheet-metal": "chapa",
      plastic: "plástico",
    },
    surface_finish: {
      "bare-machined": "mecanizado",
      "as-cast": "sin mecanizar",
      painted: "pintado",
      "powder-coated": "pintura en polvo",
      galvanised: "galvanizado",
      rusty: "oxidado",
      oily: "aceitoso",
      insulated: "calorifugado",
      rubber: "engomado",
      coated: "otro recubrimiento",
    },
    mounting_method: {
      "tapped-hole": "taladro roscado",
      "adhesive-pad": "base pegada",
      "welded-pad": "base soldada",
      magnet: "imán",
      clamp: "abrazadera",
      "existing-hole": "taladro existente",
    },
    supply_kind: { dc: "corriente continua", ac: "corriente alterna" },
    ...FIXING_SPANISH.words,
    ...WIRING_SPANISH.words,
  },
  example: { machine_name: "Bomba de agua de alimentación 1", notes: "tubo delante de la caja, 120 mm libres" },
  cautions: [
    "Un veredicto es una comprobación previa, no un permiso. Las normas locales, el sistema de permisos de la planta y las personas competentes o autorizadas deciden lo que se hace.",
    "Aísle la máquina, bloquéela y compruebe con un comprobador verificado que está sin tensión y que no puede arrancar. Libere la energía acumulada (presión, muelles, pesos, los condensadores de los variadores) y bloquee los rotores que puedan girar por sí solos.",
    "Sepa qué hay detrás de la pared (aceite, presión, agua, un bobinado) antes de que nadie taladre.",
    "Lleve protección ocular y use resguardos al taladrar, amolar y cepillar. Las chispas requieren un permiso de trabajo en caliente donde sean un peligro.",
    "La pintura vieja puede contener plomo o cromato, y los aislamientos y juntas viejos amianto: no se amola en seco ni se arranca nada hasta conocer su composición.",
    "Los adhesivos y disolventes requieren ventilación, guantes y ninguna fuente de ignición.",
    "Cuidado con las superficies calientes, el acceso seguro en altura y los imanes potentes cerca de implantes.",
    "Ningún trabajo donde pueda haber una atmósfera explosiva sin la autorización escrita de la planta y sin comprobar que el lugar está libre de gas y polvo; un área que nadie ha clasificado no es un área sin peligro.",
    "Desconecte la alimentación antes de conectar. Cierre los conectores sin usar y mantenga los cables lejos de las partes giratorias.",
    "Vuelva a poner los resguardos y cuente las herramientas antes de entregar la máquina.",
  ],
};

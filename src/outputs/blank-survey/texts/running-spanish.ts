import type { FieldTexts } from "./blank-texts.js";

/** Fields on how the machine runs, where the point lies and what was measured first, in Spanish. */
export const RUNNING_SPANISH: FieldTexts = {
  advice: {
    criticality: "Cuánto depende de la máquina: A lo más, C lo menos. Lo decide el titular de la planta.",
    has_standby: "Sí, si hay una segunda máquina instalada que puede relevarla; un repuesto en el almacén no cuenta.",
    replacement_planned:
      "Sí, si la máquina se va a retirar, sustituir o reformar antes de que los puntos fijos se amorticen.",
    access:
      "Cuándo y cómo se llega al punto: en marcha, solo con la máquina parada, desde un andamio o de ningún modo.",
    power: "Potencia nominal de la máquina según la placa; en una máquina accionada, la de su accionamiento.",
    duty: "Cómo trabaja normalmente la máquina. Inversión quiere decir que el eje gira en ambos sentidos u oscila.",
    shortest_run:
      "Tiempo más corto en que la máquina trabaja de forma estable sin pausa, según los operarios o el control.",
    load_steady: "Sí, si la carga se mantiene en marcha; no, si sigue a los lotes, al nivel o a la demanda.",
    speed_change:
      "Cuánto cambia la velocidad durante un registro, en tanto por ciento de la velocidad, según la tendencia del variador.",
    evaluation:
      "Qué se hará con la señal: seguir su nivel global, tomar espectros o registrar tras una señal de disparo.",
    low_band_wanted:
      "Sí, si se quiere ver la jaula de un rodamiento o una correa; ambas quedan por debajo de la frecuencia de giro.",
    spectrum_lines: "Número de líneas del espectro, según los ajustes de la medición.",
    averages:
      "Cuántos registros se promedian para un resultado, según los ajustes de la medición; 1 si no se promedia.",
    settling_time:
      "Tiempo desde la conexión o el arranque hasta que sensor y filtros se estabilizan; según sus hojas de datos.",
    shaft_orientation: "Cómo está el eje en la máquina. Con eje vertical, la dirección axial es la vertical.",
    drive_type:
      "Cómo llega la fuerza a este eje: acoplado directamente, por correa, engranajes o cadena, o sobre el eje del motor.",
    belt_pull: "Hacia dónde tira la correa: mire desde el eje del punto hacia la otra polea.",
    bearing_type: "Qué sostiene el eje en este punto, según el plano o la lista de repuestos.",
    gear_teeth: "Dientes de la rueda en el eje de este rodamiento, según el plano o la placa del reductor.",
    blade_count: "Álabes o palas del rodete en este eje, según el plano o contados.",
    highest_frequency: "Extremo superior del espectro que se medirá en este punto, según los ajustes de la medición.",
    load_zone_angle:
      "Ángulo alrededor del eje entre el punto y la dirección de la carga: abajo por el peso, hacia el tiro con correa.",
    distance_to_bearing: "Camino más corto por el metal desde el rodamiento hasta el centro del sensor.",
    joints_in_path:
      "Uniones que cruza la vibración entre rodamiento y sensor; de rodamiento a soporte cuenta como una.",
    soft_layer: "Sí, si entre rodamiento y sensor hay una junta, goma, una pieza suelta o una holgura.",
    axis_deviation: "Ángulo entre el eje del sensor y la dirección indicada, con nivel o transportador.",
    local_resonance: "Pico más bajo que muestra un ensayo de golpe junto al punto, con la máquina parada y bloqueada.",
    baseline_speed: "Velocidad del eje mientras se tomaban los primeros valores.",
    baseline_warm: "Sí, si la máquina estaba a su temperatura habitual y rodada al tomar los primeros valores.",
    baseline_records: "Cuántos registros se tomaron seguidos para los primeros valores.",
    baseline_spread: "Diferencia entre el mayor y el menor de esos registros, en tanto por ciento de su media.",
    stopped_velocity: "Velocidad de vibración global con esta máquina parada y las vecinas en marcha; valor eficaz.",
    handheld_velocity:
      "Velocidad de vibración global tomada a mano en el mismo lugar y momento; valor eficaz en la misma banda.",
    full_scale_velocity:
      "Mayor velocidad de vibración que la medición puede mostrar, según los ajustes o la hoja del sensor.",
  },
  words: {
    criticality: { A: "A", B: "B", C: "C" },
    access: { running: "en marcha", "stopped-only": "solo parada", scaffold: "andamio", none: "sin acceso" },
    duty: {
      continuous: "servicio continuo",
      intermittent: "servicio intermitente",
      standby: "de reserva",
      "short-time": "servicio de corta duración",
      reversing: "inversión de marcha",
    },
    evaluation: { overall: "nivel global", spectrum: "espectro", triggered: "registro por disparo" },
    shaft_orientation: { horizontal: "eje horizontal", vertical: "eje vertical", inclined: "inclinado" },
    drive_type: {
      direct: "acoplamiento directo",
      belt: "correa",
      gear: "engranajes",
      chain: "cadena",
      "close-coupled": "monobloque",
    },
    belt_pull: { horizontal: "horizontal", vertical: "vertical", inclined: "inclinado" },
    bearing_type: { rolling: "rodamiento", plain: "cojinete liso" },
  },
};

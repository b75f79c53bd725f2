import { foldText } from "../base/index.js";

/**
 * Words beside which the name of a field means another thing: the voltage of the motor is not that of the sensor,
 * the torque of a foundation bolt is not that of the sensor's. They count only where a heading is not listed whole.
 */
const OTHER_THINGS: ReadonlyMap<string, RegExp> = new Map([
  [
    "target_torque",
    /foundation|anchor|coupling|motor|shaft|rated|nominal|start|load|wrench|fundament|anker|kupplung|nenn|welle|\banclaje|acople|\beje|arranque|ancrage|accouplement|arbre|nominal|demarrage|check/,
  ],
  [
    "supply_voltage",
    /motor|moteur|mains|netz|\bred\b|reseau|control|steuer|machine|maschine|maquina|drop|fall|caida|chute|factor|faktor|facteur|cable|kabel|pipe|rohr|tuber|tuyau|pressure|druck|presion|pression|water|wasser|agua|\beau\b|\bair|\baire|luft|\boil|aceite|huile|\bfan\b|\bgas|steam|dampf|vapor|vapeur|peak|impulse|insulation|cut\b|rated/,
  ],
  [
    "nominal_speed",
    /critical|kritisch|critica|critique|\btrip|over ?speed|\bwind|viento|\bvent\b|\bbelt|riemen|\bband|correa|cinta|banda|courroie|bande|alarm|ratio|class|klasse|limit|sensor|signal|tolerance|flow|air\b|luft|cutting/,
  ],
  ["lowest_speed", /alarm|critical|trip|wind|belt|riemen|correa|courroie/],
  ["highest_speed", /alarm|critical|trip|wind|belt|riemen|correa|courroie|sensor/],
  ["power", /factor|faktor|facteur|cable|kabel|cut\b|loss|verlust|socket|outlet/],
  ["flat_diameter", /depth|tiefe|profundidad|profondeur|thickness|dicke|espesor|epaisseur|height|hohe|altura|hauteur/],
  ["wall_thickness", /insulation|isolier|aislamiento|isolation|plate|paint|coating|guard|cover/],
  ["hole_depth", /diameter|durchmesser|diametro|diametre|number|anzahl|position|distance/],
  ["thread_depth", /diameter|durchmesser|diametro|diametre|pitch|steigung|\bpaso|\bpas\b/],
  ["surface_temperature", /oil|winding|bearing|ambient|process|water|wicklung|umgebung|ambiente|ambiante/],
]);

/** Words that say that the sensor's own is meant all the same (tightening torque, motor side). */
const ITS_OWN: ReadonlyMap<string, RegExp> = new Map([
  ["target_torque", /tighten|anzieh|anzug|apriete|serrage|sensor|capteur/],
  ["supply_voltage", /sensor|capteur/],
]);

/** Whether the words of a heading say that it is about another thing than the field that it names. */
export function speaksOfOther(heading: string, fact: string): boolean {
  const folded = foldText(heading);
  return (OTHER_THINGS.get(fact)?.test(folded) ?? false) && !(ITS_OWN.get(fact)?.test(folded) ?? false);
}

import type { ImportProblem, Survey } from "../records/index.js";
import type { ScreeningInput } from "./input.js";

/**
 * What is said once per survey: no model, no site, rows without an id.
 *
 * @param unnamed - rows without an id
 */
export function surveyRemarks(
  { rulebook, site, options }: ScreeningInput,
  survey: Survey,
  unnamed: number,
): readonly ImportProblem[] {
  const remarks: ImportProblem[] = [];
  const say = (code: ImportProblem["code"], fact: string, text: string): void => {
    remarks.push({ code, file: survey.file, sheet: null, cell: null, heading: null, fact, found: null, text });
  };
  if (!survey.factsAsked.has("sensor_model")) {
    say("no-model", "sensor_model", `no sensor model is stated; every point is judged by "${rulebook.baselineModel}"`);
  }
  if (options.siteName === null && !site?.siteName && !survey.factsAsked.has("site")) {
    say("assumed", "site", "no site is stated; point ids are made without one, so two sites may clash; give --site");
  }
  if (unnamed > 0) {
    const rows = unnamed === 1 ? "1 row has" : `${unnamed} rows have`;
    const text = `${rows} no point ID, nor tag, component, bearing position and direction together, and so no id`;
    say("no-id", "point_id", text);
  }
  return remarks;
}

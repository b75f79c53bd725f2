import { sha256OfData } from "../base/index.js";
import { findFact } from "../facts/index.js";
import type { Survey } from "../records/index.js";
import type { SensorModel } from "../rulebook/index.js";
import { CAUTIONS } from "./cautions.js";
import { NOTHING_SETTLED, type ScreeningInput } from "./input.js";
import type { ReadyRule } from "./judge-point.js";
import { METHOD_ALLOWED_SHOWN } from "./methods/method-allowed.js";
import { POINT_TWICE_SHOWN } from "./point-twice.js";
import type { ModelShown, ResultHead, SurveyShown } from "./result.js";
import { showRule } from "./rule-shown.js";
import { rulebookShown } from "./rulebook-shown.js";
import { tablesShown } from "./table-shown.js";

/** What stands before the points. */
export function headOf(
  input: ScreeningInput,
  rules: readonly ReadyRule[],
  models: readonly SensorModel[],
  surveys: readonly SurveyShown[],
  groups: ResultHead["groups"],
  deviations: ResultHead["deviations"],
): ResultHead {
  const { rulebook, site, options } = input;
  const { reading = NOTHING_SETTLED } = options;
  const methodRule = site?.methodsAllowed ? [METHOD_ALLOWED_SHOWN] : [];
  return {
    program: input.program,
    digest: sha256OfData({
      program: input.program.version,
      rulebook: rulebook.digest,
      ...(rulebook.signedBy === null ? {} : { signedBy: rulebook.signedBy }),
      surveys: input.surveys.map(({ file, digest }) => ({ file, digest })),
      site: site?.digest ?? null,
      ...(deviations === null ? {} : { deviations: { file: deviations.file, digest: deviations.digest } }),
      options: { ...options, reading },
    }),
    asOf: options.asOf,
    stage: options.stage,
    set: options.set,
    rulebook: rulebookShown(rulebook),
    site: { name: options.siteName ?? site?.siteName ?? null, file: site?.file ?? null, digest: site?.digest ?? null },
    reading,
    deviations,
    surveys,
    skipped: input.skipped,
    models: models.map((model) => modelShown(model, options.asOf)),
    tables: tablesShown(rules, rulebook, options.asOf),
    rules: [...rules.map((ready) => showRule(ready, rulebook, options)), POINT_TWICE_SHOWN, ...methodRule],
    groups,
    cautions: CAUTIONS,
  };
}

/** A survey with what reading it and looking at its points as a whole brought up. */
export function surveyShown(
  survey: Survey,
  more: Pick<SurveyShown, "notAsked"> & { readonly remarks: SurveyShown["problems"] },
): SurveyShown {
  const { file, digest, sheets, columns } = survey;
  return { file, digest, sheets, columns, problems: [...more.remarks, ...survey.problems], notAsked: more.notAsked };
}

function modelShown(model: SensorModel, asOf: string): ModelShown {
  const facts = [...model.facts].flatMap(([fact, values]) => {
    const value = values.find((one) => one.from <= asOf && (one.until === null || asOf < one.until));
    if (!value?.state.known) return [];
    const { state } = value;
    const shown = typeof state.value === "object" ? state.value.lowest : state.value;
    const origin = { file: value.at.file, line: value.at.line };
    return [{ fact, value: shown, unit: findFact(fact)?.unit ?? null, from: value.from, cites: value.cites, origin }];
  });
  return { id: model.id, title: model.title, facts, citations: [...model.citations.values()] };
}

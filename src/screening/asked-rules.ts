import type { Survey } from "../records/index.js";
import type { SensorModel } from "../rulebook/index.js";
import type { ReadyRule } from "./judge-point.js";
import type { LackingFacts } from "./methods/method-trials.js";
import type { ModelChoice } from "./models.js";
import { type LackingRule, rulesLacking, rulesNotAsked, rulesNotStated, rulesUnstated } from "./not-asked.js";
import type { PointFacts } from "./point-facts.js";
import type { NotAsked } from "./result.js";

const NONE: ReadonlySet<string> = new Set();

/** What is to be asked, and of whom. */
export interface AskedOf {
  /** Rules that speak of points. */
  readonly rules: readonly ReadyRule[];
  readonly survey: Survey;
  readonly models: Iterable<SensorModel>;
  /** The facts of each row, derived and model facts included. */
  readonly rows: () => Iterable<PointFacts>;
  /** Rules of groups that the survey is not asked. */
  readonly ofGroups: readonly NotAsked[];
}

/** Which rules are asked of the points of one survey: of all of them, and of those of each sensor model. */
export class AskedRules {
  /** What is said once: of the survey as a whole first, then model by model. */
  readonly notAsked: readonly NotAsked[];
  /** The rules that are not asked of the survey as a whole. */
  readonly silent: ReadonlySet<string>;
  /** By id of a model; by null where the model is not known. */
  readonly #silent = new Map<string | null, ReadonlySet<string>>();
  readonly #lacking = new Map<string | null, LackingFacts>();

  constructor({ rules, survey, models, rows, ofGroups }: AskedOf) {
    const lacking = rulesLacking(rules, survey, rows);
    const ofSurvey = [...rulesNotAsked(lacking), ...ofGroups];
    const silent = new Set(ofSurvey.map(({ rule }) => rule));
    this.silent = silent;
    this.#silent.set(null, silent);
    this.#lacking.set(null, factsLacking(lacking));
    const ofModels = [...rulesUnstated(rules, models, rows)].flatMap(([model, unstated]) => {
      const own = rulesNotStated(unstated, model).filter(({ rule }) => !silent.has(rule));
      this.#silent.set(model.id, new Set([...silent, ...own.map(({ rule }) => rule)]));
      this.#lacking.set(model.id, factsLacking([...lacking, ...unstated]));
      return own;
    });
    this.notAsked = [...ofSurvey, ...ofModels];
  }

  /** The rules that are not asked of a point with this model. */
  silentOn(model: ModelChoice): ReadonlySet<string> {
    return this.#of(this.#silent, model) ?? NONE;
  }

  /** What the survey and the model leave out, by the rules that are short of it. */
  lackingOn(model: ModelChoice): LackingFacts {
    return this.#of(this.#lacking, model) ?? new Map();
  }

  #of<Kept>(kept: ReadonlyMap<string | null, Kept>, model: ModelChoice): Kept | undefined {
    return (model.ok ? kept.get(model.model.id) : undefined) ?? kept.get(null);
  }
}

function factsLacking(rules: readonly LackingRule[]): LackingFacts {
  const facts = new Map<string, Pick<LackingRule, "lacking" | "open">>();
  for (const { ready, lacking, open } of rules) {
    const known = facts.get(ready.rule.id);
    const all = [...(known?.lacking ?? []), ...lacking];
    facts.set(ready.rule.id, { lacking: all, open: open || known?.open === true });
  }
  return facts;
}

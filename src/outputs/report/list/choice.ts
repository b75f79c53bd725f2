/** Verdicts of points, the gravest first. */
export const VERDICTS = ["fail", "warn", "pass"] as const;
/** Whether points with everything accepted are shown. */
export const ACCEPTED = ["any", "only", "not"] as const;
/** By what machines, and the points of each, are put into order. */
export const ORDERS = ["survey", "name", "verdict", "margin"] as const;

/** Which points a reader wants to see, and in which order. */
export interface Choice {
  readonly verdicts: readonly (typeof VERDICTS)[number][];
  /** Id of a rule that keeps the point from passing; empty for any. */
  readonly rule: string;
  /** Name of the machine; empty for any. */
  readonly machine: string;
  /** Part of a name, an id or a reason. */
  readonly text: string;
  /** Only points with something undecided. */
  readonly undecided: boolean;
  readonly accepted: (typeof ACCEPTED)[number];
  readonly order: (typeof ORDERS)[number];
}

/** Every point, as the survey has them. */
export const EVERYTHING: Choice = {
  verdicts: VERDICTS,
  rule: "",
  machine: "",
  text: "",
  undecided: false,
  accepted: "any",
  order: "survey",
};

/** A choice as the fragment of an address ("#show=fail&order=margin"); empty for everything. */
export function fragmentOf(choice: Choice): string {
  const said = new URLSearchParams();
  if (choice.verdicts.length < VERDICTS.length) said.set("show", choice.verdicts.join(" "));
  if (choice.rule !== "") said.set("rule", choice.rule);
  if (choice.machine !== "") said.set("machine", choice.machine);
  if (choice.text !== "") said.set("text", choice.text);
  if (choice.undecided) said.set("undecided", "yes");
  if (choice.accepted !== "any") said.set("accepted", choice.accepted);
  if (choice.order !== "survey") said.set("order", choice.order);
  const text = said.toString();
  return text === "" ? "" : `#${text}`;
}

/** The choice of a fragment; null for one that leads to a place on the page. What it does not understand it leaves out. */
export function choiceOf(fragment: string): Choice | null {
  const text = fragment.replace(/^#/, "");
  if (text === "") return EVERYTHING;
  if (!text.includes("=")) return null;
  const said = new URLSearchParams(text);
  const shown = said.get("show")?.split(" ");
  return {
    verdicts: shown === undefined ? VERDICTS : VERDICTS.filter((verdict) => shown.includes(verdict)),
    rule: said.get("rule") ?? "",
    machine: said.get("machine") ?? "",
    text: said.get("text") ?? "",
    undecided: said.get("undecided") === "yes",
    accepted: ACCEPTED.find((one) => one === said.get("accepted")) ?? "any",
    order: ORDERS.find((one) => one === said.get("order")) ?? "survey",
  };
}

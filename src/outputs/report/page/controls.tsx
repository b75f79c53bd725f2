import { markedOutcome } from "../../wording/outcomes.js";
import { ACCEPTED, type Choice, EVERYTHING, ORDERS, VERDICTS } from "../list/choice.js";
import { type ReportData, textAt } from "../list/data.js";

const ACCEPTED_WORDS = { any: "accepted or not", only: "only accepted", not: "only not accepted" } as const;
const ORDER_WORDS = {
  survey: "as in the survey",
  name: "by name",
  verdict: "worst verdict first",
  margin: "least margin first",
} as const;

interface ControlsProps {
  readonly data: ReportData;
  readonly choice: Choice;
  readonly onChoice: (choice: Choice) => void;
}

/** What the reader chooses by: verdict, rule, machine, text, what is undecided or accepted, and the order. */
export function Controls({ data, choice, onChoice }: ControlsProps) {
  const set = (part: Partial<Choice>): void => onChoice({ ...choice, ...part });
  const textOf = (place: number): string => textAt(data, place);
  return (
    <form class="controls" onSubmit={(event) => event.preventDefault()}>
      <fieldset>
        <legend>Verdict</legend>
        {VERDICTS.map((verdict) => (
          <label key={verdict} class="check">
            <input
              type="checkbox"
              checked={choice.verdicts.includes(verdict)}
              onChange={({ currentTarget: { checked } }) =>
                set({ verdicts: VERDICTS.filter((one) => (one === verdict ? checked : choice.verdicts.includes(one))) })
              }
            />{" "}
            {markedOutcome(verdict)}
          </label>
        ))}
        <label class="check">
          <input
            type="checkbox"
            checked={choice.undecided}
            onChange={({ currentTarget: { checked } }) => set({ undecided: checked })}
          />{" "}
          only with something ◇ undecided
        </label>
      </fieldset>
      <label class="field">
        Rule that speaks against it
        <select value={choice.rule} onChange={({ currentTarget: { value } }) => set({ rule: value })}>
          <option value="">any</option>
          {data.rules.map(([id, title]) => (
            <option key={id} value={textOf(id)}>
              {`${textOf(title)} (${textOf(id)})`}
            </option>
          ))}
        </select>
      </label>
      <label class="field">
        Machine
        <select value={choice.machine} onChange={({ currentTarget: { value } }) => set({ machine: value })}>
          <option value="">any</option>
          {data.machines.map((machine) => (
            <option key={machine} value={textOf(machine)}>
              {textOf(machine)}
            </option>
          ))}
        </select>
      </label>
      <label class="field">
        Part of a name, an id or a reason
        <input
          type="search"
          autocomplete="off"
          spellcheck={false}
          value={choice.text}
          onInput={({ currentTarget: { value } }) => set({ text: value })}
        />
      </label>
      <label class="field">
        Accepted
        <select
          value={choice.accepted}
          onChange={({ currentTarget: { value } }) => set({ accepted: ACCEPTED.find((one) => one === value) ?? "any" })}
        >
          {ACCEPTED.map((one) => (
            <option key={one} value={one}>
              {ACCEPTED_WORDS[one]}
            </option>
          ))}
        </select>
      </label>
      <label class="field">
        Order of machines and points
        <select
          value={choice.order}
          onChange={({ currentTarget: { value } }) => set({ order: ORDERS.find((one) => one === value) ?? "survey" })}
        >
          {ORDERS.map((one) => (
            <option key={one} value={one}>
              {ORDER_WORDS[one]}
            </option>
          ))}
        </select>
      </label>
      <button type="button" onClick={() => onChoice(EVERYTHING)}>
        Show everything
      </button>
    </form>
  );
}

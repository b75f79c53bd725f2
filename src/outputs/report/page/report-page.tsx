import { render } from "preact";
import { type Choice, choiceOf, EVERYTHING, fragmentOf } from "../list/choice.js";
import type { ReportData } from "../list/data.js";
import { type Selected, Selection } from "../list/selection.js";
import { Controls } from "./controls.js";
import { GroupSection } from "./group-section.js";
import { moveBetweenLines } from "./keys.js";
import { PointList } from "./point-list.js";

/** Points and groups that are listed; more follow when they are asked for. */
const AT_ONCE = 200;
/** Points put on the page in one go: the rest of those listed follow at once, but never keep the reader waiting. */
const IN_ONE_GO = 50;

/** The part of the page that answers to the reader. */
export class ReportPage {
  readonly #data: ReportData;
  readonly #selection: Selection;
  readonly #controls = place("controls");
  readonly #list = place("list");
  readonly #groups = document.getElementById("group-list");
  readonly #status = place("status");
  readonly #open = new Set<number>();
  readonly #openGroups = new Set<number>();
  #choice: Choice = EVERYTHING;
  #selected: Selected;
  #listed = AT_ONCE;
  /** Points that are on the page by now. */
  #drawn = IN_ONE_GO;
  #growing = 0;
  #groupsListed = AT_ONCE;
  #isPrinting = false;
  #told = 0;

  constructor(data: ReportData) {
    this.#data = data;
    this.#selection = new Selection(data);
    this.#choice = choiceOf(location.hash) ?? EVERYTHING;
    this.#selected = this.#selection.of(this.#choice);
  }

  start(): void {
    for (const list of [this.#list, this.#groups]) list?.addEventListener("keydown", moveBetweenLines);
    // What stands there for those without a script.
    this.#list.textContent = "";
    if (this.#groups) this.#groups.textContent = "";
    addEventListener("hashchange", () => {
      const choice = choiceOf(location.hash);
      if (choice !== null && fragmentOf(choice) !== fragmentOf(this.#choice)) this.#choose(choice, false);
    });
    addEventListener("beforeprint", () => this.#print(true));
    addEventListener("afterprint", () => this.#print(false));
    this.#drawGrowing();
    setTimeout(() => this.#drawControls());
    setTimeout(() => this.#drawGroups());
  }

  #choose(choice: Choice, isTyped: boolean): void {
    this.#choice = choice;
    this.#selected = this.#selection.of(choice);
    this.#listed = AT_ONCE;
    this.#drawn = IN_ONE_GO;
    this.#drawControls();
    this.#drawGrowing();
    clearTimeout(this.#told);
    // Letters typed fast are one change of the address; browsers refuse too many.
    this.#told = setTimeout(() => this.#tell(), isTyped ? 300 : 0);
  }

  #tell(): void {
    const address = `${location.pathname}${location.search}${fragmentOf(this.#choice)}`;
    // Where the address cannot be changed, the list is as chosen all the same.
    try {
      history.replaceState(null, "", location.protocol === "file:" ? fragmentOf(this.#choice) || "#" : address);
    } catch {}
  }

  /** Draws the list, and goes on until all that is listed is on the page. */
  #drawGrowing(): void {
    clearTimeout(this.#growing);
    this.#drawList();
    if (this.#drawn >= Math.min(this.#listed, this.#selected.count)) return;
    this.#growing = setTimeout(() => {
      this.#drawn += IN_ONE_GO;
      this.#drawGrowing();
    });
  }

  #drawControls(): void {
    render(
      <Controls
        data={this.#data}
        choice={this.#choice}
        onChoice={(choice) => this.#choose(choice, choice.text !== this.#choice.text)}
      />,
      this.#controls,
    );
  }

  #drawList(): void {
    const { count } = this.#selected;
    const listed = this.#isPrinting ? count : Math.min(this.#listed, count);
    render(
      <PointList
        data={this.#data}
        selected={this.#selected}
        listed={listed}
        drawn={this.#isPrinting ? count : Math.min(this.#drawn, listed)}
        open={this.#isPrinting ? null : this.#open}
        onToggle={(point, open) => this.#toggle(point, open)}
        onMore={() => this.#more(listed)}
      />,
      this.#list,
    );
    const shown = `${count} of ${this.#data.points.length} points shown`;
    const machines = `on ${this.#selected.machines.length} of ${this.#data.machines.length} machines`;
    const status = `${shown}, ${machines}${listed < count ? `; the first ${listed} are listed` : ""}`;
    if (this.#status.textContent !== status) this.#status.textContent = status;
  }

  #drawGroups(): void {
    if (this.#groups === null) return;
    render(
      <GroupSection
        data={this.#data}
        listed={this.#isPrinting ? this.#data.groups.length : this.#groupsListed}
        open={this.#isPrinting ? null : this.#openGroups}
        onToggle={(group, open) => {
          if (this.#isPrinting || open === this.#openGroups.has(group)) return;
          if (open) this.#openGroups.add(group);
          else this.#openGroups.delete(group);
          this.#drawGroups();
        }}
        onMore={() => {
          const before = this.#groupsListed;
          this.#groupsListed += AT_ONCE;
          this.#drawGroups();
          focusLine(this.#groups, before);
        }}
      />,
      this.#groups,
    );
  }

  #toggle(point: number, open: boolean): void {
    // Opened for the printer, not by the reader.
    if (this.#isPrinting || open === this.#open.has(point)) return;
    if (open) this.#open.add(point);
    else this.#open.delete(point);
    this.#drawList();
  }

  /** Goes on where the list ended, and so does the reader. */
  #more(before: number): void {
    this.#listed += AT_ONCE;
    this.#drawn = before + IN_ONE_GO;
    this.#drawGrowing();
    focusLine(this.#list, before);
  }

  /** On paper stands everything that is chosen, opened; afterwards the page is as before. */
  #print(isPrinting: boolean): void {
    if (this.#isPrinting === isPrinting) return;
    this.#isPrinting = isPrinting;
    for (const details of document.querySelectorAll<HTMLDetailsElement>("details.printed")) {
      if (isPrinting) details.dataset.open = String(details.open);
      details.open = isPrinting || details.dataset.open === "true";
    }
    this.#drawList();
    this.#drawGroups();
  }
}

function place(id: string): HTMLElement {
  const element = document.getElementById(id);
  if (element === null) throw new Error(`the page has no "${id}"`);
  return element;
}

function focusLine(list: HTMLElement | null, line: number): void {
  list?.querySelectorAll<HTMLElement>("summary")[line]?.focus();
}

import { formatNumber } from "../base/index.js";
import type { JobFacts } from "./job-facts.js";
import type { SupplyItem } from "./pack.js";
import { drillOf } from "./parts/hole.js";

const CHIP_TOOLS: Readonly<Record<string, string>> = {
  "greased-drill": "grease for drill and tap",
  "magnet-tray": "magnet tray",
  vacuum: "vacuum cleaner for chips",
};

/** Tools and materials for one point. */
export function suppliesOf(job: JobFacts): readonly SupplyItem[] {
  const method = job.word("mounting_method") ?? "";
  const isTightened = method !== "magnet" && method !== "clamp";
  return [
    ...(method === "tapped-hole" ? forHole(job) : []),
    ...(isTightened ? forSeat(job) : []),
    ...(method === "adhesive-pad" ? forBond(job) : []),
    ...(method === "welded-pad" ? [piece("welding pad"), tool("welding set with earth clamp")] : []),
    ...(isTightened ? [tool(wrenchFor(job)), piece(boltFor(job))] : []),
    piece(`sensor, ${job.word("sensor_model") ?? "model not stated"}`),
    cableFor(job),
    tool("multimeter"),
    ...accessFor(job),
  ];
}

function forHole(job: JobFacts): readonly SupplyItem[] {
  const { value, unit } = drillOf(job).fact;
  const drill = typeof value === "number" ? `drill ${formatNumber(value, unit)}` : "drill, size not stated";
  const chips = CHIP_TOOLS[job.word("chip_guard") ?? ""];
  return [
    tool(drill),
    tool(`tap ${job.word("thread") ?? "of a thread not stated"}, with bottoming tap`),
    tool("depth stop and depth gauge"),
    tool("eye protection"),
    ...(chips === undefined ? [] : [tool(chips)]),
  ];
}

function forSeat(job: JobFacts): readonly SupplyItem[] {
  const isBySpark = job.word("hot_work_allowed") !== "forbidden";
  return [
    tool(isBySpark ? "grinder or spot-facer, with guard" : "hand scraper and file"),
    tool("degreaser and cloths"),
    tool("calliper"),
    ...(job.word("mounting_method") === "tapped-hole" ? [] : [tool("eye protection")]),
  ];
}

function forBond(job: JobFacts): readonly SupplyItem[] {
  const adhesive = job.words("adhesive") ?? "kind not stated";
  return [piece("bonding pad"), piece(`adhesive for a pad, ${adhesive}`), tool("contact thermometer"), tool("watch")];
}

function wrenchFor(job: JobFacts): string {
  const torque = job.number("target_torque");
  return torque === null ? "torque wrench" : `torque wrench for ${formatNumber(torque, "N·m")}`;
}

function boltFor(job: JobFacts): string {
  const thread = job.word("thread") ?? job.word("sensor_thread") ?? "thread not stated";
  return `bolt ${thread}, class ${job.word("bolt_class") ?? "not stated"}`;
}

function cableFor(job: JobFacts): SupplyItem {
  const size = job.number("conductor_size");
  const type = job.word("cable_type") ?? "type not stated";
  const name = `cable, ${type}${size === null ? "" : `, ${formatNumber(size, "mm²")}`}`;
  const length = job.number("cable_length");
  return { kind: "material", name, amount: length ?? 0, unit: "m", notKnown: length === null ? 1 : 0 };
}

function accessFor(job: JobFacts): readonly SupplyItem[] {
  if (job.word("access") === "scaffold") return [tool("scaffold")];
  const height = job.number("working_height");
  return height !== null && height > 0 ? [tool("means of access to the height stated")] : [];
}

function tool(name: string): SupplyItem {
  return { kind: "tool", name, amount: null, unit: null, notKnown: 0 };
}

function piece(name: string): SupplyItem {
  return { kind: "material", name, amount: 1, unit: "pieces", notKnown: 0 };
}

/** The same things added up: tools stand once, amounts of a material are summed; in the order of their names. */
export function totalOf(supplies: Iterable<SupplyItem>): readonly SupplyItem[] {
  const total = new Map<string, SupplyItem>();
  for (const item of supplies) {
    const key = `${item.kind} ${item.name} ${item.unit}`;
    const known = total.get(key);
    total.set(key, known ? added(known, item) : item);
  }
  return [...total.values()].sort((a, b) => rank(a) - rank(b) || (a.name < b.name ? -1 : 1));
}

function rank({ kind }: SupplyItem): number {
  return kind === "tool" ? 0 : 1;
}

function added(a: SupplyItem, b: SupplyItem): SupplyItem {
  // Thousands of lengths added up would else show what a binary fraction leaves behind.
  const amount = a.amount === null || b.amount === null ? null : Number((a.amount + b.amount).toPrecision(12));
  return { ...a, amount, notKnown: a.notKnown + b.notKnown };
}

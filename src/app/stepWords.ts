// What a step does, in the words a crew would hear, with the numbers of the plan in the chosen units.
import type { Plan, Step } from "../plan/index.ts";
import { print, type Shown, type System } from "../units/index.ts";

type Until = { load_kN: number } | { height_mm: number } | { gap_mm: number } | { frees: string };

/** Prints numbers of the plan file, which carry their unit in the field's name. */
function printer(units: System) {
  const by = (factor: number, shown: Shown) => (value: number) => print(value * factor, shown, units);
  return {
    kN: by(1000, "load"),
    mm: by(0.001, "smallLength"),
    m: by(1, "length"),
    pct: (value: number) => `${value} %`,
  };
}

const list = (names: readonly string[]): string => names.join(", ");

/** A crane as it is called on site: by where it stands. */
function craneName(plan: Plan, id: string): string {
  const crane = plan.cranes.find((one) => one.id === id);
  return crane === undefined ? id : `${crane.kind} crane`;
}

/** One sentence without a full stop: "Roll 12.00 m forward", "Far crane takes load until 120.0 kN". */
export function stepWords(plan: Plan, step: Step, units: System): string {
  const as = printer(units);
  const crane = (id: string) => craneName(plan, id);
  const way = (value: number, forward: string, back: string) =>
    `${as.m(Math.abs(value))} ${value >= 0 ? forward : back}`;
  const until = (end: Until): string => {
    if ("load_kN" in end) return as.kN(end.load_kN);
    if ("height_mm" in end) return as.mm(end.height_mm);
    return "gap_mm" in end ? `a gap of ${as.mm(end.gap_mm)}` : `${end.frees} is free`;
  };
  switch (step.do) {
    case "hook up":
      return `Hook up the ${crane(step.crane)}`;
    case "unhook":
      return `Unhook the ${crane(step.crane)}`;
    case "lash":
      return `Lash: ${list(step.lashings)}`;
    case "unlash":
      return `Unlash: ${list(step.lashings)}`;
    case "take load":
      return (
        `${capital(crane(step.crane))} takes load until ${until(step.until)}; ` +
        `never above ${as.kN(step.loadCap_kN)} nor ${as.mm(step.heightCap_mm)}`
      );
    case "trial lift":
      return `Trial lift with the ${crane(step.crane)}: ${as.mm(step.height_mm)} up, stop, compare`;
    case "roll":
      return `Roll ${way(step.distance_m, "forward", "back")}`;
    case "roll together": {
      const held = { elevation: "hook elevation held", load: "hook load held", rope: "rope length held" };
      return (
        `Roll together with the ${list(step.cranes.map(crane))}: ${way(step.distance_m, "forward", "back")} ` +
        `in bites of ${as.m(step.bite_m)}, ${held[step.hold]}`
      );
    }
    case "jack up":
    case "jack down": {
      const what = step.groups === undefined ? `all groups of ${step.transporter}` : list(step.groups);
      const how = "height_mm" in step.until ? "by" : "until";
      return `${step.do === "jack up" ? "Jack up" : "Jack down"} ${what} ${how} ${until(step.until)}`;
    }
    case "level": {
      const aim = [
        step.level_pct === undefined ? "" : `level ${as.pct(step.level_pct)}`,
        step.lean_pct === undefined ? "" : `lean ${as.pct(step.lean_pct)}`,
      ].filter((part) => part !== "");
      const what = step.groups === undefined ? "the set" : list(step.groups);
      return `Level ${what}${aim.length > 0 ? `: ${aim.join(", ")}` : ""}`;
    }
    case "drive out":
      return `Drive out ${step.transporter}, ${step.toward}, ${as.m(step.distance_m)}`;
    case "rebunk":
      return `Rebunk ${step.transporter} under ${as.m(step.deckAt_m)} of the set`;
    case "walk":
      return `${capital(crane(step.crane))} walks ${way(step.dx_m, "forward", "back")} and ${way(step.dy_m, "left", "right")}`;
    case "hoist up":
    case "hoist down":
      return `${step.do === "hoist up" ? "Hoist up" : "Hoist down"}: ${list(
        step.hooks.map((hook) => `${crane(hook.crane)} ${as.mm(hook.height_mm)}`),
      )}`;
    case "bring over":
      return `Bring over: ${way(step.dx_m, "forward", "back")} and ${way(step.dy_m, "left", "right")}`;
    case "land":
      return `Land, ${list(step.order.map(crane))} in this order, until ${as.kN(step.until_kN)} on the hooks`;
    case "brace":
      return `Brace: ${list(step.items.map((item) => `${item.what} ${item.count} of ${item.of}`))}`;
    case "hold":
      return `${step.point === "witness" ? "Witness" : "Hold"} point: released by ${step.releasedBy} on ${step.evidence}`;
    case "rest":
      return `Rest${step.on === undefined ? "" : ` on ${list(step.on)}`}`;
  }
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Name of a step for narrow places: its title, or the word that tells its kind. */
export function stepName(step: Step): string {
  return step.title ?? capital(step.do);
}

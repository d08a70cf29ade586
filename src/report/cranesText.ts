// The cranes of a set as a section of the text for a terminal: at the end of every step what hangs on each hook, what its
// indicator should show, how far it reaches and how much of its limit is used; and what each crane moves in the step.

import {
  type CraneMotions,
  checkList,
  indicatorReading,
  type Measure,
  motionsIn,
  useOf as partOfLimit,
  type SetResult,
} from "../checks/index.ts";
import { byId } from "../plan/index.ts";
import { type Pose, poseAt, type SetContext } from "../sequence/index.ts";
import { oneLine, type Side, tableLines } from "./table.ts";

/** Lines of the cranes of a set; none where no step ends with a hook on. */
export function cranesLines(ctx: SetContext, set: SetResult): string[] {
  const head = [
    "step",
    "crane",
    "hook load kN",
    "indicator kN",
    "radius m",
    "boom deg",
    "use",
    "limited by",
    "moves in the step",
  ];
  const sides: Side[] = ["left", "left", "right", "right", "right", "right", "right", "left", "left"];
  const measures = [...checkList.makers, ...checkList.onDemand].flatMap((make) => make(ctx));
  const of = (check: string, subject: string) =>
    measures.find((m) => m.check === check && m.subject === subject);
  const rows: string[][] = [];
  for (const step of set.steps) {
    if (!step.solved || step.count === 0) continue;
    const poses = Array.from({ length: step.count }, (_, i) =>
      poseAt(ctx, step, set.progress[step.first + i]),
    );
    const end = poses[poses.length - 1];
    const moved = motionsIn(ctx, step, poses);
    for (const { id } of end.situation.cranes.filter((c) => c.hooked)) {
      const crane = byId(ctx.plan.cranes, id);
      const shown = indicatorReading(ctx, end, crane);
      if (shown === null) continue;
      const name = `${crane.kind} crane`;
      const load = readingAt(of("hook load", name), end);
      rows.push([
        `${step.index + 1} ${oneLine(step.step.id)}`,
        name,
        load.value,
        `${kN(shown.low)} to ${kN(shown.high)}`,
        readingAt(of("chart left", name), end).value,
        readingAt(of("boom angle", name), end).value,
        load.use,
        oneLine(load.chosenBy),
        motionWords(moved.find((one) => one.crane === crane)),
      ]);
    }
  }
  return rows.length === 0 ? [] : ["cranes at the end of every step", ...tableLines(head, rows, sides)];
}

function readingAt(m: Measure | undefined, pose: Pose): { value: string; use: string; chosenBy: string } {
  const r = m?.read(pose);
  if (m === undefined || r === undefined || Number.isNaN(r.value))
    return { value: "-", use: "-", chosenBy: "" };
  return {
    value: (r.value * m.factor).toFixed(m.digits),
    use: `${(100 * partOfLimit(m, r)).toFixed(0)} %`,
    chosenBy: r.chosenBy ?? m.chosenBy,
  };
}

/** Motions with the speeds that the step's minutes ask for: `hoist 1.35 m, 0.11 of 2 m/min`. */
function motionWords(moved: CraneMotions | undefined): string {
  return (moved?.motions ?? [])
    .map(({ what, way, unit, needed, full }) => {
      const size = way < 0.005 ? way.toExponential(0) : way.toFixed(2);
      const speed =
        needed === null ? "" : `, ${needed.toFixed(2)}${full === null ? "" : ` of ${full}`} ${unit}/min`;
      return `${what} ${size} ${unit}${speed}`;
    })
    .join("; ");
}

const kN = (N: number): string => (N / 1000).toFixed(0);

// The form of hydraulic groups: picking axle-line sides on a drawn plan, groups with their names, and the lines about which it tips.
import { useId, useRef, useState } from "react";
import { TypedField } from "../../../../controls/index.ts";
import { type Plan, type PlanSet, type Transporter, takeOff } from "../../../../plan/index.ts";
import { useSize } from "../../../../share/index.ts";
import { print, type System } from "../../../../units/index.ts";
import { withTyped } from "../changes.ts";
import type { OwnFormProps } from "../table.ts";
import { scaleOf } from "./axes.ts";
import { assigned, groupProblems, newGroupName, type Standing, standingUnder, wheelsOf } from "./groups.ts";
import { letterOf, Patterns, patternOf } from "./patterns.tsx";
import { WheelPlan } from "./WheelPlan.tsx";
import "./drawn.css";

/** What the set stands on as one body, in words. */
function standingWords(it: Standing, set: string, system: System): string {
  if (it.centroids.length === 0) return `No transporter stands under ${set} at its start.`;
  if (it.corners.length === 0)
    return `The ${it.centroids.length} group centroids under ${set} lie on one line: nothing holds it against turning over.`;
  const shape = it.corners.length === 3 ? "triangle" : it.corners.length === 4 ? "rectangle" : "base";
  const inside = it.inside ?? Number.NaN;
  return `Under ${set} at its start the group centroids make a ${shape === "rectangle" ? "four-sided base" : shape} with corners ${it.corners
    .map((c) => it.centroids.find((one) => one.x === c.x && one.y === c.y)?.name ?? "")
    .join(
      ", ",
    )}. The set's CG by the take-off lies ${print(Math.abs(inside), "length", system)} ${inside >= 0 ? "inside" : "outside"} its nearest line.`;
}

const SET_HEIGHT = 120;

/** All group centroids under the set at its start, their base, and the set's CG. Across is drawn to a scale of its own. */
function Under(props: { plan: Plan; set: PlanSet; system: System }) {
  const { plan, set, system } = props;
  const place = useRef<HTMLDivElement>(null);
  const { width } = useSize(place);
  let it: Standing;
  try {
    it = standingUnder(plan, set, takeOff(set).cg);
  } catch {
    // A draft under work may name a girder that is not there; its error stands at its cell.
    it = standingUnder(plan, set, [Number.NaN, Number.NaN, Number.NaN]);
  }
  const words = standingWords(it, set.id, system);
  const cg = it.cg !== null && Number.isFinite(it.cg.x) ? it.cg : null;
  const all = [...it.centroids, ...(cg === null ? [] : [cg])];
  const xs = all.map((one) => one.x);
  const most = Math.max(0.5, ...all.map((one) => Math.abs(one.y)));
  const x = scaleOf(Math.min(...xs) - 2, Math.max(...xs) + 2, 20, width - 20);
  const y = scaleOf(-most, most, SET_HEIGHT - 24, 24);
  const factor = (y(0) - y(1)) / (x(1) - x(0));
  return (
    <div ref={place} className="drawn-place">
      {width > 60 && all.length > 0 && (
        <svg width={width} height={SET_HEIGHT} role="img" aria-label={words} className="drawn">
          {it.corners.length > 0 && (
            <path className="base" d={`M${it.corners.map((c) => `${x(c.x)} ${y(c.y)}`).join("L")}Z`} />
          )}
          {it.centroids.map((c) => (
            <g
              key={`${c.transporter} ${c.name}`}
              className="centroid"
              transform={`translate(${x(c.x)} ${y(c.y)})`}
            >
              <circle r="5" />
              <path d="M-5 0H5M0-5V5" />
              <text
                x={x(c.x) > width - 100 ? -9 : 9}
                y={c.y > 0 ? -6 : 14}
                textAnchor={x(c.x) > width - 100 ? "end" : "start"}
              >
                {c.name}
              </text>
            </g>
          ))}
          {cg !== null && (
            <g className="cg" transform={`translate(${x(cg.x)} ${y(cg.y)})`}>
              <circle r="7" />
              <path d="M0 0V-7A7 7 0 0 1 7 0ZM0 0V7A7 7 0 0 1 -7 0Z" />
              <text y="-12" textAnchor="middle">
                CG of the set
              </text>
            </g>
          )}
        </svg>
      )}
      <p className="drawn-legend">{`${words} Across is drawn ${factor.toFixed(1)} times as large as along.`}</p>
    </div>
  );
}

/** One group: letter and pattern, name, wheels, and what becomes of it. */
function GroupRow(props: {
  form: OwnFormProps["ground"];
  index: number;
  transporter: Transporter;
  group: number;
  id: string;
  show: () => void;
}) {
  const { form, index, transporter, group, id, show } = props;
  const { groups } = transporter;
  const { name, wheels } = groups[group];
  const path = ["transporters", index, "groups", group, "name"];
  return (
    <li>
      <svg width="26" height="20" aria-hidden="true" className="drawn">
        <rect x="1" y="1" width="24" height="18" rx="3" fill={patternOf(id, group)} className="swatch-box" />
        <text x="13" y="14" textAnchor="middle" className="letter">
          {letterOf(group)}
        </text>
      </svg>
      <TypedField
        label={`Name of group ${letterOf(group)}`}
        unit=""
        text={name}
        read={(text) => {
          const typed = text.trim();
          if (typed === "") return { ok: false, problem: "A group needs a name, since steps refer to it." };
          const taken = form.plan.transporters.some((one) =>
            one.groups.some((other) => other.name === typed && other !== groups[group]),
          );
          return taken
            ? { ok: false, problem: `"${typed}" is another group already. To join the two, use Merge.` }
            : { ok: true, value: typed };
        }}
        commit={(value) =>
          form.edit({
            label: `${transporter.id}: rename group ${name} to ${String(value)}`,
            change: (draft) => withTyped(draft, path, value),
          })
        }
      />
      <span>{wheels.join(" ")}</span>
      <button type="button" onClick={show}>
        Pick these
      </button>
      {groups.length > 1 && (
        <label className="choice">
          Merge into
          <select
            value=""
            onChange={(event) => {
              const to = event.target.value;
              if (to === "") return;
              form.edit({
                label: `${transporter.id}: merge group ${name} into ${to}`,
                change: (draft) => assigned(draft, index, wheels, to),
              });
            }}
          >
            <option value="">–</option>
            {groups
              .filter((other) => other.name !== name)
              .map((other) => (
                <option key={other.name}>{other.name}</option>
              ))}
          </select>
        </label>
      )}
    </li>
  );
}

/** The whole form, of one transporter at a time. */
export function GroupForm({ ground, set }: OwnFormProps) {
  const { plan, system } = ground;
  const id = useId();
  const [chosen, choose] = useState(0);
  const [picked, pick] = useState<ReadonlySet<string>>(new Set());
  const [to, setTo] = useState("");
  const target = useRef<HTMLSelectElement>(null);
  const index = Math.min(chosen, plan.transporters.length - 1);
  const transporter = plan.transporters[index] as Transporter | undefined;
  if (transporter === undefined) return <p className="quiet">The plan has no transporter. Add one below.</p>;
  const { groups } = transporter;
  const there = new Set(wheelsOf(transporter).map(({ name }) => name));
  const wheels = [...picked].filter((name) => there.has(name));
  const known = groups.some(({ name }) => name === to);
  const problems = groupProblems(transporter);
  const assign = () => {
    if (wheels.length === 0) return;
    const name = known ? to : newGroupName(plan, index);
    ground.edit({
      label: `${transporter.id}: wheels ${wheels.join(", ")} to ${known ? "" : "new "}group ${name}`,
      change: (draft) => assigned(draft, index, wheels, name),
    });
    setTo(name);
    pick(new Set());
  };
  return (
    <section className="drawn-form" aria-label="Hydraulic groups">
      <div className="grid-tools">
        <label className="choice">
          Transporter
          <select
            value={index}
            onChange={(event) => {
              choose(Number(event.target.value));
              pick(new Set());
            }}
          >
            {plan.transporters.map((one, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a transporter is told by its place; its name may be blank while it is typed.
              <option key={i} value={i}>
                {one.id}
              </option>
            ))}
          </select>
        </label>
        <label className="choice">
          Picked wheels to
          <select ref={target} value={known ? to : ""} onChange={(event) => setTo(event.target.value)}>
            <option value="">a new group</option>
            {groups.map(({ name }, i) => (
              <option key={name} value={name}>
                {`${letterOf(i)} ${name}`}
              </option>
            ))}
          </select>
        </label>
        <button type="button" disabled={wheels.length === 0} onClick={assign}>
          Assign <kbd>G</kbd>
        </button>
        <span aria-live="polite" className="quiet">
          {wheels.length === 0
            ? "Pick wheels: click them, or Arrows and Space; Shift with an arrow picks along."
            : `Picked: ${wheels.join(", ")}`}
        </span>
      </div>
      <WheelPlan transporter={transporter} system={system} picked={picked} pick={pick} assign={assign} />
      <p className={problems.length === 0 ? "quiet" : "flags"} role="status">
        {problems.length === 0 ? "Every wheel is in exactly one group." : `◆ ${problems.join(" ")}`}
      </p>
      <svg width="0" height="0" aria-hidden="true" className="pattern-store">
        <Patterns id={id} />
      </svg>
      <ul className="group-list" aria-label="Groups">
        {groups.map((_, i) => (
          <GroupRow
            // biome-ignore lint/suspicious/noArrayIndexKey: a group is told by its place; its name is typed here.
            key={i}
            form={ground}
            index={index}
            transporter={transporter}
            group={i}
            id={id}
            show={() => pick(new Set(groups[i].wheels))}
          />
        ))}
      </ul>
      <Under plan={plan} set={plan.sets[set]} system={system} />
    </section>
  );
}

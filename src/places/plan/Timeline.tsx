// The operation step by step: running it, going through it, and the words of the step at the cursor.
import { type Axis, planOfSet, type Step, stepWords, toX, type Width, widths } from "../../app/index.ts";
import { Choice } from "../../controls/index.ts";
import { cursorKey } from "../../share/index.ts";
import { useApp, useIt, useSome } from "../appContext.ts";
import { useAction } from "./actions/useKeys.ts";

const speeds = { "0.5": "speed ½", "1": "speed 1", "2": "speed 2", "4": "speed 4" } as const;

const icons = {
  "step back": "M3 2V14M14 2L6 8L14 14Z",
  "event back": "M12 2L4 8L12 14Z",
  run: "M4 2L14 8L4 14Z",
  pause: "M3 2H6.5V14H3ZM9.5 2H13V14H9.5Z",
  "event on": "M4 2L12 8L4 14Z",
  "step on": "M13 2V14M2 2L10 8L2 14Z",
} as const;

function IconButton({
  icon,
  action,
  strong = false,
  name,
}: {
  icon: keyof typeof icons;
  action: string;
  strong?: boolean;
  /** What it does now, where that changes; else the words of the action. */
  name?: string;
}) {
  const button = useAction(action);
  return (
    <button {...button} className={strong ? "icon strong" : "icon"} aria-label={name ?? button.title}>
      <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true">
        <path className={/event/.test(icon) ? "hollow" : "full"} d={icons[icon]} />
      </svg>
    </button>
  );
}

/** Who moves, who speaks, on which channel, and the number to see; only what the plan gives. */
function People({ step }: { step: Step }) {
  const see = step.see;
  const parts: [string, string | undefined][] = [
    ["moves", step.who],
    ["voice", step.voice],
    ["channel", step.channel],
    ["to see", see === undefined ? undefined : `${see.what} ${seeBand(see)}`.trim()],
  ];
  return (
    <p className="people">
      {parts.map(
        ([word, value], i) =>
          value !== undefined &&
          value !== "" && (
            <span key={word} className="person" style={{ gridColumn: i + 1 }} title={`${word} ${value}`}>
              <span className="quiet">{word}</span> {value}
            </span>
          ),
      )}
    </p>
  );
}

function seeBand({ low, high, unit }: NonNullable<Step["see"]>): string {
  if (low !== undefined && high !== undefined) return `${low} to ${high} ${unit}`;
  if (low !== undefined) return `at least ${low} ${unit}`;
  return high === undefined ? unit : `at most ${high} ${unit}`;
}

/** Buttons, the step's words, and a slider that stands exactly above the picture of the loads. */
export function Timeline({ axis }: { axis: Axis }) {
  const app = useApp();
  const { cursor, playing } = useSome("cursor", "playing");
  const plan = useIt(planOfSet);
  const { units, speed, width } = useIt((state) => state.view);
  const set = app.set();
  if (set === null || plan === null) return null;
  const run = set.steps[cursor.step];
  const words = stepWords(plan, run.step, units);
  const speedName =
    (Object.keys(speeds) as (keyof typeof speeds)[]).find((one) => Number(one) === speed) ?? "1";
  return (
    <section className="timeline" aria-label="Operation">
      <div className="timeline-row">
        <div className="buttons">
          <IconButton icon="step back" action="step back" />
          <IconButton icon="event back" action="event back" />
          <IconButton strong icon={playing ? "pause" : "run"} action="run" name={playing ? "Pause" : "Run"} />
          <IconButton icon="event on" action="event on" />
          <IconButton icon="step on" action="step on" />
        </div>
        <div className="step-words">
          <p title={run.step.title === undefined ? words : `${run.step.title}: ${words}`}>
            <span className="step-number">{`${cursor.step + 1}`}</span>
            <span className="quiet">{` of ${set.steps.length}, `}</span>
            <span className="progress">{`${Math.round(cursor.progress * 100)} %`}</span>
            <strong>{run.step.title ?? words}</strong>
            {run.step.title !== undefined && <span className="does">{words}</span>}
          </p>
        </div>
        <div className="choices">
          <Choice
            label="Speed"
            quiet
            value={speedName}
            words={speeds}
            choose={(value) => app.setView({ speed: Number(value) })}
          />
          <Choice<Width>
            label="Width of the steps"
            quiet
            value={width}
            words={widths}
            choose={(value) => app.setView({ width: value })}
          />
        </div>
        <People step={run.step} />
      </div>
      <input
        className="scrub"
        type="range"
        min={0}
        max={10000}
        step={1}
        aria-label="Place in the operation, as a slider"
        aria-valuetext={`step ${cursor.step + 1} of ${set.steps.length}, ${Math.round(cursor.progress * 100)} %`}
        value={Math.round(toX(axis, cursor) * 10000)}
        onChange={(event) => {
          app.pause();
          app.setX(Number(event.target.value) / 10000);
        }}
        onKeyDown={(event) => {
          if (event.altKey || event.ctrlKey || event.metaKey || !cursorKey(app, event.key)) return;
          event.preventDefault();
        }}
      />
      {axis.unknown.length > 0 && (
        <p className="quiet">{`Minutes are not given for ${axis.unknown.length} of ${set.steps.length} steps: those are drawn narrow.`}</p>
      )}
    </section>
  );
}

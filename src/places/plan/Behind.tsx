// The foot of the page: by which rules it was judged, and quietly what is still being worked out behind the numbers.
import { useEffect, useRef, useState } from "react";
import type { HeldSpread, Spreading } from "../../app/index.ts";
import { useApp, useIt, useSome } from "../appContext.ts";

/** Over what low and high were worked out. */
function coverWords({ spread, asked, of }: HeldSpread): string {
  if (spread.done < of) return `low and high over ${spread.done} of ${of} corners, told to stop`;
  return asked === "all" ? `low and high over all ${of} corners` : `low and high over ${of} chosen corners`;
}

/** Minutes that the rest takes at the pace so far; '' before that can be told. */
function useRest({ done, of }: { done: number; of: number }): string {
  const begun = useRef({ done, at: 0 });
  const [words, setWords] = useState("");
  useEffect(() => {
    const now = performance.now();
    if (begun.current.at === 0 || done < begun.current.done) begun.current = { done, at: now };
    const run = done - begun.current.done;
    const minutes = run < 10 ? 0 : ((of - done) * (now - begun.current.at)) / run / 60_000;
    setWords(minutes < 1 ? "" : `, some ${Math.ceil(minutes)} min more`);
  }, [done, of]);
  return words;
}

/** Corners run so far, and the button that ends it. */
function Running({ spreading }: { spreading: Spreading & { is: "running" } }) {
  const app = useApp();
  const { done, of, stopping } = spreading;
  const rest = useRest({ done, of });
  // A comparison over the scene takes the first Escape.
  const byKey = useIt((state) => state.before === null);
  return (
    <>
      <span>{`low and high: corner ${done} of ${of}${rest}`}</span>
      <progress value={done} max={of} aria-label="Corners run" />
      <button
        type="button"
        disabled={stopping}
        aria-keyshortcuts={byKey ? "Escape" : undefined}
        onClick={app.stopSpread}
      >
        {stopping ? "stopping…" : "Stop"} <kbd style={{ visibility: byKey ? "visible" : "hidden" }}>Esc</kbd>
      </button>
    </>
  );
}

/** Low and high of the cursor's set as they are, and what may still be asked for. */
function Done({ held }: { held: HeldSpread | undefined }) {
  const app = useApp();
  const ended = useIt((state) => state.spreading);
  if (ended.is === "failed") return <span>{`low and high not worked out: ${ended.words}`}</span>;
  if (held === undefined) {
    return (
      <>
        <span>low and high not worked out</span>
        <button type="button" onClick={() => app.spread("chosen")}>
          Work out
        </button>
      </>
    );
  }
  const whole = held.spread.done >= held.of;
  return (
    <>
      <span>{coverWords(held)}</span>
      {!whole && held.asked === "chosen" && (
        <button type="button" onClick={() => app.spread("chosen")}>
          Chosen corners
        </button>
      )}
      {!(whole && held.asked === "all") && held.all > held.spread.done && (
        <button type="button" onClick={() => app.spread("all")}>
          {`All ${held.all} corners`}
        </button>
      )}
    </>
  );
}

/** How far everything is. The words are told politely only when they change in kind, not with every corner. */
export function Behind() {
  const { result, solving, completing, spreading, spreads, cursor } = useSome(
    "result",
    "solving",
    "completing",
    "spreading",
    "spreads",
    "cursor",
  );
  const set = result?.sets[cursor.set];
  const counted = (it: { words: string; done: number; of: number }) =>
    it.of > 0 ? `${it.words} ${it.done} of ${it.of}` : it.words;
  const what = () => {
    if (solving.is === "running") return <span>{counted(solving)}</span>;
    if (solving.is === "failed") return <span>not solved</span>;
    if (completing.is === "running") return <span>{counted(completing)}</span>;
    if (spreading.is === "running") return <Running spreading={spreading} />;
    if (spreading.is === "idle") return null;
    return <Done held={set === undefined ? undefined : spreads[set.setId]} />;
  };
  const stage = () => {
    if (solving.is === "running") return "solving the plan";
    if (solving.is === "failed") return "the plan was not solved";
    if (completing.is === "running") return "losses and ways back are being worked out";
    if (spreading.is === "running") return "low and high are being worked out";
    return spreading.is === "done" ? "everything is worked out" : "";
  };
  return (
    <div className="behind" data-stage={stage()}>
      <span className="unseen" role="status">
        {stage()}
      </span>
      {what()}
      {result !== null && <span className="rules" title={result.ruleSet}>{`rules: ${result.ruleSet}`}</span>}
    </div>
  );
}

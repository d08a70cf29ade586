// The finder: an action is found by typed words, told with its key, and done; why one cannot be done now stands beside it.
import { type KeyboardEvent, useEffect, useMemo, useState } from "react";
import { useApp, useIt, useSome } from "../../appContext.ts";
import { type Action, actionKinds, fullWords, whyNot } from "./action.ts";
import { pageActions } from "./pageActions.ts";
import { planActions } from "./planActions.ts";
import { found } from "./search.ts";
import { takeEarly } from "./useKeys.ts";
import { useOver } from "./useOver.ts";
import "./actions.css";

/** So many are listed; whoever looks for more types another word. */
const most = 80;
/** Lines that Page Up and Page Down go. */
const page = 8;

/** Where a key leads from a place in a list of `count`; null for any other key. */
function toward(key: string, at: number, count: number): number | null {
  const last = count - 1;
  switch (key) {
    case "ArrowDown":
      return at >= last ? 0 : at + 1;
    case "ArrowUp":
      return at <= 0 ? last : at - 1;
    case "PageDown":
      return Math.min(last, at + page);
    case "PageUp":
      return Math.max(0, at - page);
    default:
      return null;
  }
}

function Option(props: { action: Action; id: string; chosen: boolean; choose: () => void; run: () => void }) {
  const { action, id, chosen, choose, run } = props;
  const why = useIt((state) => whyNot(action, state));
  const words = useIt((state) => fullWords(action, state));
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the keys are those of the field above, which names the chosen line
    <div
      id={id}
      role="option"
      data-action={action.id}
      aria-selected={chosen}
      aria-disabled={why !== ""}
      tabIndex={-1}
      onPointerMove={choose}
      onClick={run}
    >
      <span className="action-words">
        {words}
        {why !== "" && <span className="why">{` (not now: ${why})`}</span>}
      </span>
      <span className="quiet">{actionKinds[action.kind]}</span>
      <span className="action-keys">
        {action.keys?.map((keys) => (
          <kbd key={keys}>{keys}</kbd>
        ))}
      </span>
    </div>
  );
}

/** The dialog. The focus goes back to where it was, and to where the action leads it. */
export function Finder() {
  const app = useApp();
  const { dialog, close, closed } = useOver("find");
  const ground = useSome(
    "document",
    "result",
    "spreads",
    "bucklings",
    "tables",
    "cursor",
    "view",
    "answered",
    "context",
  );
  const all = useMemo(
    () => [...pageActions.filter(({ id }) => id !== "find"), ...planActions(ground)],
    [ground],
  );
  const [typed, setTyped] = useState("");
  useEffect(() => {
    const early = takeEarly();
    if (early !== "") setTyped((now) => early + now);
  }, []);
  const [at, setAt] = useState(0);
  const [said, setSaid] = useState("");
  const fits = useMemo(() => found(all, typed), [all, typed]);
  const listed = fits.slice(0, most);
  const index = Math.min(at, listed.length - 1);
  const idOf = (i: number) => `found-${i}`;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the chosen line comes into sight when it changes.
  useEffect(() => {
    dialog.current?.querySelector('[aria-selected="true"]')?.scrollIntoView({ block: "nearest" });
  }, [index, typed]);
  const run = (action: Action | undefined) => {
    if (action === undefined) return;
    const why = whyNot(action, app.store.getState());
    if (why !== "") {
      setSaid(`${action.words} is not possible now: ${why}.`);
      return;
    }
    close();
    action.run(app);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === "Enter") {
      event.preventDefault();
      run(listed[index]);
      return;
    }
    const to = toward(event.key, index, listed.length);
    if (to === null || listed.length === 0) return;
    event.preventDefault();
    setSaid("");
    setAt(to);
  };
  const count =
    fits.length === 0
      ? "Nothing fits. Type fewer words, or others."
      : `${fits.length === 1 ? "1 fits" : `${fits.length} fit`}${fits.length > most ? `; the first ${most} are listed` : ""}.`;
  return (
    <dialog ref={dialog} className="finder" aria-label="Find an action" onClose={closed}>
      <input
        type="text"
        role="combobox"
        aria-label="Words of the action"
        aria-expanded="true"
        aria-controls="found"
        aria-autocomplete="list"
        aria-activedescendant={index >= 0 ? idOf(index) : undefined}
        placeholder="Type what you want to do, or where to go: step, edit, finding, set"
        autoComplete="off"
        spellCheck={false}
        value={typed}
        onChange={(event) => {
          setTyped(event.target.value);
          setAt(0);
          setSaid("");
        }}
        onKeyDown={onKeyDown}
      />
      <div id="found" role="listbox" aria-label="Actions that fit">
        {listed.map((action, i) => (
          <Option
            key={action.id}
            action={action}
            id={idOf(i)}
            chosen={i === index}
            choose={() => {
              if (i !== index) setAt(i);
            }}
            run={() => run(action)}
          />
        ))}
      </div>
      <p role="status">{said || count}</p>
      <p className="quiet finder-keys">
        <span>
          <kbd>Up</kbd> <kbd>Down</kbd> choose
        </span>
        <span>
          <kbd>Enter</kbd> do it
        </span>
        <span>
          <kbd>Esc</kbd> close
        </span>
        <span className="gap" />
        <button type="button" onClick={close}>
          Close
        </button>
      </p>
    </dialog>
  );
}

// The sheet of all keys: those of the page from its list of actions, then those that work inside a part of it.
import { type Action, actionKinds } from "./action.ts";
import { pageActions } from "./pageActions.ts";
import { useOver } from "./useOver.ts";
import "./actions.css";

/** Keys that a part of the page uses itself while it has the focus. */
const inside: readonly (readonly [part: string, keys: readonly (readonly [keys: string, does: string])[]])[] =
  [
    [
      "In a table of plan data",
      [
        ["Arrows, Tab, Home, End", "to another cell"],
        ["Enter, F2, or typing", "changes the cell"],
        ["Esc", "leaves the cell as it was"],
        ["Shift+Arrows", "chooses several cells"],
        ["Ctrl+A", "chooses all cells"],
        ["Ctrl+D", "fills down"],
        ["Ctrl+Enter", "confirms the chosen cells, also a field of a form"],
        ["Ctrl+Shift+Enter", "confirms all of the entry"],
        ["Ctrl++, Ctrl+Insert", "adds a row behind"],
        ["Ctrl+-, Ctrl+Delete", "removes the row"],
        ["Alt+Up, Alt+Down", "moves the row"],
        ["Ctrl+C, Ctrl+X, Ctrl+V", "copies, cuts, pastes, also from and to a spreadsheet"],
        ["Delete", "empties the chosen cells"],
      ],
    ],
    [
      "On a handle in the scene",
      [
        ["Arrows", "moves it by 0.1 m, with Shift by 0.5 m, with Alt by 0.01 m"],
        ["Enter, Digits", "to its number"],
        ["Esc", "takes the move back, then lets go of it"],
      ],
    ],
    [
      "In lists and panels",
      [
        ["Up, Down", "to another line"],
        ["Left, Right", "to another panel, on the tabs"],
        ["Enter, Space", "chooses it"],
      ],
    ],
  ];

function Keys({ words }: { words: string }) {
  return words.split(", ").map((one, i) => (
    <span key={one}>
      {i > 0 && " or "}
      <kbd>{one}</kbd>
    </span>
  ));
}

function Group(props: { title: string; rows: readonly (readonly [keys: string, does: string])[] }) {
  return (
    <section aria-label={props.title}>
      <h3>{props.title}</h3>
      <dl>
        {props.rows.map(([keys, does]) => (
          <div key={does}>
            <dt>
              <Keys words={keys} />
            </dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

const rowsOf = (actions: readonly Action[]) =>
  actions.map(({ keys = [], words }) => [keys.join(", "), words] as const);

/** The sheet, in a dialog. */
export function KeySheet() {
  const { dialog, close, closed } = useOver("keys");
  const kinds = Object.entries(actionKinds).map(([kind, title]) => {
    const actions = pageActions.filter((one) => one.kind === kind && one.keys !== undefined);
    return { title, actions };
  });
  return (
    <dialog ref={dialog} className="errors key-sheet" aria-labelledby="keys-title" onClose={closed}>
      <h2 id="keys-title">All keys</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard. */}
      <section className="key-groups" aria-label="Keys by what they are for" tabIndex={0}>
        {kinds
          .filter(({ actions }) => actions.length > 0)
          .map(({ title, actions }) => (
            <Group key={title} title={title} rows={rowsOf(actions)} />
          ))}
        {inside.map(([title, rows]) => (
          <Group key={title} title={title} rows={rows} />
        ))}
      </section>
      <p className="quiet">
        On a Macintosh the Command key stands for Ctrl. Every action can also be found by its words.
      </p>
      <button type="button" className="strong" onClick={close}>
        Close
      </button>
    </dialog>
  );
}

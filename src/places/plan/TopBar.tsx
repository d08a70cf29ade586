// The bar at the top: which plan this is, opening and exporting, units and theme.
import { Choice } from "../../controls/index.ts";
import { systems } from "../../units/index.ts";
import { useApp, useIt } from "../appContext.ts";
import { useAction } from "./actions/useKeys.ts";
import { DocumentBar, KeptWords } from "./DocumentBar.tsx";

const factors = { "1": "true shape", "10": "shape × 10", "25": "shape × 25", "50": "shape × 50" } as const;

const themes = { light: "Light", dark: "Dark" } as const;

/** The set that is looked at, where a plan has several. */
function SetChoice() {
  const app = useApp();
  const result = useIt((state) => state.result);
  const index = useIt((state) => state.cursor.set);
  if (result === null || result.sets.length < 2) return null;
  const words = Object.fromEntries(result.sets.map((set, i) => [String(i), set.name || set.setId]));
  return (
    <Choice
      label="Set"
      value={String(index)}
      words={words}
      choose={(value) => app.chooseSet(Number(value))}
    />
  );
}

/** The top bar. `open` is told of a file that was picked. */
export function TopBar({ open }: { open: (file: File) => void }) {
  const app = useApp();
  const document = useIt((state) => state.document);
  const { units, theme, exaggeration } = useIt((state) => state.view);
  const factor = (Object.keys(factors) as (keyof typeof factors)[]).find(
    (one) => Number(one) === exaggeration,
  );
  const header = document?.draft.header;
  return (
    <header className="top">
      <div className="which">
        <h1>{header === undefined ? "Handspan: erection plan" : header.title || "Plan without a title"}</h1>
        <p className="which-more quiet">
          {header !== undefined && (
            <span>
              {header.revision === "" ? "no revision" : `rev. ${header.revision}`}
              {header.status === "" ? "" : `, ${header.status}`}
            </span>
          )}
          <span>Planning aid only</span>
          <KeptWords />
        </p>
      </div>
      {document?.draft.invented === true && <strong className="invented">Invented data</strong>}
      <SetChoice />
      {document !== null && (
        <button
          type="button"
          title="Sets side by side: copy, compare, confirm, propose anew (S)"
          aria-keyshortcuts="S"
          aria-haspopup="dialog"
          onClick={() => app.store.setState({ over: "sets" })}
        >
          Sets
        </button>
      )}
      <DocumentBar open={open} />
      <button {...useAction("csv")}>Export CSV</button>
      <button {...useAction("find")} aria-haspopup="dialog">
        Find an action <kbd>Ctrl+K</kbd>
      </button>
      <Choice
        label="Elastic shape"
        quiet
        value={factor ?? "1"}
        words={factors}
        choose={(value) => app.setView({ exaggeration: Number(value) })}
      />
      <Choice
        label="Units"
        quiet
        value={units}
        words={systems}
        choose={(value) => app.setView({ units: value })}
      />
      <Choice
        label="Theme"
        quiet
        value={theme}
        words={themes}
        choose={(value) => app.setView({ theme: value })}
      />
    </header>
  );
}

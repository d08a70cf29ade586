// Sets side by side: what differs, what is not confirmed; copying, confirming, proposing anew, deleting.
import { Fragment, useEffect, useMemo, useRef, useState } from "react";
import { compareSets, type SetRow } from "../../../plan/index.ts";
import { useApp, useIt } from "../../appContext.ts";
import { SearchSigns } from "../../start/SearchSigns.tsx";
import { useProposal } from "../../start/useProposal.ts";
import { CopyForm } from "./CopyForm.tsx";
import { SetColumn } from "./SetColumn.tsx";
import { confirmPlaces, copyOf, deleteSet } from "./useSets.ts";
import { placeWords, valueWords } from "./values.ts";
import "./sets.css";

const filters = { all: "all values", differs: "what differs", open: "not confirmed" } as const;
type Filter = keyof typeof filters;

const isOpen = (row: SetRow): boolean => row.doubts.some((doubt) => doubt !== null);

/** The screen, in a dialog over the plan. */
export function Sets() {
  const app = useApp();
  const draft = useIt((state) => state.document?.draft ?? null);
  const system = useIt((state) => state.view.units);
  const dialog = useRef<HTMLDialogElement>(null);
  const [filter, setFilter] = useState<Filter>("all");
  const [who, setWho] = useState(draft?.header.checkedBy ?? "");
  const [copying, setCopying] = useState<string | null>(null);
  const { search, begin, stop } = useProposal(({ plan, sets }) => {
    const names = sets.map(({ set }) => plan.sets.find((one) => one.id === set)?.name || set);
    app.edit(`Propose the sequence of ${names.join(", ")} anew`, () => plan);
  });
  useEffect(() => {
    if (dialog.current?.open === false) dialog.current.showModal();
  }, []);
  const rows = useMemo(
    () =>
      draft === null
        ? []
        : compareSets(
            draft,
            draft.sets.map((set) => set.id),
          ),
    [draft],
  );
  const shown = rows.filter((row) => filter === "all" || (filter === "differs" ? row.differs : isOpen(row)));
  const parts = new Map<string, SetRow[]>();
  for (const row of shown) parts.set(row.part, [...(parts.get(row.part) ?? []), row]);
  if (draft === null) return null;
  const { sets } = draft;
  const busy = search.is === "running";
  const can = who.trim() !== "" && !busy;
  const openOf = (some: readonly SetRow[], c: number) => some.filter((row) => row.doubts[c] !== null);
  const confirmIn = (some: readonly SetRow[], what: string, columns = sets.map((_, c) => c)) =>
    confirmPlaces(
      app,
      columns.flatMap((c) => {
        const places = openOf(some, c).map((row) => row.place);
        return places.length === 0 ? [] : [{ set: sets[c].id, places }];
      }),
      what,
      who,
    );
  return (
    <dialog
      ref={dialog}
      className="sets"
      aria-labelledby="sets-title"
      onClose={() => app.store.setState({ over: "" })}
    >
      <header>
        <h2 id="sets-title">Sets side by side</h2>
        <fieldset className="ways">
          <legend className="unseen">Show</legend>
          {(Object.keys(filters) as Filter[]).map((one) => (
            <label key={one}>
              <input
                type="radio"
                name="sets-filter"
                checked={one === filter}
                onChange={() => setFilter(one)}
              />
              {` ${filters[one]}`}
            </label>
          ))}
        </fieldset>
        <label>
          {"Confirmed by "}
          <input value={who} autoComplete="off" onChange={(event) => setWho(event.target.value)} />
        </label>
        <span className="quiet">
          {who.trim() === "" ? "Say who confirms: it stands in the history." : ""}
        </span>
        <button type="button" onClick={() => dialog.current?.close()}>
          Back to the plan
        </button>
      </header>
      {copying !== null && (
        <CopyForm
          plan={draft}
          from={copying}
          system={system}
          done={(copy) => {
            if (copy !== null) copyOf(app, copying, copy.id, copy.name, copy.aside);
            setCopying(null);
          }}
        />
      )}
      <SearchSigns
        search={search}
        stop={stop}
        nameOf={(id) => sets.find((set) => set.id === id)?.name || id}
      />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keyboard */}
      <section className="sets-table" aria-label="Values of the sets" tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th scope="col">Value</th>
              {sets.map((set, c) => (
                <SetColumn
                  key={set.id}
                  set={set}
                  open={openOf(rows, c).length}
                  canConfirm={can}
                  alone={sets.length === 1}
                  busy={busy}
                  confirmAll={() => confirmIn(rows, "all values", [c])}
                  copy={() => setCopying(set.id)}
                  propose={() => begin(draft, [set.id])}
                  remove={() => deleteSet(app, set.id)}
                />
              ))}
            </tr>
          </thead>
          <tbody>
            {[...parts].map(([part, ones]) => (
              <Fragment key={part}>
                <tr className="part">
                  <th scope="rowgroup" colSpan={sets.length + 1}>
                    {part}
                    {ones.some(isOpen) && (
                      <button type="button" disabled={!can} onClick={() => confirmIn(ones, part)}>
                        Confirm part<span className="unseen">{` ${part}`}</span>
                      </button>
                    )}
                  </th>
                </tr>
                {ones.map((row) => (
                  <Row
                    key={row.place}
                    row={row}
                    can={can}
                    words={(c) => valueWords(row.values[c], row.place, system)}
                    nameOf={(c) => sets[c].name || sets[c].id}
                    keyOf={(c) => sets[c].id}
                    confirmRow={(columns) => confirmIn([row], row.place, columns)}
                  />
                ))}
              </Fragment>
            ))}
          </tbody>
        </table>
        {shown.length === 0 && (
          <p className="quiet">
            {filter === "differs"
              ? sets.length === 1
                ? "There is one set alone: copy it, and what differs stands here."
                : "Nothing differs between the sets."
              : "Everything is confirmed."}
          </p>
        )}
      </section>
    </dialog>
  );
}

function Row({
  row,
  can,
  words,
  nameOf,
  keyOf,
  confirmRow,
}: {
  row: SetRow;
  can: boolean;
  words: (column: number) => string;
  nameOf: (column: number) => string;
  keyOf: (column: number) => string;
  confirmRow: (columns?: number[]) => void;
}) {
  const label = placeWords(row.place);
  return (
    <tr className={row.differs ? "differs" : ""}>
      <th scope="row">
        <span>{label}</span>
        {label !== row.place && <span className="quiet place">{row.place}</span>}
        {row.differs && row.values.length > 1 && <span className="mark">≠ differs</span>}
        {row.doubts.filter((doubt) => doubt !== null).length > 1 && (
          <button type="button" disabled={!can} onClick={() => confirmRow()}>
            Confirm row<span className="unseen">{` ${row.place}`}</span>
          </button>
        )}
      </th>
      {row.doubts.map((doubt, c) => (
        <td key={keyOf(c)} title={doubt ?? undefined}>
          <span>{words(c)}</span>
          {doubt !== null && (
            <>
              <span className="doubt">◇ not confirmed</span>
              <button type="button" disabled={!can} onClick={() => confirmRow([c])}>
                Confirm<span className="unseen">{` ${row.place} of ${nameOf(c)}`}</span>
              </button>
            </>
          )}
        </td>
      ))}
    </tr>
  );
}

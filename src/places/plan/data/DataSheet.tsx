// The sheet of plan data: the list of parts, the tables and forms of the chosen part, and below them what was opened of it.
import { Suspense, useEffect, useMemo, useRef, useState } from "react";
import { planParts } from "../../../app/index.ts";
import { confirm, fieldOf, type PlanPath, printPath, readPlace } from "../../../plan/index.ts";
import { useApp, useIt, useSome } from "../../appContext.ts";
import { signed } from "../sets/useSets.ts";
import { errorLies, isTable, nameAt } from "./cells.ts";
import { DataForm } from "./DataForm.tsx";
import { DataTable } from "./DataTable.tsx";
import { Doubts } from "./Doubts.tsx";
import { confirmedWords, doubtsByPart, doubtWords } from "./doubts.ts";
import { ownForms } from "./ownForms.ts";
import { partWords, type Section, sectionsOf, wayTo } from "./parts.ts";
import type { DataGround } from "./table.ts";
import "../../../controls/grid.css";
import "../../../controls/fields.css";
import "./data.css";

/** Where the focus is led, and how often it was. */
interface Led {
  readonly path: PlanPath;
  readonly nonce: number;
}

/** One sheet: a table or a form. */
function Sheet(props: { ground: DataGround; section: Section; goTo: Led | null }) {
  const { ground, section, goTo } = props;
  const { path, words, across = false, survey = false, singles = false } = section;
  if (isTable(path, ground.plan))
    return (
      <DataTable ground={ground} path={path} words={words} across={across} survey={survey} goTo={goTo} />
    );
  return <DataForm ground={ground} path={path} singles={singles} />;
}

/** Sheets around an opened one, from the part inward, to go back to. */
function wordsAt(path: PlanPath, ground: DataGround): string {
  return nameAt(path, ground.plan) || (fieldOf(path, ground.plan)?.words ?? printPath(path));
}

/** The sheet that was opened, with the way to it. */
function Opened(props: { ground: DataGround; path: PlanPath; close: () => void; goTo: Led | null }) {
  const { ground, path, close, goTo } = props;
  const heading = useRef<HTMLHeadingElement>(null);
  const key = printPath(path);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each sheet that is opened takes the focus once.
  useEffect(() => {
    heading.current?.focus();
    heading.current?.scrollIntoView({ block: "nearest" });
  }, [key]);
  const above = path.slice(0, -1).flatMap((_, i) => {
    const one = path.slice(0, i + 1);
    return fieldOf(one, ground.plan) === null || one.length < 2 ? [] : [one];
  });
  const survey = path[path.length - 1] === "rows";
  return (
    <section className="data-opened" aria-label={wordsAt(path, ground)}>
      <div className="data-way">
        {above.map((one) => (
          <button key={printPath(one)} type="button" className="plain" onClick={() => ground.open(one)}>
            {`${wordsAt(one, ground)} ›`}
          </button>
        ))}
        <h3 ref={heading} tabIndex={-1}>
          {wordsAt(path, ground)}
        </h3>
        <span className="gap" />
        <button type="button" onClick={close}>
          Close
        </button>
      </div>
      <Sheet key={key} ground={ground} section={{ path, words: wordsAt(path, ground), survey }} goTo={goTo} />
    </section>
  );
}

/** The whole sheet. */
export function DataSheet() {
  const app = useApp();
  const { document } = useSome("document");
  const system = useIt((state) => state.view.units);
  const part = useIt((state) => state.view.data) ?? "header";
  const dataAt = useIt((state) => state.view.dataAt);
  const set = useIt((state) => state.cursor.set);
  const [opened, setOpened] = useState<{ part: string; path: PlanPath } | null>(null);
  const [led, setLed] = useState<Led | null>(null);
  const draft = document?.draft ?? null;
  const [who, setWho] = useState(draft?.header.checkedBy ?? "");
  const errors = document?.errors;
  const ground = useMemo((): DataGround | null => {
    if (draft === null) return null;
    return {
      plan: draft,
      errors: errors ?? [],
      system,
      edit: ({ label, change }) => app.edit(label, change),
      doubt: doubtWords(draft),
      confirm: (paths, of) => {
        if (who.trim() === "") return "Say who confirms, at the head of this part: it stands in the history.";
        const words = confirmedWords(draft, paths, of);
        app.edit(`Confirm ${words} (${signed(who)})`, (now) => confirm(now, null, paths.map(printPath)));
        return "";
      },
      open: (path) => setOpened({ part, path }),
    };
  }, [app, draft, errors, system, part, who]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: led once to each place, whatever is edited afterwards.
  useEffect(() => {
    if (dataAt === "" || draft === null) return;
    const path = readPlace(dataAt);
    const way = path === null ? null : wayTo(path, draft, planParts);
    app.setView({ dataAt: "", ...(way === null ? {} : { data: way.part }) });
    if (path === null || way === null) return;
    if (way.set !== null && way.set !== set) app.chooseSet(way.set);
    const ofPart = sectionsOf(way.part, draft, way.set ?? 0).some(
      (section) => section.path.join() === way.sheet.join(),
    );
    setOpened(ofPart ? null : { part: way.part, path: way.sheet });
    setLed({ path: way.cell ?? path, nonce: Date.now() });
  }, [dataAt]);
  const doubts = useMemo(
    () => (draft === null ? new Map<never, never>() : doubtsByPart(draft, planParts, set)),
    [draft, set],
  );
  if (ground === null) return <p className="waiting">No plan is open. Open a file, or begin a new plan.</p>;
  const index = Math.min(set, ground.plan.sets.length - 1);
  const Own = ownForms[part];
  const sections = sectionsOf(part, ground.plan, index);
  const below = opened?.part === part ? opened.path : null;
  const faulty = (of: readonly Section[]) =>
    ground.errors.filter((error) =>
      of.some(({ path }) => path.length > 0 && errorLies(error.path, path) !== "no"),
    ).length;
  return (
    <section
      className="data-sheet"
      aria-label="Plan data"
      onKeyDown={(event) => {
        if (event.key !== "Escape" || event.defaultPrevented) return;
        event.preventDefault();
        if (below !== null) setOpened(null);
        else app.setView({ data: null });
      }}
    >
      <nav aria-label="Parts of the plan">
        <ul>
          {planParts.map((one) => {
            const count = faulty(sectionsOf(one, ground.plan, index));
            const open = doubts.get(one)?.length ?? 0;
            return (
              <li key={one}>
                <button
                  type="button"
                  aria-pressed={one === part}
                  onClick={() => {
                    setOpened(null);
                    app.setView({ data: one });
                  }}
                >
                  {partWords[one]}
                  {count > 0 && (
                    <span className="mark">
                      {` ▲ ${count}`}
                      <span className="unseen"> errors</span>
                    </span>
                  )}
                  {open > 0 && (
                    <span className="mark">
                      {` ◇ ${open}`}
                      <span className="unseen"> not confirmed</span>
                    </span>
                  )}
                </button>
              </li>
            );
          })}
        </ul>
      </nav>
      <div className="data-part" key={part}>
        <div className="data-way">
          <h2>{partWords[part]}</h2>
          <span className="gap" />
          <button type="button" onClick={() => app.setView({ data: null })}>
            Close <kbd>E</kbd>
          </button>
        </div>
        <Doubts ground={ground} part={part} paths={doubts.get(part) ?? []} who={who} setWho={setWho} />
        {Own !== undefined && (
          <Suspense fallback={<p className="waiting">Opening the form…</p>}>
            <Own ground={ground} set={index} />
          </Suspense>
        )}
        {sections.map((section) => (
          <section key={printPath(section.path)} aria-label={section.words} className="data-section">
            {sections.length > 1 && <h3>{section.words}</h3>}
            <Sheet ground={ground} section={section} goTo={below === null ? led : null} />
          </section>
        ))}
        {below !== null && <Opened ground={ground} path={below} close={() => setOpened(null)} goTo={led} />}
      </div>
    </section>
  );
}

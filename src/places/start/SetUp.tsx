// The guided set-up: one short form with a drawing that follows it, then the search for a sequence, then the plan.
import { useMemo, useRef, useState } from "react";
import { answerErrors, firstPlan } from "../../checks/index.ts";
import type { System } from "../../units/index.ts";
import { useApp, useIt } from "../appContext.ts";
import { Drawing } from "./Drawing.tsx";
import { AnswerField, RowsField } from "./Fields.tsx";
import { answersOf, example, partsOf, retyped, type Typed } from "./questions.ts";
import { SearchSigns } from "./SearchSigns.tsx";
import { useProposal } from "./useProposal.ts";

/** The form. `close` is told when the plan is to be looked at. */
export function SetUp({ close }: { close: () => void }) {
  const app = useApp();
  const system = useIt((state) => state.view.units);
  const [typed, setTyped] = useState<Typed>({});
  const [typedIn, setTypedIn] = useState<System>(system);
  const [gap, setGap] = useState<"clear" | "chainages">("clear");
  const [steel, setSteel] = useState<"mass" | "plates">("mass");
  const [told, setTold] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  const { search, begin, stop } = useProposal(({ plan }) => app.openPlan(plan, "first-plan.json"));
  if (typedIn !== system) {
    setTyped(retyped(typed, typedIn, system));
    setTypedIn(system);
  }
  const { answers, problems } = useMemo(
    () => answersOf(typed, { gap, steel }, system),
    [typed, gap, steel, system],
  );
  const whole = useMemo(() => {
    const all: Record<string, string> = { ...problems };
    for (const { at, words } of answerErrors(answers)) all[at] ??= words;
    if (Object.keys(all).length > 0) return { all, plan: null };
    const made = firstPlan(answers);
    if (!made.ok) for (const { at, words } of made.errors) all[at] ??= words;
    return { all, plan: made.ok ? made.plan : null };
  }, [answers, problems]);
  const open = Object.keys(whole.all).length;
  const type = (at: string) => (text: string) => setTyped((before) => ({ ...before, [at]: text }));
  const field = (at: string) => ({
    text: typed[at] ?? "",
    system,
    problem: whole.all[at] ?? "",
    told: told || (typed[at] ?? "").trim() !== "",
    type: type(at),
  });
  const submit = () => {
    setTold(true);
    const { plan } = whole;
    if (plan !== null) {
      begin(
        plan,
        plan.sets.map((set) => set.id),
      );
      return;
    }
    const wrong = [...(form.current?.querySelectorAll<HTMLElement>("[data-at]") ?? [])];
    wrong.find((one) => (whole.all[one.dataset.at ?? ""] ?? "") !== "")?.focus();
  };
  const parts = partsOf(gap, steel);
  const choice = (id: string) =>
    id === "gap" ? (
      <Ways
        legend="Given by"
        value={gap}
        words={{ clear: "clear gap", chainages: "chainages" }}
        choose={setGap}
      />
    ) : id === "sets" ? (
      <Ways legend="Steel by" value={steel} words={{ mass: "weight", plates: "plates" }} choose={setSteel} />
    ) : null;
  const running = search.is === "running";
  return (
    <form
      ref={form}
      className="set-up"
      aria-label="New plan"
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <Drawing answers={answers} />
      <fieldset className="set-up-parts" disabled={running} aria-label="Answers">
        <div className="answer title">
          <label htmlFor="set-up-title">Title of the plan</label>
          <input
            id="set-up-title"
            type="text"
            autoComplete="off"
            value={typed.title ?? ""}
            onChange={(event) => type("title")(event.target.value)}
          />
          <span className="says quiet">May stay blank.</span>
        </div>
        {parts.map((part) => (
          <fieldset key={part.id} className="set-up-part">
            <legend>{part.title}</legend>
            {choice(part.id)}
            {part.questions.map((q) => (
              <AnswerField key={q.at} q={q} {...field(q.at)} />
            ))}
            {(part.id === "far" || part.id === "near") && (
              <RowsField
                at={`cranes.${part.id}.rows`}
                label="Load chart"
                {...field(`cranes.${part.id}.rows`)}
              />
            )}
          </fieldset>
        ))}
      </fieldset>
      <div className="set-up-end">
        <SearchSigns
          search={search}
          stop={stop}
          nameOf={(id) => whole.plan?.sets.find((set) => set.id === id)?.name ?? id}
        />
        {search.is === "done" ? (
          <button type="button" className="strong" ref={(it) => it?.focus()} onClick={close}>
            Look at the plan
          </button>
        ) : (
          !running && (
            <>
              <button type="submit" className="strong">
                Make the plan
              </button>
              <button type="button" onClick={() => setTyped(retyped(example, "SI", system))}>
                Fill in an invented example
              </button>
              <span className="quiet" role="status">
                {open === 0
                  ? "Everything is answered. What was not asked becomes a starter value, marked as not confirmed."
                  : `${open} ${open === 1 ? "answer is" : "answers are"} still open.`}
              </span>
            </>
          )
        )}
      </div>
    </form>
  );
}

/** A choice between two ways of answering. */
function Ways<T extends string>({
  legend,
  value,
  words,
  choose,
}: {
  legend: string;
  value: T;
  words: Readonly<Record<T, string>>;
  choose: (value: T) => void;
}) {
  return (
    <fieldset className="ways">
      <legend className="unseen">{legend}</legend>
      {(Object.keys(words) as T[]).map((one) => (
        <label key={one}>
          <input type="radio" name={legend} checked={one === value} onChange={() => choose(one)} />
          {` ${words[one]}`}
        </label>
      ))}
    </fieldset>
  );
}

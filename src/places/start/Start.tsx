// The start: a new plan by the guided set-up, a plan file, plans of this browser, and the plans that come with the program.
import { useEffect, useRef, useState } from "react";
import { FileButton } from "../../controls/index.ts";
import { useApp, useIt } from "../appContext.ts";
import { bundledPlans, bundledText } from "../bundled.ts";
import { timeWords } from "../plan/times.ts";
import { SetUp } from "./SetUp.tsx";
import "./start.css";

interface Example {
  name: string;
  title: string;
  shows: string;
  text: string;
}

/** The bundled plans with what each shows; read when the start is opened. */
function useExamples(): Example[] {
  const [examples, setExamples] = useState<Example[]>([]);
  useEffect(() => {
    let gone = false;
    const read = bundledPlans.map(async (name) => {
      const text = await bundledText(name);
      const { shows, header } = JSON.parse(text) as { shows: string; header: { title: string } };
      return { name, title: header.title, shows, text };
    });
    void Promise.all(read).then((all) => {
      if (!gone) setExamples(all);
    });
    return () => {
      gone = true;
    };
  }, []);
  return examples;
}

/** The screen, in a dialog over the plan. */
export function Start() {
  const app = useApp();
  const recent = useIt((state) => state.recent);
  const theme = useIt((state) => state.view.theme);
  const isOpen = useIt((state) => state.document !== null);
  const examples = useExamples();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    void app.listRecent();
    if (dialog.current?.open === false) dialog.current.showModal();
  }, [app]);
  const close = () => dialog.current?.close();
  const closed = () => {
    if (app.store.getState().over === "start") app.store.setState({ over: "" });
  };
  return (
    <dialog ref={dialog} className="start" aria-labelledby="start-title" data-theme={theme} onClose={closed}>
      <header>
        <h2 id="start-title">New plan</h2>
        <span className="quiet">
          Answer what you know of the job; the program makes a whole first plan of it and proposes the steps.
        </span>
        <button type="button" onClick={close}>
          {isOpen ? "Back to the plan" : "Close"}
        </button>
      </header>
      <SetUp close={close} />
      <aside aria-label="Open a plan">
        <h3>Open a plan</h3>
        <FileButton
          words="Open file"
          accept=".json,application/json"
          id="start-file"
          open={(file) => {
            close();
            void app.openFile(file);
          }}
          instead={() => {
            const can = app.picksFiles();
            if (can) {
              close();
              void app.pickFile();
            }
            return can;
          }}
        />
        <p className="quiet">Or drop a plan file anywhere on the page.</p>
        <h3>Open lately</h3>
        {recent.length === 0 && <p className="quiet">None yet: plans that you open or save stand here.</p>}
        <ul>
          {recent.slice(0, 6).map((one) => (
            <li key={one.key}>
              <button
                type="button"
                className="plan-line"
                onClick={() => {
                  close();
                  void app.openRecent(one.key);
                }}
              >
                <span className="strong">{one.title || "Plan without a title"}</span>
                <span className="quiet">{`${one.name}, ${timeWords(one.at, Date.now())}`}</span>
              </button>
            </li>
          ))}
        </ul>
        <h3>Plans that come with the program</h3>
        <ul>
          {examples.map(({ name, title, shows, text }) => (
            <li key={name}>
              <button
                type="button"
                className="plan-line"
                onClick={() => {
                  close();
                  app.openText(text, name);
                }}
              >
                <span className="strong">{title}</span>
                <span className="quiet">{shows}</span>
              </button>
            </li>
          ))}
        </ul>
      </aside>
    </dialog>
  );
}

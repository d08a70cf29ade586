// The browser's root: makes the app, opens the example that comes with it, and puts the Plan place into index.html.
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import "@fontsource/ibm-plex-sans/latin-400.css";
import "@fontsource/ibm-plex-sans/latin-600.css";
import "@fontsource/ibm-plex-sans/greek-400.css";
import "./places/look.css";
import "./controls/controls.css";
import "./share/share.css";
import "./places/plan/plan.css";
import "./places/plan/reactions.css";
import "./places/plan/panels.css";
import "./places/plan/errors.css";
import {
  browserGround,
  createApp,
  exposeHandle,
  keepView,
  rememberedView,
  workerClient,
} from "./app/index.ts";
import { AppContext, PlanPlace } from "./places/index.ts";

/** Storage of this browser, or null where it is forbidden. */
function storage(): Storage | null {
  try {
    return localStorage;
  } catch {
    return null;
  }
}

/** The example that is opened at once: the first of these that is there. */
const examples = import.meta.glob<string>(
  "../scenarios/{demo,one-girder,planted-faults,order-faults,machine-faults}.json",
  {
    query: "?raw",
    import: "default",
  },
);

async function openExample(): Promise<void> {
  const asked = new URLSearchParams(location.search).get("example") ?? "demo";
  const path = [`../scenarios/${asked}.json`, ...Object.keys(examples)].find((one) => one in examples);
  if (path !== undefined) app.openText(await examples[path](), path.replace(/^.*\//, ""));
}

const root = document.getElementById("root");
if (root === null)
  throw new Error('index.html has no element with the id "root": put <div id="root"></div> back.');

const app = createApp(browserGround(workerClient()));
app.setView(rememberedView(storage(), matchMedia("(prefers-color-scheme: dark)").matches));
app.store.subscribe((now, before) => {
  if (now.view !== before.view) keepView(storage(), now.view);
});
exposeHandle(app);
void openExample();

createRoot(root).render(
  <StrictMode>
    <AppContext value={app}>
      <PlanPlace />
    </AppContext>
  </StrictMode>,
);

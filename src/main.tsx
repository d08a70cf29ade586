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
import "./places/plan/document.css";
import {
  browserDesk,
  browserGround,
  createApp,
  exposeHandle,
  type FileHandle,
  keepView,
  rememberedView,
  workerClient,
} from "./app/index.ts";
import { download } from "./controls/index.ts";
import { AppContext, PlanPlace } from "./places/index.ts";

/** Storage of this browser, or null where it is forbidden. */
function storage(): Storage | null {
  try {
    return localStorage;
  } catch {
    return null;
  }
}

/** Where a browser hands over files that were opened with an installed page. */
interface LaunchQueue {
  setConsumer(work: (launch: { files: readonly FileHandle[] }) => void): void;
}

/** The example that is opened at once: the first of these that is there. */
const examples = import.meta.glob<string>(
  "../scenarios/{demo,one-girder,planted-faults,order-faults,machine-faults}.json",
  {
    query: "?raw",
    import: "default",
  },
);

async function openExample(name: string): Promise<void> {
  const path = [`../scenarios/${name}.json`, ...Object.keys(examples)].find((one) => one in examples);
  if (path !== undefined) app.openText(await examples[path](), path.replace(/^.*\//, ""));
}

/** Opens a plan that the server of this page hands out, as `npm start -- PLAN.json` does; false when it has errors. */
async function openServed(path: string): Promise<boolean> {
  const address = new URL(path, location.href);
  const name = decodeURIComponent(address.pathname.replace(/^.*\//, ""));
  const fail = (found: string) => {
    app.fail(name, found);
    return false;
  };
  if (address.origin !== location.origin) return fail("an address of another server");
  try {
    const answer = await fetch(address, { cache: "no-store" });
    if (!answer.ok) return fail(`nothing there (the server answers ${answer.status})`);
    return await app.openFile(new File([await answer.blob()], name));
  } catch (error) {
    return fail(`no answer from the server (${error instanceof Error ? error.message : String(error)})`);
  }
}

/** What the address asks for: a plan that is handed out, an example by its name, or the first example. */
async function openAsked(): Promise<void> {
  const served = question.get("open");
  if (served !== null && (await openServed(served))) return;
  const { failure } = app.store.getState();
  await openExample(question.get("example") ?? "demo");
  if (failure !== null) app.store.setState({ failure });
}

const question = new URLSearchParams(location.search);
const root = document.getElementById("root");
if (root === null)
  throw new Error('index.html has no element with the id "root": put <div id="root"></div> back.');

const app = createApp(browserGround(workerClient(), browserDesk(download)));
app.setView(rememberedView(storage(), matchMedia("(prefers-color-scheme: dark)").matches));
app.store.subscribe((now, before) => {
  if (now.view !== before.view) keepView(storage(), now.view);
});
exposeHandle(app);
const begun = app.begin({
  address: location.search,
  named: question.has("open") || question.has("example"),
  open: openAsked,
});
void begun.then(() => {
  if (app.store.getState().document === null) app.store.setState({ over: "start" });
});
// A plan file that the system opens with this page, where it was installed.
(globalThis as { launchQueue?: LaunchQueue }).launchQueue?.setConsumer(({ files }) => {
  const [handle] = files;
  if (handle !== undefined)
    void begun.then(() => handle.getFile()).then((file) => app.openFile(file, handle));
});

createRoot(root).render(
  <StrictMode>
    <AppContext value={app}>
      <PlanPlace />
    </AppContext>
  </StrictMode>,
);

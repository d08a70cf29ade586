// Every action of the page that is always there, in one list: keys, buttons and the finder take their words from it.
import {
  type App,
  type AppState,
  movingViews,
  type Panel,
  type SceneView,
  sceneViews,
  type Width,
  widths,
} from "../../../app/index.ts";
import { type System, systems } from "../../../units/index.ts";
import { saveCsv } from "../exports.ts";
import type { Action } from "./action.ts";
import { escapes } from "./escapes.ts";
import { fileField, pickedOtherwise, takeTyped } from "./picking.ts";

const notOpen = ({ document }: AppState) => (document === null ? "no plan is open" : "");
const notSolved = ({ result }: AppState) => (result === null ? "the plan is not solved yet" : "");

const fileActions: readonly Action[] = [
  {
    id: "new",
    kind: "file",
    words: "New plan",
    also: "start set-up guided begin wizard bundled examples",
    keys: ["N"],
    run: (app) => app.store.setState({ over: "start" }),
  },
  {
    id: "open",
    kind: "file",
    words: "Open file",
    also: "load plan json",
    keys: ["Ctrl+O"],
    run: (app) => {
      if (!pickedOtherwise(app)) document.getElementById(fileField)?.click();
    },
  },
  {
    id: "recent",
    kind: "file",
    words: "Plans that were open lately",
    also: "recent recovered put away",
    run: (app) => app.store.setState({ over: "recent" }),
  },
  {
    id: "save",
    kind: "file",
    words: "Save to the plan's file",
    also: "write store",
    keys: ["Ctrl+S"],
    inDialog: true,
    not: notOpen,
    run: (app) => {
      takeTyped();
      void app.save();
    },
  },
  {
    id: "save as",
    kind: "file",
    words: "Save to another file",
    also: "save as copy write",
    keys: ["Ctrl+Shift+S"],
    not: notOpen,
    run: (app) => {
      takeTyped();
      void app.saveAs();
    },
  },
  {
    id: "download",
    kind: "file",
    words: "Download the plan",
    also: "save file json",
    not: notOpen,
    run: (app) => app.downloadPlan(),
  },
  {
    id: "undo",
    kind: "file",
    words: "Undo",
    also: "back take back revert",
    keys: ["Ctrl+Z"],
    fieldFirst: true,
    now: ({ history }) => (history.index > 0 ? history.entries[history.index].label : ""),
    not: ({ history }) => (history.index > 0 ? "" : "nothing was changed"),
    run: (app) => app.undo(),
  },
  {
    id: "redo",
    kind: "file",
    words: "Redo",
    also: "again forward",
    keys: ["Ctrl+Y", "Ctrl+Shift+Z"],
    fieldFirst: true,
    now: ({ history }) => history.entries[history.index + 1]?.label ?? "",
    not: ({ history }) => (history.index + 1 < history.entries.length ? "" : "nothing was undone"),
    run: (app) => app.redo(),
  },
  {
    id: "csv",
    kind: "file",
    words: "Export CSV",
    also: "spreadsheet reactions table download",
    not: notSolved,
    run: (app) => void saveCsv(app),
  },
];

const noSteps = (state: AppState) =>
  notSolved(state) ||
  ((state.result?.sets[state.cursor.set]?.steps.length ?? 0) === 0 ? "this set has no steps" : "");

const moveActions: readonly Action[] = [
  {
    id: "run",
    kind: "move",
    words: "Run or pause",
    also: "play animate stop",
    keys: ["Space"],
    now: ({ playing }) => (playing ? "pause" : "run"),
    not: noSteps,
    run: (app) => {
      if (app.store.getState().playing) app.pause();
      else app.run();
    },
  },
  ...(
    [
      ["event on", "Event on", ["Right", "Up"], "next event", (app: App) => app.eventBy(1)],
      ["event back", "Event back", ["Left", "Down"], "last event before", (app: App) => app.eventBy(-1)],
      ["step on", "Step on", ["Page Down"], "next step", (app: App) => app.stepBy(1)],
      ["step back", "Step back", ["Page Up"], "step before", (app: App) => app.stepBy(-1)],
      ["start", "To the start of the operation", ["Home"], "first step", (app: App) => app.toStart()],
      ["end", "To the end of the operation", ["End"], "last step landed", (app: App) => app.toEnd()],
    ] as const
  ).map(([id, words, keys, also, run]): Action => {
    return { id, kind: "move", words, keys, also, not: noSteps, run };
  }),
  ...([0.5, 1, 2, 4] as const).map(
    (speed): Action => ({
      id: `speed ${speed}`,
      kind: "move",
      words: `Run at speed ${speed}`,
      also: "faster slower",
      not: ({ view }) => (view.speed === speed ? "that is the speed already" : ""),
      run: (app) => app.setView({ speed }),
    }),
  ),
];

const viewWords: Readonly<Record<SceneView, string>> = {
  elevation: "Elevation",
  plan: "Plan view",
  end: "End view",
  free: "Free view",
  cranes: "Whole cranes",
};

const sceneActions: readonly Action[] = [
  ...sceneViews.map(
    (scene, i): Action => ({
      id: `view ${scene}`,
      kind: "scene",
      words: viewWords[scene],
      also: "look camera side top 3D scene picture",
      keys: [String(i + 1)],
      not: notSolved,
      run: (app) => app.setView({ scene, allStrips: false, ...(app.store.getState().view.data && over) }),
    }),
  ),
  {
    id: "move",
    kind: "scene",
    words: "Move things in the scene",
    also: "drag handles crane transporter pick bunk position place shift",
    keys: ["M"],
    now: ({ view }) => (view.moving ? "end it" : ""),
    not: notSolved,
    run: (app) => {
      const { moving, scene, data } = app.store.getState().view;
      const seen = movingViews.includes(scene) ? {} : { scene: "plan" as const };
      app.setView(
        moving ? { moving: false } : { moving: true, allStrips: false, ...seen, ...(data && over) },
      );
    },
  },
];

/** On a small window the sheet of plan data hides the scene: whoever asks for a view wants to see it. */
const over = { data: null } as const;

const panelActions: readonly Action[] = [
  {
    id: "strips",
    kind: "panel",
    words: "Every strip of use",
    also: "all strips utilisation limits uses",
    keys: ["U"],
    not: notSolved,
    run: (app) => app.setView({ allStrips: !app.store.getState().view.allStrips }),
  },
  ...(
    [
      ["findings", "Findings", "F", "stops cautions notes errors warnings problems checks"],
      ["step", "Way back from this step", "B", "backed unbacked retreat loss"],
      ["girders", "Girders", "G", "moment shear torsion buckling stress"],
      ["tables", "Tables about one matter", "T", "landing wind clearances slings coverage"],
      ["history", "History of the plan", "H", "undo list changes entries"],
    ] as const
  ).map(
    ([panel, words, key, also]): Action => ({
      id: `panel ${panel}`,
      kind: "panel",
      words,
      also: `panel ${also}`,
      keys: [key],
      not: notSolved,
      run: (app) => toPanel(app, panel),
    }),
  ),
  {
    id: "away",
    kind: "panel",
    words: "Put away",
    also: "close escape cancel stop end nothing",
    keys: ["Esc"],
    now: (state) => escapes.find((one) => one.when(state))?.words ?? "",
    not: (state) => (escapes.some((one) => one.when(state)) ? "" : "nothing is open, chosen or under way"),
    run: (app) => escapes.find((one) => one.when(app.store.getState()))?.run(app),
  },
];

/** Shows a panel and brings the focus to it, so that its list can be gone through at once. */
function toPanel(app: App, panel: Panel): void {
  app.setView({ panel });
  document.getElementById(`tab-${panel}`)?.focus();
}

const dataActions: readonly Action[] = [
  {
    id: "data",
    kind: "data",
    words: "Plan data",
    also: "edit table form sheet input",
    keys: ["E"],
    not: notOpen,
    run: (app) => app.setView({ data: app.store.getState().view.data === null ? "site" : null }),
  },
  {
    id: "sets",
    kind: "data",
    words: "Sets side by side",
    also: "compare copy set siblings differences confirm propose sequence anew delete",
    keys: ["S"],
    not: notOpen,
    run: (app) => app.store.setState({ over: "sets" }),
  },
];

const behind = ({ completing, spreading }: AppState) => {
  if (completing.is !== "done") return "losses and ways back are not worked out yet";
  return spreading.is === "running" ? "low and high are being worked out" : "";
};

const workActions: readonly Action[] = [
  {
    id: "spread chosen",
    kind: "work",
    words: "Work out low and high over chosen corners",
    also: "spread uncertainty range",
    not: behind,
    run: (app) => app.spread("chosen"),
  },
  {
    id: "spread all",
    kind: "work",
    words: "Work out low and high over all corners",
    also: "spread uncertainty range every combination",
    not: behind,
    run: (app) => app.spread("all"),
  },
  {
    id: "stop spread",
    kind: "work",
    words: "Stop working out low and high",
    also: "cancel spread corners",
    not: ({ spreading }) => (spreading.is === "running" ? "" : "they are not being worked out"),
    run: (app) => app.stopSpread(),
  },
  {
    id: "buckle",
    kind: "work",
    words: "Look for buckling of the set",
    also: "stability factor stages lateral torsional",
    not: (state) => notSolved(state) || (state.buckling.is === "running" ? "it is under way" : ""),
    run: (app) => {
      toPanel(app, "girders");
      app.buckle();
    },
  },
];

const systemKeys = Object.keys(systems) as System[];
const widthKeys = Object.keys(widths) as Width[];

const readingActions: readonly Action[] = [
  ...systemKeys.map(
    (units): Action => ({
      id: `units ${units}`,
      kind: "reading",
      words: `Units: ${systems[units]}`,
      also: "metric imperial tonnes kips feet metres kN",
      not: ({ view }) => (view.units === units ? "these are the units already" : ""),
      run: (app) => app.setView({ units }),
    }),
  ),
  ...(["light", "dark"] as const).map(
    (theme): Action => ({
      id: `theme ${theme}`,
      kind: "reading",
      words: `${theme === "light" ? "Light" : "Dark"} theme`,
      also: "colours night day contrast",
      not: ({ view }) => (view.theme === theme ? "it is on already" : ""),
      run: (app) => app.setView({ theme }),
    }),
  ),
  ...([1, 10, 25, 50] as const).map(
    (exaggeration): Action => ({
      id: `shape ${exaggeration}`,
      kind: "reading",
      words: exaggeration === 1 ? "True elastic shape" : `Elastic shape × ${exaggeration}`,
      also: "exaggeration deflection droop bending",
      not: ({ view }) => (view.exaggeration === exaggeration ? "it is drawn so already" : ""),
      run: (app) => app.setView({ exaggeration }),
    }),
  ),
  ...widthKeys.map(
    (width): Action => ({
      id: `width ${width}`,
      kind: "reading",
      words: `Steps drawn with ${widths[width]}`,
      also: "axis time travel minutes",
      not: ({ view }) => (view.width === width ? "they are drawn so already" : ""),
      run: (app) => app.setView({ width }),
    }),
  ),
];

const helpActions: readonly Action[] = [
  {
    id: "find",
    kind: "help",
    words: "Find an action",
    also: "search command go to help",
    keys: ["Ctrl+K", "/"],
    run: (app) => app.store.setState({ over: "find" }),
  },
  {
    id: "keys",
    kind: "help",
    words: "All keys",
    also: "keyboard shortcuts help",
    keys: ["?"],
    run: (app) => app.store.setState({ over: "keys" }),
  },
];

/** All of them, in the order of their kinds. */
export const pageActions: readonly Action[] = [
  ...helpActions,
  ...fileActions,
  ...moveActions,
  ...sceneActions,
  ...panelActions,
  ...dataActions,
  ...workActions,
  ...readingActions,
];

/** The action with an id. @throws Error when there is none: a button names an action that is not in the list */
export function actionOf(id: string): Action {
  const found = pageActions.find((one) => one.id === id);
  if (found === undefined) throw new Error(`There is no action "${id}": name one of pageActions.`);
  return found;
}

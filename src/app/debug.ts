// What tests may ask of the page: one object on the window, filled in by the parts that know the answers.
import { type PlanPath, planHash, withValue } from "../plan/index.ts";
import type { App } from "./app.ts";
import type { Place } from "./axis.ts";
import { changesUnsaved } from "./history.ts";
import type { Finding } from "./types.ts";

/** The part that the app answers. The scene adds its own to the same object. */
export interface Handle {
  /** True when the plan was solved and a pose stands at the cursor. */
  ready(): boolean;
  setCursor(step: number, progress: number): void;
  cursor(): Place & { set: number };
  /** Force of every support in the pose at the cursor, N; NaN where a support is no part of it. */
  forces(): Record<string, number>;
  /** Share of the set's weight on every band in the pose at the cursor, N. */
  shares(): Record<string, number>;
  /** The result in short: hash, sets with their steps, findings. */
  result(): {
    planHash: string;
    sets: { id: string; weight: number; steps: string[]; poses: number }[];
    findings: Pick<Finding, "id" | "level" | "check" | "subject" | "from" | "to" | "worst">[];
  } | null;
  /** The document in short: hashes of the draft and of the last good plan, errors, history, changes no file holds. */
  document(): {
    name: string;
    draftHash: string;
    planHash: string;
    errors: string[];
    labels: string[];
    index: number;
    changes: number;
    opened: number;
  } | null;
  /** One committed edit: the value at a place of the draft. */
  edit(label: string, path: PlanPath, value: unknown): void;
  undo(): void;
  redo(): void;
  /** Shows the Result with one support's share taken out, to see the hole that it leaves; '' shows it whole again. */
  withoutForce(support: string): void;
}

type Held = ReturnType<App["store"]["getState"]>["result"];

/** Puts the app's answers on `window.__handspan`, beside what is there already. */
export function exposeHandle(app: App): void {
  const column = (of: "forces" | "shares") => () => {
    const { pose, context } = app.store.getState();
    if (pose === null || context === null) return {};
    return Object.fromEntries(context.supports.map((support, j) => [support.name, pose[of][j]]));
  };
  // Later answers of the worker replace the Result while a share is left out: it is left out of them too.
  let [without, whole, shown]: [string, Held, Held] = ["", null, null];
  const showWithout = (result: NonNullable<Held>) => {
    const sets = result.sets.map((set) => {
      const j = set.supports.findIndex((one) => one.name === without);
      const shares = set.shares.slice();
      if (j >= 0) for (let i = 0; i < set.count; i++) shares[i * set.supports.length + j] = 0;
      return { ...set, shares };
    });
    [whole, shown] = [result, { ...result, sets }];
    app.store.setState({ result: shown });
  };
  app.store.subscribe(({ result }) => {
    if (without !== "" && result !== null && result !== shown) showWithout(result);
  });
  const handle: Handle = {
    ready: () => app.store.getState().pose !== null,
    setCursor: (step, progress) => app.setCursor({ step, progress }),
    cursor: () => ({ ...app.store.getState().cursor }),
    forces: column("forces"),
    shares: column("shares"),
    result: () => {
      const { result } = app.store.getState();
      if (result === null) return null;
      return {
        planHash: result.planHash,
        sets: result.sets.map((set) => ({
          id: set.setId,
          weight: set.weight,
          steps: set.steps.map((one) => one.step.id),
          poses: set.count,
        })),
        findings: result.findings.map(({ id, level, check, subject, from, to, worst }) => {
          return { id, level, check, subject, from, to, worst };
        }),
      };
    },
    document: () => {
      const { document, history } = app.store.getState();
      if (document === null) return null;
      return {
        name: document.name,
        draftHash: planHash(document.draft),
        planHash: document.plan === null ? "" : planHash(document.plan),
        errors: document.errors.map(({ path }) => path),
        labels: history.entries.map(({ label }) => label),
        index: history.index,
        changes: changesUnsaved(history),
        opened: document.opened,
      };
    },
    edit: (label, path, value) => app.edit(label, (draft) => withValue(draft, path, value)),
    undo: app.undo,
    redo: app.redo,
    withoutForce: (support) => {
      const result = whole ?? app.store.getState().result;
      [without, whole, shown] = [support, null, null];
      if (result === null) return;
      if (support === "") app.store.setState({ result });
      else showWithout(result);
    },
  };
  const place = globalThis as { __handspan?: object };
  place.__handspan = Object.assign(place.__handspan ?? {}, handle);
}

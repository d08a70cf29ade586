// What stands over the Plan place when it is asked for: each screen is a chunk of its own, loaded then.
import { lazy, Suspense } from "react";
import { useIt } from "./appContext.ts";

const Start = lazy(() => import("./start/Start.tsx").then((it) => ({ default: it.Start })));

const Sets = lazy(() => import("./plan/sets/Sets.tsx").then((it) => ({ default: it.Sets })));

/** The screen that is asked for, if any. */
export function OverPlan() {
  const over = useIt((state) => state.over);
  return (
    <Suspense fallback={null}>
      {over === "start" && <Start />}
      {over === "sets" && <Sets />}
    </Suspense>
  );
}

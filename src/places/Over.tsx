// What stands over the Plan place when it is asked for: each screen is a chunk of its own, loaded then.
import { lazy, Suspense } from "react";
import { useIt } from "./appContext.ts";

const Start = lazy(() => import("./start/Start.tsx").then((it) => ({ default: it.Start })));

const Sets = lazy(() => import("./plan/sets/Sets.tsx").then((it) => ({ default: it.Sets })));

const Recent = lazy(() => import("./plan/RecentPlans.tsx").then((it) => ({ default: it.RecentPlans })));

const Finder = lazy(() => import("./plan/actions/Finder.tsx").then((it) => ({ default: it.Finder })));

const KeySheet = lazy(() => import("./plan/actions/KeySheet.tsx").then((it) => ({ default: it.KeySheet })));

/** The screen that is asked for, if any. */
export function OverPlan() {
  const over = useIt((state) => state.over);
  return (
    <Suspense fallback={null}>
      {over === "start" && <Start />}
      {over === "sets" && <Sets />}
      {over === "recent" && <Recent />}
      {over === "find" && <Finder />}
      {over === "keys" && <KeySheet />}
    </Suspense>
  );
}

// The scene with its views; the 3D code comes as a chunk of its own right after the first paint.
import { lazy, Suspense, useEffect, useMemo, useRef } from "react";
import { movingViews, type SceneView, sceneViews, stageAt } from "../../app/index.ts";
import { useSize } from "../../share/index.ts";
import { useApp, useIt, useSome } from "../appContext.ts";
import { useAction } from "./actions/useKeys.ts";
import { type Sights, sightHolder } from "./moving/sights.ts";

const load = () => import("../../scene/index.ts").then((layer) => ({ default: layer.Scene }));
const Scene = lazy(load);
const Moving = lazy(() => import("./moving/Moving.tsx").then((layer) => ({ default: layer.Moving })));

const viewWords: Readonly<Record<SceneView, string>> = {
  elevation: "Elevation",
  plan: "Plan",
  end: "End",
  free: "Free",
  cranes: "Cranes",
};

/** Distance of the buttons from the top left corner, px; as in the style sheet. */
const buttonsAt = 12;

function ViewButton({ scene, chosen, number }: { scene: SceneView; chosen: boolean; number: number }) {
  return (
    <button {...useAction(`view ${scene}`)} aria-pressed={chosen}>
      <kbd>{number}</kbd> {viewWords[scene]}
    </button>
  );
}

function MoveButton({ pressed }: { pressed: boolean }) {
  return (
    <button {...useAction("move")} aria-pressed={pressed}>
      <kbd>M</kbd> Move
    </button>
  );
}

/** What stands in the place of the scene while there is none. */
function Waiting() {
  const solving = useIt((state) => state.solving);
  const errors = useIt(({ document }) => (document?.plan === null ? document.errors.length : 0));
  if (errors > 0)
    return (
      <p className="waiting">
        {`Nothing is drawn yet: this plan has ${errors === 1 ? "an error" : `${errors} errors`} to mend in its data (E).`}
      </p>
    );
  if (solving.is === "failed")
    return <p className="waiting">{`The plan could not be solved: ${solving.words}`}</p>;
  return (
    <p className="waiting" role="status">
      {solving.is === "running" ? "Solving the plan…" : "Drawing…"}
    </p>
  );
}

/** Where the scene tells what it sees while things are moved; null while they are not, so that nothing is told in vain. */
function useSights(moving: boolean): Sights | null {
  return useMemo(() => (moving ? sightHolder() : null), [moving]);
}

/** The scene at the cursor, and the buttons that choose how it is seen. */
export function Stage() {
  const app = useApp();
  const { pose, noPose, context, selected } = useSome("pose", "noPose", "context", "selected");
  const view = useIt((state) => state.view);
  const stage = useIt(stageAt);
  const buckled = useMemo(
    () =>
      !view.buckled || stage === null || stage.factor === null || stage.shape.length === 0
        ? null
        : { factor: stage.factor, reference: stage.reference, shape: stage.shape },
    [stage, view.buckled],
  );
  // While the plan is being solved the 3D code is fetched; a failure shows when the scene is drawn.
  useEffect(() => {
    load().catch(() => undefined);
  }, []);
  const buttons = useRef<HTMLFieldSetElement>(null);
  const { width, height } = useSize(buttons);
  const corner = useMemo(
    () => ({ width: width + 2 * buttonsAt, height: height + buttonsAt }),
    [width, height],
  );
  const moving = view.moving && movingViews.includes(view.scene);
  const sights = useSights(moving);
  return (
    <section className="stage" aria-label="Scene">
      <fieldset ref={buttons} className="views">
        <legend className="unseen">View</legend>
        {sceneViews.map((one, i) => (
          <ViewButton key={one} scene={one} chosen={view.scene === one} number={i + 1} />
        ))}
        <MoveButton pressed={view.moving} />
      </fieldset>
      {noPose !== "" && <p className="no-pose over-scene">{noPose}</p>}
      {context !== null ? (
        <Suspense fallback={<Waiting />}>
          <Scene
            plan={context.plan}
            set={context.set}
            ctx={context}
            pose={pose}
            view={view.scene}
            exaggeration={view.exaggeration}
            buckled={buckled}
            units={view.units}
            selected={selected === "" ? null : selected}
            onSelect={(name) => app.select(name ?? "")}
            theme={view.theme}
            corner={corner}
            {...(sights !== null && { onSight: sights.set })}
          />
        </Suspense>
      ) : (
        <Waiting />
      )}
      {sights !== null && context !== null && (
        <Suspense fallback={null}>
          <Moving sights={sights} />
        </Suspense>
      )}
    </section>
  );
}

// The quiet word beside numbers that are still those of the plan before the last change. Its room is always kept.
import { olderOf } from "../../app/index.ts";
import { useIt } from "../appContext.ts";
import "./change.css";

/** Of the pose at the cursor, of the other numbers of its set, or of some findings. */
export function Older({ what }: { what: keyof ReturnType<typeof olderOf> }) {
  const older = useIt((state) => olderOf(state)[what]);
  return (
    <small className={older ? "older is" : "older"} aria-hidden={!older} data-older={what}>
      before the last change
    </small>
  );
}

// The scene in words: for those who cannot see it, and what a part carries when it is pointed at.
import { stepName } from "../app/index.ts";
import type { Part, Reaction } from "../shape/index.ts";
import { print, type System } from "../units/index.ts";
import type { Model } from "./model.ts";
import type { SceneProps, View } from "./types.ts";

const viewWords: Readonly<Record<View, string>> = {
  elevation: "Elevation",
  plan: "Plan view",
  end: "End view, looking forward",
  free: "Free view",
  cranes: "Elevation with whole cranes",
};

/** One sentence or two on what is drawn: view, step, where the set is, who carries what. */
export function poseWords(props: SceneProps, model: Model): string {
  const { pose, set, units, plan } = props;
  const view = `${viewWords[props.view]} of ${set.name === "" ? set.id : set.name}`;
  if (pose === null || model.world === null) return `${view}: no solved pose, the site alone is drawn.`;
  const step = set.steps[pose.step];
  const where = step === undefined ? "" : `step ${pose.step + 1}, ${stepName(step)}, `;
  const { tail, nose } = model.world;
  const at = `chainage ${print(tail[0], "length", units)} to ${print(nose[0], "length", units)}`;
  const left = plan.site.farBearing_m - nose[0];
  const togo = `${print(Math.abs(left), "length", units)} ${left >= 0 ? "short of" : "beyond"} the far bearings`;
  const loads = model.reactions
    .filter((r) => r.share !== 0)
    .map((r) => `${r.support.name} ${print(r.share, "load", units)}`)
    .join(", ");
  const shape = props.exaggeration === 1 ? "" : ` Bending is drawn ${props.exaggeration} times as large.`;
  const { buckled } = props;
  const buckles =
    buckled === null
      ? ""
      : ` Drawn in the shape in which it buckles at ${buckled.factor.toFixed(2)} times its loads.`;
  return (
    `${view}, ${where}${print(pose.progress, "percent", units)} done. ` +
    `The set reaches from ${at}, ${togo}. Carrying: ${loads || "none"}.${shape}${buckles}`
  );
}

/** What a part is and carries, a line each. */
export function partWords(part: Part, reactions: readonly Reaction[], units: System): string[] {
  const title = part.what === "girder" ? `girder ${part.name}` : part.name;
  const carried = reactions.filter((r) => part.supports.includes(r.support.name));
  return [
    title,
    ...carried.map((r) => {
      const own = r.support.name === part.name ? "" : `${r.support.name}: `;
      const deck =
        r.support.what === "group" ? `, ${print(r.force, "load", units)} on the ground with its deck` : "";
      return `${own}carries ${print(r.share, "load", units)}${deck}`;
    }),
  ];
}

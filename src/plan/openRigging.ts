// What the data of rigging, lift attachments and lifted sets leave open.
import type { PlanPath } from "./reading/planError.ts";
import { printPath } from "./reading/planError.ts";
import type { LiftAttachment, Plan } from "./schema.ts";

/** A place in the plan that is blank, and what follows from it. */
interface Blank {
  path: string;
  what: string;
}

const blank = (text: string | undefined): boolean => (text ?? "").trim() === "";

/** Blanks of every rigging that a pick names, of the picks, and of the sets that have them. */
export function openRigging(plan: Plan): Blank[] {
  const items: Blank[] = [];
  const open = (path: PlanPath, what: string) => {
    items.push({ path: printPath(path), what });
  };
  plan.rigging.forEach((rig, i) => {
    if (!plan.sets.some((set) => set.picks.some((pick) => pick.rigging === rig.id))) return;
    const path = ["rigging", i];
    if (rig.parts === undefined || rig.parts.length === 0)
      open([...path, "parts"], `rigging ${rig.id}: blank: only the whole assembly is judged`);
    const parts = rig.parts ?? [];
    const j = parts.findIndex((part) => part.place === undefined);
    if (j >= 0)
      open(
        [...path, "parts", j, "place"],
        `${parts[j].name} of ${rig.id}: blank: judged as a leg to a girder`,
      );
    if (rig.custom === undefined) return;
    if (rig.custom.proofTest_kN === undefined)
      open([...path, "custom", "proofTest_kN"], `rigging ${rig.id}: no proof test of gear made for the job`);
    if (rig.custom.marked === undefined)
      open(
        [...path, "custom", "marked"],
        `rigging ${rig.id}: whether it bears its safe working load is not said`,
      );
  });
  plan.sets.forEach((set, i) => {
    if (set.picks.length === 0) return;
    set.picks.forEach((pick, j) => {
      const path = ["sets", i, "picks", j, "attachment"];
      for (const [field, what] of blanksOf(pick.attachment))
        open(field === "" ? path : [...path, field], `pick of ${pick.crane}: ${what}`);
    });
    if (set.looseParts === undefined)
      open(
        ["sets", i, "looseParts"],
        "nobody has said what may shift or fall in the lift; an empty list says: none",
      );
    set.girders.forEach((girder, j) => {
      const bare = girder.pieces.filter((piece) => blank(piece.mark)).length;
      if (bare > 0)
        open(
          ["sets", i, "girders", j, "pieces", girder.pieces.findIndex((p) => blank(p.mark)), "mark"],
          `girder ${girder.line}, ${bare} of ${girder.pieces.length} pieces: no mark to find them by on the shop drawings`,
        );
    });
  });
  return items;
}

/** What is blank of an attachment: its field and the words. */
function blanksOf(attachment: LiftAttachment | undefined): [string, string][] {
  if (attachment === undefined) return [["", "how the rigging holds the girders is not said"]];
  const out: [string, string][] = [];
  const { kind, fixing, capacity_kN, detail, removal, removedBy } = attachment;
  if (kind === "sling") return out;
  if (capacity_kN === undefined) out.push(["capacity_kN", `no capacity of its ${kind}: it is not judged`]);
  if (kind === "lug" && fixing === undefined) out.push(["fixing", "bolted or welded is not said"]);
  if (kind === "clamp" && fixing === undefined) return out;
  if (blank(detail)) out.push(["detail", "no drawing of the attachment"]);
  if (blank(removal)) out.push(["removal", "how it comes off is not said"]);
  if (blank(removedBy)) out.push(["removedBy", "who takes it off is not said"]);
  return out;
}

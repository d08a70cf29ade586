// Bending of each transporter's spine: cylinders up, bunks, ties and its own weight down, against its maker's limit.

import { type SpineForce, spineMoment } from "../../mechanics/index.ts";
import type { SetContext } from "../../sequence/index.ts";
import { type Measure, measure, NOT_HERE } from "../measure.ts";
import { field, KNM, solved } from "../trace.ts";
import { traced } from "../traced.ts";
import { deckOf, linesOf, lineX, makers, pathOf, trains } from "./trains.ts";

/**
 * Greatest moment of every spine whose limit is known. Pushes along at the bunks, on the grade and by brakes, come in as
 * couples about the ground. The own weight lies evenly on the deck's length.
 */
export function spineMoments(ctx: SetContext): Measure[] {
  return trains(ctx)
    .filter((t) => t.spineMoment_kNm !== undefined)
    .map((t) => {
      const allowed = t.spineMoment_kNm ?? 0;
      const lines = linesOf(ctx, t);
      const length = Math.max(t.deckLength_m, (t.lines - 1) * t.pitch_m);
      const forces: SpineForce[] = lines.map((_, i) => ({ x: lineX(t, i), up: 0, couple: 0 }));
      const own = (t.mass_t * 1000 * ctx.gravity) / length;
      return measure(
        {
          check: "spine moment",
          subject: t.id,
          kind: `${t.kind} train`,
          unit: "kNm",
          digits: 0,
          strip: false,
          watched: false,
          cure: "bunks spread along the deck, more axle lines, or less load on this transporter",
          ...traced(ctx, (pose, rec) => {
            const deck = deckOf(pose, t.id);
            if (deck < 0) return NOT_HERE;
            const { devices, contact, layout, horizontal, holds } = pose.solution;
            for (let i = 0; i < lines.length; i++)
              forces[i].up = pose.forces[lines[i][0]] + pose.forces[lines[i][1]];
            let n = lines.length;
            const put = (x: number, up: number, couple: number) => {
              if (n === forces.length) forces.push({ x, up, couple });
              else {
                forces[n].x = x;
                forces[n].up = up;
                forces[n].couple = couple;
              }
              n++;
            };
            const from = layout.trains[deck].at;
            for (let j = 0; j < devices.length; j++) {
              const d = devices[j];
              if (contact.F[j] === 0) continue;
              if (d.kind === "bunk" && d.of === deck) put(d.x - from, -contact.F[j], 0);
              else if (d.kind === "lashing" && d.decks[0] === deck) put(d.x - from, contact.F[j], 0);
            }
            for (let i = 0; horizontal && i < holds.length; i++)
              if (holds[i].deck === deck && horizontal.holds[2 * i] !== 0)
                put(holds[i].hold.x - from, 0, -t.bunkHeight_m * horizontal.holds[2 * i]);
            forces.length = n;
            const [ux, , uz] = layout.up;
            const { moment, x } = spineMoment(forces, length, own * uz, -own * ux * t.cgHeight_m);
            const value = solved(
              rec,
              "M",
              Math.abs(moment),
              "N m",
              `size of the moment of the spine of ${t.id}, ${x.toFixed(2)} m from the middle of its deck`,
            );
            const path = `${pathOf(ctx, t)}.spineMoment_kNm`;
            field(rec, "M_a", allowed * 1000, "allowed moment of the spine", path, allowed, KNM);
            rec?.ends("M", "M_a");
            return {
              value,
              limit: allowed * 1000,
              get where() {
                return `${moment >= 0 ? "sagging" : "hogging"} ${Math.abs(x).toFixed(1)} m ${x >= 0 ? "ahead of" : "behind"} the middle of its deck`;
              },
            };
          }),
        },
        makers(t),
      );
    });
}

// The answer to one State as a short text for a terminal.

import type { StateAnswer } from "../mechanics/index.ts";
import { missing } from "../units/index.ts";
import { oneLine, tableLines } from "./table.ts";

const kN = (value: number) => (value / 1000).toFixed(3).replace(/^-(?=[0.]+$)/, "");

/** Status, weight, CG, forces, residual and notes; with a mechanism the motion, and no numbers. */
export function stateText(answer: StateAnswer): string {
  const notes = answer.notes.map((note) => `note: ${note}`);
  if (answer.status === "mechanism") {
    return lines(["status: mechanism, no equilibrium", `motion: ${answer.motion ?? "not named"}`, ...notes]);
  }
  if (answer.status === "unsettled") {
    const why = "heights, tensions and sideways forces do not settle together; no numbers are given";
    return lines(["status: unsettled", why, ...notes]);
  }
  const [x, y, z] = answer.cg.map((value) => value.toFixed(4));
  const rows = Object.entries(answer.forces).map(([name, force]) => [
    oneLine(name),
    kN(force),
    ...(answer.horizontal === null ? ["", ""] : sideways(answer, name)),
  ]);
  const { residual, horizontal, tipping } = answer;
  const out = [
    "status: solved",
    `weight: ${kN(answer.weight)} kN; CG at ${x} m from the rear end, ${y} m left, ${z} m above the soffit`,
    `lean: ${(1000 * answer.lean).toFixed(4)} mrad; level: ${(1000 * answer.level).toFixed(4)} mrad`,
    "",
    ...tableLines(["support", "force kN", "along kN", "across kN"], rows, [
      "left",
      "right",
      "right",
      "right",
    ]),
    "",
  ];
  if (horizontal !== null && horizontal.free.length > 0) out.push(`free: ${horizontal.free.join(", ")}`);
  if (horizontal !== null && horizontal.slipping.length > 0)
    out.push(`slipping: ${horizontal.slipping.map(oneLine).join(", ")}`);
  if (tipping !== null) {
    const ratio = tipping.momentRatio === null ? missing : tipping.momentRatio.toFixed(3);
    out.push(
      `tipping: about ${oneLine(tipping.axis)}, moment ratio ${ratio}, CG ${tipping.cgDistance.toFixed(3)} m inside`,
    );
  }
  out.push(
    `residual: force ${residual.force.toExponential(2)} W, moment ${residual.moment.toExponential(2)} W L`,
    ...notes,
  );
  return lines(out);
}

function sideways({ horizontal }: StateAnswer, name: string): [string, string] {
  const contact = horizontal?.contacts[name]?.force;
  const line = name.startsWith("hoist ") ? horizontal?.lines[name.slice("hoist ".length)]?.force : undefined;
  const force = contact ?? line;
  return force === undefined ? ["", ""] : [kN(force[0]), kN(force[1])];
}

const lines = (list: readonly string[]): string => `${list.join("\n")}\n`;

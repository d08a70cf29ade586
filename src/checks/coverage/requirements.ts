// All that an erection plan must answer, in the order of its areas.

import type { Requirement } from "./form.ts";
import { machineRows } from "./machines.ts";
import { sequenceRows } from "./sequence.ts";
import { setRows } from "./set.ts";
import { siteRows } from "./site.ts";

const order = ["SW", "TR", "CR", "GR", "ST", "SQ", "WX", "FT", "DOC", "BR", "CA"];
const place = ({ id }: Requirement): number => {
  const [area, number] = id.split("-");
  return order.indexOf(area) * 100 + Number(number);
};

export const requirements: readonly Requirement[] = [
  ...setRows,
  ...machineRows,
  ...siteRows,
  ...sequenceRows,
].sort((a, b) => place(a) - place(b));

// Random choices inside the box of what is uncertain lie within the band of the chosen corners, to 0.5 % of the weight: the
// part by which straight lines between stored poses may err too. LONG=1 takes 2,000 of them.
import { expect, test } from "vitest";
import { chosenCorners, runSpread, solvePlan } from "../../src/checks/index.ts";
import { prepareContext } from "../../src/sequence/index.ts";
import { scenario } from "../sequence/plans.ts";
import { anyCorner, chance, type Outside, outside } from "./samples.ts";

const long = process.env.LONG === "1";
const seed = 20_261;

test(`demonstration plan, ${long ? 2000 : 60} samples, seed ${seed}: within the band to 0.5 % of the weight`, () => {
  const plan = scenario("demo");
  const [set] = plan.sets;
  const ctx = prepareContext(plan, set.id);
  const solved = solvePlan(plan).sets[0];
  const corners = chosenCorners(plan, set);
  const spread = runSpread(ctx, solved, corners);
  const random = chance(seed);
  const found: Outside[] = [];
  for (let k = 0; k < (long ? 2000 : 60); k++)
    found.push(outside(ctx, solved, spread, anyCorner(plan, set, random)));
  const part = (o: Outside) => o.by / solved.weight;
  found.sort((a, b) => b.by - a.by);
  const beyond = (limit: number) => found.filter((o) => part(o) > limit).length;
  const lines = [
    `${found.length} samples against ${corners.length} corners: outside ${beyond(0)}, by over 0.1 % of the weight ${beyond(0.001)}, over 0.5 % ${beyond(0.005)}`,
    ...found.slice(0, 5).map((o) => {
      const at = `step ${solved.step[o.pose] + 1} at ${solved.progress[o.pose].toFixed(3)}`;
      return `  ${(100 * part(o)).toFixed(2)} %: ${o.support}, ${at}: ${o.corner.name}`;
    }),
  ];
  console.log(lines.join("\n"));
  expect(part(found[0])).toBeLessThanOrEqual(0.005);
}, 3_600_000);

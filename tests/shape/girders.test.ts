// The girders as drawn: their steel is that of the plates, and their soffit lies where the statics have it.
// Closed forms and identities; no published source needed.
import { describe, expect, test } from "vitest";
import { droopAt } from "../../src/mechanics/index.ts";
import { datumPoint, girderShape } from "../../src/sequence/index.ts";
import { type GirderMesh, girderVolume, pointOn, rigidPart } from "../../src/shape/index.ts";
import { posed } from "./posed.ts";

/** Vertices of a girder on its soffit: [station, x, y, z] in the world. */
function soffit(mesh: GirderMesh, girder: number): number[][] {
  const found: number[][] = [];
  for (let v = 0; v < mesh.rowOf.length; v++) {
    const row = mesh.rowOf[v];
    if (mesh.rowGirder[row] !== girder || mesh.height[v] !== 0) continue;
    const p = [0, 1, 2].map((k) => mesh.positions[3 * v + k] + mesh.origin[k]);
    found.push([mesh.rowStation[row], ...p, mesh.side[v]]);
  }
  return found;
}

describe("girders, half-way through the roll", () => {
  const { ctx, pose, mesh, drawn, world } = posed(1, 0.5);

  test("their volume is plate area times length, within 5e-4: single precision rounds the 14 mm web by micrometres", () => {
    // Sample: 400x25 + 1600x14 + 450x30 mm over 36 m.
    const area = 0.4 * 0.025 + 1.6 * 0.014 + 0.45 * 0.03;
    for (const g of [0, 1]) {
      expect(girderVolume(mesh, g) / (area * 36)).toBeGreaterThan(1 - 5e-4);
      expect(girderVolume(mesh, g) / (area * 36)).toBeLessThan(1 + 5e-4);
    }
  });

  test("their soffit is at datum plus droop: 1 mm between mesh stations, as droop is drawn straight from one to the next", () => {
    ctx.set.girders.forEach((girder, g) => {
      const seen = soffit(mesh, g);
      expect(seen.length).toBeGreaterThan(70);
      for (const [s, , , z, side] of seen) {
        const droop = droopAt(pose.solution, g, s) + 0.001 * cambered(s);
        const [, , level] = datumPoint(pose.situation, s, girder.y_m + side, droop);
        const turned = side * drawn.curves[g].twist(s);
        expect(Math.abs(z - level - turned), `${girder.line} at ${s}`).toBeLessThan(0.001);
      }
    });
  });

  test("their ends are the world's tail and nose, within 0.1 mm", () => {
    drawn.curves.forEach((curve) => {
      const { tail, nose } = world.girders[curve.girder.line];
      const a = pointOn(drawn.frame, curve, 0, 0, 0);
      const b = pointOn(drawn.frame, curve, 36, 0, 0);
      for (let k = 0; k < 3; k++) {
        expect(Math.abs(a[k] - tail[k])).toBeLessThan(1e-4);
        expect(Math.abs(b[k] - nose[k])).toBeLessThan(1e-4);
      }
    });
  });

  test("every triangle belongs to a girder and has an area", () => {
    expect(mesh.firstTriangle.at(-1)).toBe(mesh.triangles.length / 3);
    expect(mesh.names).toEqual(["L", "R"]);
    expect(mesh.triangles.every((v) => v < mesh.rowOf.length)).toBe(true);
  });
});

/** Camber of the sample in mm: 60 at mid-length, straight to both ends. */
function cambered(s: number): number {
  return 60 * (1 - Math.abs(s - 18) / 18);
}

describe("exaggerated bending", () => {
  test("multiplies what lies off the plane of the supports, and leaves camber and plane alone (1e-9 m)", () => {
    const { ctx, pose } = posed(1, 0.5);
    const shapes = girderShape(ctx, pose);
    const one = posed(1, 0.5, 1).drawn.curves[0];
    const ten = posed(1, 0.5, 10).drawn.curves[0];
    const [a, b, c] = rigidPart(ctx.set, shapes, [6, 20]);
    for (const s of [0, 6, 13, 20, 27, 36]) {
      const plane = a + b * s + c * 1.5;
      const bending = one.rise(s) - 0.001 * cambered(s) - plane;
      expect(Math.abs(ten.rise(s) - one.rise(s) - 9 * bending)).toBeLessThan(1e-9);
    }
    // Overhanging nose, 16 m beyond the front train: it droops, and more when exaggerated.
    expect(one.rise(36) - 0.001 * cambered(36)).toBeLessThan(-0.02);
    expect(ten.rise(36)).toBeLessThan(one.rise(36) - 0.1);
  });

  test("keeps the girder on its supports: less than a fifth of the nose's droop off at both decks", () => {
    const { drawn } = posed(1, 0.5, 10);
    const { drawn: straight } = posed(1, 0.5, 1);
    const moved = (s: number) => Math.abs(drawn.curves[0].rise(s) - straight.curves[0].rise(s));
    expect(moved(6)).toBeLessThan(moved(36) / 5);
    expect(moved(20)).toBeLessThan(moved(36) / 5);
  });
});

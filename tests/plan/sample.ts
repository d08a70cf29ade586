// An invented plan that uses every part of the format and every kind of step. Not an example of a good erection.
import type { Plan, Step } from "../../src/plan/index.ts";

/** A step with its id and the words that differ from step to step. */
type Brief = Step extends infer S
  ? S extends Step
    ? Omit<S, "carries"> & { carries?: string[] }
    : never
  : never;

function step(brief: Brief): Step {
  return { carries: [], ...brief } as Step;
}

function band(best: number): { low: number; best: number; high: number } {
  return { low: 0.8 * best, best, high: 1.2 * best };
}

function transporter(kind: "front" | "rear"): Plan["transporters"][number] {
  const wheels = (side: string) => [1, 2, 3, 4].map((line) => `${line}${side}`);
  return {
    id: kind,
    name: `${kind} train`,
    kind,
    lines: 4,
    pitch_m: 1.4,
    gauge_m: 1.8,
    mass_t: 16,
    cgHeight_m: 0.95,
    bunkHeight_m: 1.85,
    allowedLine_kN: 300,
    strokeUp_mm: 300,
    strokeDown_mm: 300,
    cylinderStiffness_kN_per_mm: 4,
    allowedGrade_pct: 6,
    allowedCrossfall_pct: 4,
    groups: [
      { name: `${kind} left`, wheels: wheels("L") },
      { name: `${kind} right`, wheels: wheels("R") },
    ],
    bunks: [
      { at_m: -1, kind: "rocking", length_mm: 300 },
      { at_m: 1, kind: "rocking", length_mm: 300 },
    ],
    bunkStiffness_kN_per_mm: 2000,
    bunkSideStiffness_kN_per_mm: 50,
    drivenLines: 2,
    wheelDiameter_m: 0.75,
    deckLength_m: 5.6,
    deckWidth_m: 2.4,
    source: "invented",
  };
}

function crane(kind: "far" | "near", chainage_m: number): Plan["cranes"][number] {
  return {
    id: `${kind}-1`,
    name: `${kind} crane`,
    kind,
    position: { chainage_m, y_m: 9, elevation_m: 100 },
    boomFootForward_m: 1.2,
    boomFootHeight_m: 2,
    boomLength_m: 36,
    tailRadius_m: 6,
    trackGauge_m: 6,
    trackLength_m: 8,
    mass_t: 200,
    chart: {
      invented: true,
      page: "p. 3",
      interpolation: true,
      rows: [
        { radius_m: 8, boom_m: 36, rated_t: 110 },
        { radius_m: 12, boom_m: 36, rated_t: 70 },
      ],
    },
    deductions: { block_t: 1.6, rope_kg_per_m: 3.2 },
    partsOfLine: 8,
    stiffness: { rope_kN_per_mm: band(5), boom_kN_per_mm: band(8), ground_kN_per_mm: band(20) },
    radiusGrowth_mm_per_kN: band(0.4),
    indicator: { counts: ["set", "rigging", "block"], accuracy_pct: 3 },
    hoistSpeed_m_per_min: 3,
    travelWithLoad: false,
    source: "invented",
  };
}

function girder(line: string, y_m: number): Plan["sets"][number]["girders"][number] {
  const plates = { topFlange_mm: [400, 25], web_mm: [1600, 14], bottomFlange_mm: [450, 30] } as const;
  const piece = (from_m: number, to_m: number, mark: string) => ({
    from_m,
    to_m,
    topFlange_mm: [...plates.topFlange_mm] as [number, number],
    web_mm: [...plates.web_mm] as [number, number],
    bottomFlange_mm: [...plates.bottomFlange_mm] as [number, number],
    yield_MPa: 345,
    weldLeg_mm: 8,
    mark,
  });
  return {
    line,
    y_m,
    camber_mm: [
      [0, 0],
      [18, 60],
      [36, 0],
    ],
    sweep_mm: 12,
    pieces: [piece(0, 18, `${line}1`), piece(18, 36, `${line}2`)],
  };
}

const steps: Step[] = [
  step({ id: "01", do: "lash", lashings: ["tie L", "tie R"], brakes: ["rear"], windLimit_m_per_s: 12 }),
  step({ id: "02", do: "roll", distance_m: 12, carries: ["front left", "front right"] }),
  step({ id: "03", do: "hook up", crane: "far-1", conditions: ["shackles pinned"] }),
  step({ id: "04", do: "unlash", lashings: ["tie L"] }),
  step({
    id: "05",
    do: "take load",
    crane: "far-1",
    until: { load_kN: 90 },
    loadCap_kN: 120,
    heightCap_mm: 150,
    see: { what: "far crane", low: 80, high: 100, unit: "kN" },
    carries: ["far crane", "rear left"],
    channel: "1",
    wayBack: [{ id: "05b", do: "hoist down", hooks: [{ crane: "far-1", height_mm: 50 }], carries: [] }],
  }),
  step({ id: "06", do: "trial lift", crane: "far-1", height_mm: 20, band_pct: 5 }),
  step({ id: "07", do: "jack down", groups: ["front left", "front right"], until: { gap_mm: 50 } }),
  step({ id: "08", do: "jack up", transporter: "rear", until: { height_mm: 20 } }),
  step({ id: "09", do: "level", groups: ["rear left"], tolerance_mm: 5 }),
  step({ id: "10", do: "drive out", transporter: "front", toward: "back", distance_m: 20 }),
  step({ id: "11", do: "roll together", distance_m: 10, cranes: ["far-1"], hold: "elevation", bite_m: 1 }),
  step({ id: "12", do: "rebunk", transporter: "front", deckAt_m: 12, packing_mm: { L: 0, R: 4 } }),
  step({ id: "13", do: "hook up", crane: "near-1" }),
  step({
    id: "14",
    do: "take load",
    crane: "near-1",
    until: { frees: "rear left" },
    loadCap_kN: 200,
    heightCap_mm: 300,
  }),
  step({
    id: "15",
    do: "hoist up",
    hooks: [
      { crane: "far-1", height_mm: 500 },
      { crane: "near-1", height_mm: 500, speed_factor: 0.95 },
    ],
  }),
  step({ id: "16", do: "walk", crane: "near-1", dx_m: 1, dy_m: 0 }),
  step({ id: "17", do: "bring over", dx_m: 1, dy_m: 0.5, bites: 4 }),
  step({ id: "18", do: "hoist down", hooks: [{ crane: "far-1", height_mm: 300 }] }),
  step({
    id: "19",
    do: "hold",
    point: "hold",
    releasedBy: "lift director",
    evidence: "levels read",
    counted: [{ what: "frames bolted", count: 5, of: 5 }],
    minutes: 20,
  }),
  step({
    id: "20",
    do: "land",
    order: ["far-1", "near-1"],
    stages_kN: [50, 20],
    until_kN: 5,
    carries: ["far L"],
  }),
  step({ id: "21", do: "brace", items: [{ what: "bearing blocks", count: 4, of: 4 }] }),
  step({
    id: "22",
    do: "unhook",
    crane: "far-1",
    conditions: ["braced"],
    release: [{ kind: "blocks", what: "bearing blocks", least: 4 }],
  }),
  step({ id: "23", do: "rest", on: ["bearings"], windLimit_m_per_s: 20 }),
];

/** A fresh copy of the sample: tests may change it as they like. */
export function samplePlan(): Plan {
  const bearing = (line: "near" | "far", of: string): Plan["site"]["bearings"][number] => ({
    line,
    girder: of,
    holds: line === "near" ? "fixed" : "free",
    stiffness_kN_per_mm: 2000,
    length_mm: 400,
    play_mm: 25,
    offset_mm: line === "near" ? 0 : 8,
    ratedLoad_kN: 900,
  });
  const seat = (line: "near" | "far", of: string): Plan["site"]["seats"][number] => ({
    line,
    girder: of,
    design_m: 98.2,
    asBuilt_m: line === "near" ? 98.203 : null,
    shims_mm: line === "near" ? 2 : 0,
    source: "survey",
    date: "2030-05-01",
  });
  const lines = ["near", "far"] as const;
  const plan: Plan = {
    shows: "every part of the format",
    format: "handspan-plan",
    version: 1,
    invented: true,
    header: { title: "Sample", revision: "A", preparedBy: "", checkedBy: "", status: "draft", notes: "" },
    site: {
      nearBearing_m: 40,
      farBearing_m: 75,
      nearFace_m: 40.6,
      farFace_m: 74.4,
      nearBackwall_m: 39.2,
      skew_deg: 0,
      temperature_C: 15,
      path: {
        points: [
          {
            chainage_m: -60,
            elevation_m: 100,
            crossfall_pct: 0,
            allowablePressure_kPa: 150,
            pressureSource: "soil report",
          },
          { chainage_m: 0, elevation_m: 100.6, crossfall_pct: 1 },
          { chainage_m: 40.6, elevation_m: 100.6, crossfall_pct: 1 },
        ],
      },
      seats: lines.flatMap((line) => [seat(line, "L"), seat(line, "R")]),
      bearings: lines.flatMap((line) => [bearing(line, "L"), bearing(line, "R")]),
      stopLines: [{ name: "abutment", chainage_m: 38.5 }],
      underfoot: [
        { name: "approach slab", from_m: 34, to_m: 39, allowablePressure_kPa: 200, source: "drawing 7" },
      ],
      below: { kind: "road", states: [{ step: "02", state: "closed" }] },
      obstacles: [
        {
          name: "line",
          kind: "overhead line",
          from: { chainage_m: 20, y_m: -40, elevation_m: 120 },
          to: { chainage_m: 90, y_m: -40, elevation_m: 121 },
          clearance_m: 6,
        },
      ],
    },
    transporters: [transporter("rear"), transporter("front")],
    cranes: [crane("far", 85), crane("near", 30)],
    rigging: [
      {
        id: "beam",
        kind: "spreader",
        mass_t: 1.2,
        hookPinHeight_m: 4,
        slingLength_m: 3,
        slingStiffness_kN_per_mm: 40,
        ratedLoad_kN: 600,
        softeners: true,
        parts: [{ name: "shackle", count: 4, ratedLoad_kN: 250, mass_t: 0.02 }],
      },
    ],
    lashings: ["L", "R"].map((of) => ({
      id: `tie ${of}`,
      transporter: "rear",
      girder: of,
      at_m: 6,
      stiffness_kN_per_mm: 50,
      slack_mm: 2,
      pretension_kN: 0,
    })),
    sets: [
      {
        id: "S1",
        name: "Set 1",
        length_m: 36,
        fabricationFactor_pct: 4,
        temperature_C: 22,
        start: { rearEnd_m: -20 },
        soleStations_m: { near: 0.5, far: 35.5 },
        girders: [girder("L", 1.5), girder("R", -1.5)],
        splices: ["L", "R"].map((of) => ({
          girder: of,
          at_m: 18,
          mass_t: 0.4,
          moment_kNm: 4000,
          shear_kN: 900,
          boltedFraction: 0.5,
        })),
        crossFrames: [0.5, 9, 18, 27, 35.5].map((at_m) => ({
          at_m,
          mass_t: 0.35,
          area_mm2: 3000,
          inPlaneInertia_m4: 8e-4,
          planInertia_m4: 2e-6,
          torsion_m4: 1e-7,
          height_m: 0.8,
        })),
        stiffeners: [{ girder: "L", at_m: 6, width_mm: 150, thickness_mm: 16 }],
        lateralBracing: [{ from_m: 9, to_m: 27 }],
        attachments: [{ name: "walkway", girder: "L", at_m: 18, mass_t: 0.6, height_m: 1.7 }],
        tagLines: [{ name: "tail", at_m: 1 }],
        ledger: [
          {
            item: "whole set",
            covers: "whole set",
            mass_t: { low: 28, best: 30, high: 32 },
            source: "shop drawings",
          },
        ],
        onTransporters: [
          { transporter: "rear", deckAt_m: 6, packing_mm: { L: 0, R: 4 } },
          { transporter: "front", deckAt_m: 20, packing_mm: { L: 10, R: 14 } },
        ],
        picks: [
          { crane: "far-1", rigging: "beam", at_m: 33, height_m: 1.65, length_mm: 200 },
          { crane: "near-1", rigging: "beam", at_m: 3, height_m: 1.65, length_mm: 200, girders: ["L", "R"] },
        ],
        unconfirmed: ["camber"],
        steps,
      },
    ],
    limits: {
      use: ["tandem-75"],
      rules: [{ id: "plumb", value: 1, unit: "deg", source: "owner", chosenBy: "planner" }],
      overrides: [{ limit: "level", value: 20, source: "owner", chosenBy: "planner" }],
    },
    spread: { weight_pct: [-3, 5], cgAlong_m: 0.2, friction: [0.05, 0.2] },
    people: {
      roles: [{ role: "lift director", name: "", channel: "1" }],
      channels: [{ name: "1", uses: "both" }],
      stopWord: "stop",
      tests: [{ channel: "1", date: "2030-05-02", by: "crew", result: "heard" }],
    },
    accept: [
      { check: "unbacked", subject: "S1", set: "S1", step: "11", by: "owner", reason: "nobody below" },
    ],
    expected: [{ check: "stroke", subject: "rear left", step: "08", why: "shown on purpose" }],
    record: [
      {
        set: "S1",
        step: "05",
        at: "09:40",
        by: "crew",
        readings: [{ what: "far crane", load_kN: 92 }],
        notes: "",
      },
    ],
  };
  return structuredClone(plan);
}

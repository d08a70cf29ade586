// The tools that judge everything else are judged here: totals, size budget, browser finder, runner.
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { candidates, findBrowser, starts } from "./browser.mjs";
import { weigh } from "./budget.mjs";
import { playwrightTotals, vitestTotals } from "./totals.mjs";

const top = fileURLToPath(new URL("../..", import.meta.url));

describe("totals of vitest", () => {
  const file = (name: string, ...statuses: string[]) => ({
    name: `/p/tests/${name}`,
    status: statuses.includes("failed") ? "failed" : "passed",
    message: "",
    assertionResults: statuses.map((status, n) => ({ status, fullName: `case ${n}` })),
  });

  test("passed and failed are counted, and counted by folder", () => {
    const report = {
      testResults: [file("units/a.test.ts", "passed", "failed"), file("laws/b.test.ts", "passed")],
    };
    const { totals, byFolder } = vitestTotals(report, "/p");
    expect(totals).toEqual({ passed: 2, failed: 1, failures: ["tests/units/a.test.ts: case 1"] });
    expect([...byFolder]).toEqual([
      ["tests/units/", 1],
      ["tests/laws/", 1],
    ]);
  });

  test.each(["skipped", "pending", "todo"])("a test that is %s is a failure", (status) => {
    const { totals } = vitestTotals({ testResults: [file("a.test.ts", "passed", status)] }, "/p");
    expect(totals.failed).toBe(1);
    expect(totals.failures[0]).toMatch(/no test may be left out/);
  });

  test("a file that holds no test, or could not be loaded, is a failure", () => {
    const broken = { ...file("b.test.ts"), status: "failed", message: "Cannot find module\nat ..." };
    const { totals } = vitestTotals({ testResults: [file("a.test.ts"), broken] }, "/p");
    expect(totals.failed).toBe(2);
    expect(totals.failures).toEqual([
      "tests/a.test.ts: holds no test",
      "tests/b.test.ts: Cannot find module",
    ]);
  });
});

describe("totals of Playwright", () => {
  const spec = (status: string) => ({ title: "t", file: "a.spec.ts", line: 3, tests: [{ status }] });

  test("nested suites are counted; skipped, flaky and unexpected are failures", () => {
    const inner = { title: "inner", specs: [spec("expected"), spec("unexpected"), spec("flaky")] };
    const report = {
      suites: [{ title: "outer", specs: [spec("expected"), spec("skipped")], suites: [inner] }],
    };
    const totals = playwrightTotals(report);
    expect([totals.passed, totals.failed]).toEqual([2, 3]);
  });

  test("an error outside of any test is a failure", () => {
    const totals = playwrightTotals({
      suites: [],
      errors: [{ message: "the server did not start\nat ..." }],
    });
    expect(totals).toEqual({ passed: 0, failed: 1, failures: ["the server did not start"] });
  });
});

describe("the size budget", () => {
  /** A built site in a scratch folder; texts of random digits keep their size when gzipped. */
  function site(sizes: Record<string, number>, manifest: object): string {
    const folder = mkdtempSync(join(tmpdir(), "budget-"));
    mkdirSync(join(folder, ".vite"));
    mkdirSync(join(folder, "assets"));
    writeFileSync(join(folder, ".vite/manifest.json"), JSON.stringify(manifest));
    let seed = 7;
    for (const [name, bytes] of Object.entries(sizes)) {
      const content = Uint8Array.from({ length: bytes }, () => {
        seed = (Math.imul(seed, 1_664_525) + 1_013_904_223) >>> 0;
        return seed >>> 24;
      });
      writeFileSync(join(folder, "assets", name), content);
    }
    return folder;
  }
  const manifest = {
    "index.html": {
      file: "assets/index.js",
      isEntry: true,
      imports: ["_shared.js"],
      dynamicImports: ["src/scene/index.ts"],
    },
    "_shared.js": { file: "assets/shared.js" },
    "src/scene/index.ts": {
      file: "assets/scene.js",
      src: "src/scene/index.ts",
      isDynamicEntry: true,
      imports: ["_shared.js", "_three.js"],
    },
    "_three.js": { file: "assets/three.js" },
  };

  test("counts what is loaded together, each file once, and names what is too heavy", () => {
    const sizes = { "index.js": 90_000, "shared.js": 80_000, "scene.js": 50_000, "three.js": 190_000 };
    const folder = site({ ...sizes, "worker-abc.js": 50_000 }, manifest);
    try {
      const lines = weigh(folder);
      expect(lines.map((line) => [line.name.split(" ")[0], line.over])).toEqual([
        ["shell", false],
        ["3D", true],
        ["worker", false],
      ]);
      // Random bytes: gzip adds its header and block marks, under 1 in 1000.
      expect(lines[0].size_kB / 170).toBeCloseTo(1, 2);
      expect(lines[1].size_kB / 240).toBeCloseTo(1, 2);
      expect(lines[2].note).toMatch(/above the aim/);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  test("knows the scene also where other parts share its chunk", () => {
    const { "src/scene/index.ts": scene, ...rest } = manifest;
    const shared = { ...scene, name: "scene", src: undefined, isDynamicEntry: undefined };
    const entry = { ...rest["index.html"], dynamicImports: ["_scene.js", "src/places/moving.ts"] };
    const moving = { file: "assets/moving.js", isDynamicEntry: true, imports: ["_scene.js"] };
    const sizes = { "index.js": 90_000, "shared.js": 80_000, "scene.js": 50_000, "three.js": 150_000 };
    const folder = site(
      { ...sizes, "moving.js": 5_000 },
      { ...rest, "index.html": entry, "_scene.js": shared, "src/places/moving.ts": moving },
    );
    try {
      expect(weigh(folder).map((line) => [line.name.split(" ")[0], line.over])).toEqual([
        ["shell", false],
        ["3D", false],
        ["loaded", false],
      ]);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  test("a worker far above its aim fails", () => {
    const sizes = { "index.js": 10, "shared.js": 10, "scene.js": 10, "three.js": 10 };
    const folder = site({ ...sizes, "worker-abc.js": 241_000 }, manifest);
    try {
      expect(weigh(folder).find((line) => line.name.startsWith("worker"))?.over).toBe(true);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  test("no build is an error that says so", () => {
    expect(() => weigh(join(tmpdir(), "no-such-site"))).toThrow(
      /manifest\.json is missing: build the page first/,
    );
  });
});

describe("the browser finder", () => {
  test("a CHROME_PATH that does not start is an error, not a reason to look elsewhere", () => {
    expect(() => findBrowser({ CHROME_PATH: process.execPath })).toThrow(/CHROME_PATH is .* does not start/);
  });

  test("the search goes along PATH in its order, then to the usual places", () => {
    const list = candidates({ PATH: "/one:/two" });
    const at = (path: string) => list.indexOf(path);
    expect(at("/one/chromium")).toBeGreaterThanOrEqual(0);
    expect(at("/one/chromium")).toBeLessThan(at("/two/chromium"));
    expect(at("/two/google-chrome-stable")).toBeLessThan(at("/usr/bin/chromium"));
  });

  test("a program that is no browser does not count as one", () => {
    expect(starts(process.execPath)).toBe(false);
    expect(starts("/no/such/file")).toBe(false);
  });
});

describe("the runner", () => {
  test("refuses a phase that it does not know, and lists those it does", () => {
    const { status, stderr } = spawnSync(process.execPath, ["tests/tools/run.mjs", "--only=nonsense"], {
      cwd: top,
      encoding: "utf8",
    });
    expect(status).toBe(2);
    expect(stderr).toMatch(
      /--only names nonsense; the phases are lint, types, tests, mutants, crosscheck, build, budget, browser/,
    );
  });
});

// The plans that come with the program: their names, and opening one.
import type { App } from "../app/index.ts";

const bundled = import.meta.glob<string>("../../scenarios/*.json", { query: "?raw", import: "default" });

const nameOf = (path: string): string => path.replace(/^.*\//, "");

/** File names, the demonstration first. */
export const bundledPlans: readonly string[] = Object.keys(bundled)
  .map(nameOf)
  .sort((a, b) => Number(b === "demo.json") - Number(a === "demo.json"));

/** The text of one. @throws Error when there is none of that name */
export function bundledText(name: string): Promise<string> {
  const path = Object.keys(bundled).find((one) => nameOf(one) === name);
  if (path === undefined) throw new Error(`There is no bundled plan "${name}": name one of bundledPlans.`);
  return bundled[path]();
}

/** Opens one. */
export async function openBundled(app: App, name: string): Promise<void> {
  app.openText(await bundledText(name), name);
}

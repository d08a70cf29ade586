// Files that are written of the result, from a button or by an action.
import type { App } from "../../app/index.ts";
import { download } from "../../controls/index.ts";

/** Saves the reactions as CSV. What hinders it is told as for a plan that was not saved. */
export async function saveCsv(app: App): Promise<void> {
  try {
    const { name, text } = await app.csv();
    download(name, text, "text/csv;charset=utf-8");
  } catch (error) {
    const words = error instanceof Error ? error.message : String(error);
    app.store.setState({ notFiled: `The table was not written: ${words}` });
  }
}

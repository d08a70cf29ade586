// What a browser gives for keeping work: its database, its pages, small notes that are written at once, the page's end.
import { type BrowserFiles, browserFiles } from "./files.ts";
import { browserShelf, type Shelf } from "./shelf.ts";
import { browserTabs, type Tabs } from "./tabs.ts";

/** Small notes that are written before the next line runs, unlike what goes to the shelf. */
export type Notes = Pick<Storage, "getItem" | "setItem" | "removeItem" | "key" | "length">;

/** What the page is told of its own coming and going. */
export interface PageLife {
  /** Calls back when the page may be ended without another word: hidden, left, closed. */
  onLeave(work: () => void): void;
  /** Calls back when a page that was left is shown again as it was. */
  onReturn(work: () => void): void;
  /** Whether the browser asks before the page is closed. */
  askBeforeLeaving(on: boolean): void;
}

/** The desk that plans are kept and filed on; tests hand in their own. */
export interface Desk {
  shelf: Shelf;
  tabs: Tabs;
  files: BrowserFiles;
  /** Notes that every page of this browser sees; null where they are forbidden. */
  notes: Notes | null;
  /** Notes that this page sees again when it is loaded anew; null where they are forbidden. */
  ownNotes: Notes | null;
  life: PageLife;
}

function allowed(notes: () => Storage): Storage | null {
  try {
    return notes();
  } catch {
    return null;
  }
}

function browserLife(): PageLife {
  const ask = (event: BeforeUnloadEvent) => event.preventDefault();
  return {
    onLeave: (work) => {
      addEventListener("pagehide", work);
      document.addEventListener("visibilitychange", () => {
        if (document.visibilityState === "hidden") work();
      });
    },
    onReturn: (work) =>
      addEventListener("pageshow", (event) => {
        if (event.persisted) work();
      }),
    askBeforeLeaving: (on) => {
      if (on) addEventListener("beforeunload", ask);
      else removeEventListener("beforeunload", ask);
    },
  };
}

/** The desk in a browser; `download` hands a text to the user as a file. */
export function browserDesk(download: (name: string, text: string, type: string) => void): Desk {
  return {
    shelf: browserShelf(),
    tabs: browserTabs(),
    files: browserFiles(download),
    notes: allowed(() => localStorage),
    ownNotes: allowed(() => sessionStorage),
    life: browserLife(),
  };
}

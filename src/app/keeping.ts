// Keeps every change in this browser as it is made, and goes on with work that a page which is gone has left.
import type { StoreApi } from "zustand/vanilla";
import type { Desk, Notes } from "./desk.ts";
import type { Editing } from "./editing.ts";
import { changesUnsaved } from "./history.ts";
import { type Put, whyNotKept } from "./shelf.ts";
import type { AppState, Recovered } from "./state.ts";
import { asWork, type Work, workOf } from "./work.ts";

/** What the page's address asks for. */
export interface Asked {
  /** The address's question, to know it again when the page is loaded anew. */
  address: string;
  /** It names a plan; else the page is free to go on with work that was left. */
  named: boolean;
  /** Opens what it names, or the plan that stands there when it names none. */
  open(): Promise<void>;
}

/** The commands about kept work. */
export interface KeepingWork {
  /** Begins the page: with work that was left behind, or with what the address asks for. */
  begin(asked: Asked): Promise<void>;
  /** Goes on with what was recovered, puts other work left behind on the list of plans, and closes the notice. */
  keepRecovered(): Promise<void>;
  /** Puts what was recovered on the list of plans, as it is, and opens what the address asks for. */
  putRecoveredAway(): Promise<void>;
  /** Opens kept work by its key; what is open is put away if a file does not hold all of it. */
  openWork(key: string): Promise<void>;
  /** Takes kept work away for good. */
  forgetWork(key: string): Promise<void>;
  /** All kept work by its keys, also what waits to be kept. Where this browser forbids it, what this page knows. */
  allWork(): Promise<Map<string, Work>>;
  /** Writes what is not written yet; fulfilled when that was tried. */
  flush(): Promise<void>;
}

/** While a change is tried out, as in dragging, it is written this often, ms; also where plans take long to write. */
const pause = 300;
/** A plan whose writing takes longer than this, ms, is not written with every change. */
const slow = 20;
/** After a failure it is tried again, ms. */
const again = 30_000;
const pageNote = "handspan-page";
const workNote = "handspan-work-";

const newKey = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(12)), (byte) => byte.toString(36)).join("");

/** Notes of pages that were ended amid their writing: key of the work, text. */
function notesOfWork(notes: Notes | null): [string, string][] {
  try {
    const names = Array.from({ length: notes?.length ?? 0 }, (_, i) => notes?.key(i) ?? "");
    const ours = names.filter((name) => name.startsWith(workNote));
    return ours.map((name) => [name.slice(workNote.length), notes?.getItem(name) ?? ""]);
  } catch {
    return [];
  }
}

type Kept = [key: string, work: Work];
const brief = ([key, { name, title, at, changes, labels }]: Kept): Recovered => ({
  key,
  name,
  title,
  at,
  changes,
  labels,
});

/** Keeps the document of a store on a desk. */
export function keeping(
  store: StoreApi<AppState>,
  editing: Pick<Editing, "openKept">,
  desk: Desk,
  now: () => number,
): KeepingWork {
  const get = store.getState;
  const { shelf, tabs, notes, ownNotes, life } = desk;
  let asked: Asked | null = null;
  /** Key of the record of the document that is open; and the record that is being taken over, until it is open. */
  let key = newKey();
  let taken: Kept | null = null;
  let [at, written, byAddress, addressing] = [0, 0, false, false];
  /** Something is on the shelf under the key; something is not on it yet; a writing is under way. */
  let [onShelf, dirty, writing] = [false, false, Promise.resolve()];
  let isWriting = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let retry: ReturnType<typeof setTimeout> | undefined;
  let cost = 0;
  const others: Put[] = [];

  const record = (state: Pick<AppState, "document" | "history">): Work | null =>
    workOf(state, { page: tabs.own, at, written, byAddress });

  const note = (name: string, text: string | null): boolean => {
    try {
      if (text === null) notes?.removeItem(name);
      else if (notes === null) return false;
      else notes.setItem(name, text);
      return true;
    } catch {
      return false;
    }
  };

  /** What stands as its address has it, and never stood otherwise, needs no keeping. */
  const nothingToKeep = (work: Work) => work.changes === 0 && work.byAddress && !onShelf;

  /** One writing after another, always of the latest, until nothing is left to write. */
  const write = async () => {
    try {
      while (dirty || others.length > 0) {
        dirty = false;
        const before = performance.now();
        written += 1;
        const work = record(get());
        const puts = [...others];
        if (work !== null && !nothingToKeep(work)) puts.push({ box: "work", key, value: work });
        cost = performance.now() - before;
        if (puts.length === 0) return;
        const mine = key;
        try {
          await shelf.put(puts);
          others.splice(0, others.length, ...others.filter((one) => !puts.includes(one)));
          if (mine === key && work !== null) onShelf = true;
          note(workNote + mine, null);
          if (work !== null) store.setState({ keeping: { is: "kept", at: work.at } });
          life.askBeforeLeaving(false);
        } catch (error) {
          dirty = true;
          // The same page may find it there again, even where the shelf is full.
          const latest = record(get());
          if (latest !== null) note(workNote + key, JSON.stringify(latest));
          store.setState({ keeping: { is: "failed", words: whyNotKept(error) } });
          life.askBeforeLeaving(
            changesUnsaved(get().history) > 0 || others.some(({ value }) => value !== undefined),
          );
          clearTimeout(retry);
          retry = setTimeout(flush, again);
          return;
        }
      }
    } finally {
      // Before anything else runs: a change that comes next begins a writing of its own.
      isWriting = false;
    }
  };

  const flush = (): Promise<void> => {
    clearTimeout(timer);
    timer = undefined;
    if (!isWriting && (dirty || others.length > 0)) {
      isWriting = true;
      writing = write();
    }
    return writing;
  };

  store.subscribe((state, before) => {
    if (state.document === before.document && state.history === before.history) return;
    if (state.document?.opened !== before.document?.opened) {
      // Another plan in its place: what no file holds of the one before goes on the list of plans.
      const left = record(before);
      if (left !== null && (left.changes > 0 || onShelf || isWriting))
        others.push({ box: "work", key, value: left.changes > 0 ? { ...left, away: true } : undefined });
      const [fresh, work] = taken ?? [newKey(), null];
      [key, onShelf, byAddress, taken] = [fresh, work !== null, addressing, null];
      [written, at] = work === null ? [0, now()] : [work.written, work.at];
    } else if (state.document?.draft !== before.document?.draft) at = now();
    dirty = true;
    const trying = state.document?.trying === true;
    if (!trying && cost < slow) void flush();
    else timer ??= setTimeout(flush, pause);
  });

  life.onLeave(() => {
    const work = record(get());
    // What is on its way to the shelf gets there, unless the page is ended first: so a copy is noted at once.
    if (work !== null && (dirty || isWriting) && !nothingToKeep(work))
      note(workNote + key, JSON.stringify({ ...work, written: written + 1 }));
    void flush();
  });
  life.onReturn(() => {
    dirty = true;
    void flush();
  });

  /** All kept work, from the shelf and from notes of pages that were ended amid their writing. */
  const allWork = async (): Promise<Map<string, Work>> => {
    const found = new Map<string, Work>();
    const add = (name: string, value: unknown) => {
      const work = asWork(value);
      const held = found.get(name);
      if (work !== null && (held === undefined || held.written < work.written)) found.set(name, work);
    };
    try {
      for (const [name, value] of await shelf.all("work")) add(name, value);
    } catch (error) {
      store.setState({ keeping: { is: "failed", words: whyNotKept(error) } });
    }
    for (const [name, text] of notesOfWork(notes))
      try {
        add(name, JSON.parse(text));
      } catch {
        // A note that cannot be read is left as it is.
      }
    for (const { key: name, value } of others)
      if (value === undefined) found.delete(name);
      else add(name, value);
    return found;
  };

  /** Takes work over, so that no other page does, and opens it; false when another page was first. */
  const takeOver = async ([old, work]: Kept): Promise<boolean> => {
    const fresh = newKey();
    const own = { ...work, page: tabs.own, away: false };
    try {
      const there = await shelf.exchange("work", old, () => [{ box: "work", key: fresh, value: own }]);
      if (there === null && notes?.getItem(workNote + old) == null) return false;
    } catch {
      // The shelf does not answer; the work is in our hands all the same.
    }
    note(workNote + fresh, notes?.getItem(workNote + old) == null ? null : JSON.stringify(own));
    note(workNote + old, null);
    taken = [fresh, own];
    const last = work.labels.at(-1);
    const opened = editing.openKept({
      name: work.name,
      draft: JSON.parse(work.draft),
      plan: work.plan === null ? null : JSON.parse(work.plan),
      changes: work.changes,
      label: last === undefined ? `Opened ${work.name}` : `Recovered, last: ${last}`,
    });
    if (!opened) {
      taken = null;
      others.push({ box: "work", key: fresh, value: { ...own, away: true } });
      void flush();
    }
    return opened;
  };

  const openAsked = async () => {
    addressing = true;
    try {
      await asked?.open();
    } finally {
      addressing = false;
    }
  };

  return {
    begin: async (given) => {
      asked = given;
      let [page, address] = ["", ""];
      try {
        [page = "", address = ""] = (ownNotes?.getItem(pageNote) ?? "").split(" ");
        ownNotes?.setItem(pageNote, `${tabs.own} ${given.address}`);
      } catch {
        // Forbidden or full: the page is then taken for a new one.
      }
      if (page !== "" && (await tabs.open()).has(page)) await tabs.gone(page);
      const [all, open] = [await allWork(), await tabs.open()];
      const left = [...all]
        .filter(([, work]) => !work.away && !open.has(work.page))
        .sort(([, a], [, b]) => b.at - a.at);
      const own = left.find(
        ([, work]) =>
          work.page === page && address === given.address && (work.changes > 0 || !work.byAddress),
      );
      const found = own ?? (given.named ? undefined : left.find(([, work]) => work.changes > 0));
      const opened = found !== undefined && (await takeOver(found));
      if (!opened) {
        // Why kept work could not be opened stays on screen.
        const { failure } = get();
        await openAsked();
        if (failure !== null) store.setState({ failure });
      }
      const rest = left.filter((one) => one !== found);
      // A plan that a file or an example holds to the last change needs no keeping.
      for (const [name, work] of rest)
        if (work.changes === 0) others.push({ box: "work", key: name, value: undefined });
      void flush();
      const unsaved = rest.filter(([, work]) => work.changes > 0).map(brief);
      const told = opened && found[1].changes > 0;
      if (told || unsaved.length > 0)
        store.setState({
          recovered: told ? { ...brief(found), key } : null,
          leftBehind: unsaved,
        });
    },
    keepRecovered: async () => {
      const { leftBehind } = get();
      store.setState({ recovered: null, leftBehind: [] });
      try {
        for (const { key: name } of leftBehind)
          await shelf.exchange("work", name, (value) => {
            const work = asWork(value);
            return [{ box: "work", key: name, value: work === null ? value : { ...work, away: true } }];
          });
      } catch {
        // It is told of again when the page is loaded next.
      }
    },
    putRecoveredAway: async () => {
      store.setState({ recovered: null });
      await openAsked();
    },
    openWork: async (name) => {
      const work = (await allWork()).get(name);
      const open = await tabs.open();
      store.setState({ leftBehind: get().leftBehind.filter((one) => one.key !== name) });
      const free = work !== undefined && (work.away || !open.has(work.page));
      if ((free && (await takeOver([name, work]))) || get().failure !== null) return;
      const found = "nothing: it was opened in another page, or taken off the list there";
      const error = {
        path: "the kept work",
        found,
        allowed: "work that is still kept",
        mend: "Go on there.",
      };
      store.setState({ failure: { name: work?.name ?? "The plan", errors: [error] } });
    },
    forgetWork: (name) => {
      note(workNote + name, null);
      others.push({ box: "work", key: name, value: undefined });
      return flush();
    },
    allWork,
    flush,
  };
}

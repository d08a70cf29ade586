// Which pages of this program are open in the browser: work of a page that is still open belongs to it alone.

/** The pages of one browser. */
export interface Tabs {
  /** Name of this page, another one each time it is loaded. */
  readonly own: string;
  /** Names of all pages that are open, this one among them. */
  open(): Promise<Set<string>>;
  /** Fulfilled when that page is gone, or after some time when it stays. */
  gone(name: string): Promise<void>;
}

/** Longest wait, ms, for a page that is being left, and for answers of other pages. */
const longest = 500;
const answering = 150;
const prefix = "handspan-page-";

function newName(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** By locks, which the browser itself lets go when a page ends, however it ends. */
function lockedTabs(locks: LockManager): Tabs {
  const own = newName();
  const held = new Promise<void>((resolve) => {
    locks
      .request(prefix + own, () => {
        resolve();
        return new Promise(() => {});
      })
      .catch(() => resolve());
  });
  return {
    own,
    open: async () => {
      await held;
      const names = (await locks.query()).held?.map(({ name }) => name ?? "") ?? [];
      return new Set(
        names.filter((name) => name.startsWith(prefix)).map((name) => name.slice(prefix.length)),
      );
    },
    gone: (name) =>
      locks
        .request(prefix + name, { signal: AbortSignal.timeout(longest) }, () => undefined)
        .catch(() => undefined),
  };
}

/** By asking aloud, where there are no locks: pages without a secure connection. A page that sleeps does not answer. */
function askedTabs(): Tabs {
  const own = newName();
  const channel = typeof BroadcastChannel === "function" ? new BroadcastChannel("handspan-pages") : null;
  const heard = new Set<string>();
  channel?.addEventListener("message", ({ data }: MessageEvent<unknown>) => {
    if (data === "who is there?") channel.postMessage(own);
    else if (typeof data === "string") heard.add(data);
  });
  const open = async () => {
    heard.clear();
    channel?.postMessage("who is there?");
    await new Promise((resolve) => setTimeout(resolve, answering));
    return new Set([...heard, own]);
  };
  return { own, open, gone: async () => undefined };
}

/** The pages of this browser. */
export function browserTabs(): Tabs {
  return "locks" in navigator ? lockedTabs(navigator.locks) : askedTabs();
}

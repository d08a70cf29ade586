// Where this browser keeps plans: boxes of records in its database (IndexedDB), each record under a key.

/** What is kept: work of sessions, and plans opened or saved lately. */
export type Box = "work" | "recent";

/** One record to be put in, or taken out where `value` is undefined. */
export interface Put {
  box: Box;
  key: string;
  value: unknown;
}

/** A store of records. Every promise is refused with the browser's own error where it is forbidden, full or broken. */
export interface Shelf {
  /** All records of a box, in the order of their keys. */
  all(box: Box): Promise<[string, unknown][]>;
  /** All of these or none; kept when the promise is fulfilled. The writing is begun at once, also while a page ends. */
  put(puts: readonly Put[]): Promise<void>;
  /** Takes one record out and puts others in, both or neither; null, and nothing done, when it is no longer there. */
  exchange(box: Box, key: string, puts: (value: unknown) => readonly Put[]): Promise<unknown>;
}

const databaseName = "handspan";
const boxes: readonly Box[] = ["work", "recent"];

/** Why keeping failed, in words for the user. */
export function whyNotKept(error: unknown): string {
  const name = error instanceof Error || error instanceof DOMException ? error.name : "";
  if (name === "QuotaExceededError") return "the storage of this browser is full";
  if (name === "SecurityError" || name === "InvalidStateError")
    return "this browser forbids storage here, as in some private windows";
  if (name === "UnknownError")
    return "the storage of this browser cannot be written, perhaps because the disk is full";
  return `the storage of this browser does not answer (${error instanceof Error ? error.message : String(error)})`;
}

/** The browser's shelf. The database is opened with the first use, and anew after it was closed or refused. */
export function browserShelf(): Shelf {
  let opening: Promise<IDBDatabase> | null = null;
  let opened: IDBDatabase | null = null;
  const forget = () => {
    opening = null;
    opened = null;
  };

  const open = (): Promise<IDBDatabase> => {
    opening ??= new Promise<IDBDatabase>((resolve, reject) => {
      // Reading the name alone throws where storage is forbidden.
      const request = indexedDB.open(databaseName, 1);
      request.onupgradeneeded = () => {
        for (const box of boxes) request.result.createObjectStore(box);
      };
      request.onerror = () => reject(request.error);
      request.onsuccess = () => {
        opened = request.result;
        opened.onclose = forget;
        opened.onversionchange = () => {
          opened?.close();
          forget();
        };
        resolve(opened);
      };
    }).catch((error: unknown) => {
      forget();
      throw error;
    });
    return opening;
  };

  /** Runs a piece of work in one transaction; fulfilled when all of it is kept. */
  const inOne = async <T>(
    names: readonly Box[],
    mode: IDBTransactionMode,
    work: (of: IDBTransaction) => () => T,
  ): Promise<T> => {
    const database = opened ?? (await open());
    return new Promise<T>((resolve, reject) => {
      const transaction = database.transaction(names, mode);
      const answer = work(transaction);
      transaction.oncomplete = () => resolve(answer());
      transaction.onabort = () => reject(transaction.error ?? new Error("the writing was broken off"));
    });
  };

  const putAll = (into: IDBTransaction, puts: readonly Put[]) => {
    for (const { box, key, value } of puts)
      if (value === undefined) into.objectStore(box).delete(key);
      else into.objectStore(box).put(value, key);
  };

  return {
    all: (box) =>
      inOne([box], "readonly", (from) => {
        const keys = from.objectStore(box).getAllKeys();
        const values = from.objectStore(box).getAll();
        return () => keys.result.map((key, i): [string, unknown] => [String(key), values.result[i]]);
      }),
    put: (puts) =>
      inOne(boxes, "readwrite", (into) => {
        putAll(into, puts);
        // Without this the page would have to live until every put has answered.
        into.commit?.();
        return () => undefined;
      }),
    exchange: (box, key, puts) =>
      inOne(boxes, "readwrite", (into) => {
        const request = into.objectStore(box).get(key);
        request.onsuccess = () => {
          if (request.result === undefined) return;
          putAll(into, [{ box, key, value: undefined }, ...puts(request.result)]);
        };
        return () => request.result ?? null;
      }),
  };
}

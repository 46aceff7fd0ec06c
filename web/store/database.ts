// The phone's own database: entries, the ends of chains, files, jobs, settings.

const NAME = "backprobe";
const VERSION = 1;

export type StoreName = "entries" | "tips" | "blobs" | "jobs" | "settings";

/** The phone has no room for what was to be kept. */
export class NoRoom extends Error {}

let opened: Promise<IDBDatabase> | null = null;

/** The database, opened once. */
export function database(): Promise<IDBDatabase> {
  opened ??= open();
  return opened;
}

function open(): Promise<IDBDatabase> {
  const asked = indexedDB.open(NAME, VERSION);
  asked.onupgradeneeded = () => {
    const made = asked.result;
    const entries = made.createObjectStore("entries", { keyPath: "n", autoIncrement: true });
    entries.createIndex("id", "id", { unique: true });
    entries.createIndex("job", "job");
    entries.createIndex("waiting", "waiting"); // only those that wait have the field
    entries.createIndex("refused", "refused");
    made.createObjectStore("tips");
    made.createObjectStore("blobs", { keyPath: "sha256" }).createIndex("waiting", "waiting");
    made.createObjectStore("jobs", { keyPath: "id" });
    made.createObjectStore("settings");
  };
  return answered(asked);
}

/** What a request gives. */
export function answered<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/** Resolves when everything in the transaction is kept; throws NoRoom where the phone is full. */
export function kept(transaction: IDBTransaction): Promise<void> {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(named(transaction.error));
    transaction.onerror = (event) => event.preventDefault(); // the abort that follows says why
  });
}

function named(error: DOMException | null): Error {
  if (error?.name === "QuotaExceededError") return new NoRoom("no room on this phone");
  return error ?? new Error("it could not be kept");
}

/** A transaction that is on the disk, not merely on its way there, when it is complete. */
export async function writing(...stores: StoreName[]): Promise<IDBTransaction> {
  return (await database()).transaction(stores, "readwrite", { durability: "strict" });
}

/** One store, to be read. */
export async function reading(store: StoreName): Promise<IDBObjectStore> {
  return (await database()).transaction(store).objectStore(store);
}

// Records that the server made, kept to be shown where there is no line: the newest few.
import { answered, kept, reading, writing } from "./database.ts";

const ROOM = "record"; // among the settings, each under its job
const MOST = 8;

export interface KeptRecord {
  readonly job: string;
  readonly at: string; // when the server made it, by this phone's clock
  readonly entries: number; // how many entries of the job this phone had then
  readonly bytes: ArrayBuffer;
}

const all = (): IDBKeyRange => IDBKeyRange.bound([ROOM], [ROOM, []]);

/** The record of a job; null where none is kept. */
export async function recordOf(job: string): Promise<KeptRecord | null> {
  return ((await answered((await reading("settings")).get([ROOM, job]))) as KeptRecord | undefined) ?? null;
}

/** Keeps a record in place of the one before; of too many the oldest go. */
export async function keepRecord(record: KeptRecord): Promise<void> {
  const transaction = await writing("settings");
  const done = kept(transaction);
  const store = transaction.objectStore("settings");
  store.put(record, [ROOM, record.job]);
  const found = (await answered(store.getAll(all()))) as KeptRecord[];
  const oldest = found.sort((a, b) => (a.at < b.at ? -1 : 1)).slice(0, Math.max(0, found.length - MOST));
  for (const one of oldest) store.delete([ROOM, one.job]);
  await done;
}

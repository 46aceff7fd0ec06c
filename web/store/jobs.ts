// The day's jobs as the server last gave them.
import { laterWord } from "../core/later-word.ts";
import { answered, kept, reading, writing } from "./database.ts";

export interface Vehicle {
  readonly plate: string | null;
  readonly fleet_number: string | null;
  readonly vin: string | null;
  readonly type: string | null;
}

export interface DayJob {
  readonly id: string;
  readonly name: string | null;
  readonly state: string;
  readonly cursor: number;
  readonly vehicle: Vehicle;
  readonly unit: { readonly sheet: string | null; readonly serial: string | null };
  readonly place: { readonly lat: number; readonly lon: number; readonly name: string | null } | null;
  readonly said?: Said | null; // what the engine last said of it: on this phone, or the server's
}

export interface Job extends DayJob {
  readonly seen: number; // the cursor up to which this phone has read
  readonly today: boolean; // whether the server's last list had it
}

/** What a job came to when it was last judged, for the list of the day. */
export interface Said {
  readonly verdict: string;
  readonly stage?: string | null; // to which it belongs, as the engine names it
  readonly open: number;
  readonly fails: number;
  readonly cursor?: number; // up to which entry of the server's it knows the job
}

/** All jobs this phone knows. */
export async function allJobs(): Promise<Job[]> {
  return answered((await reading("jobs")).getAll()) as Promise<Job[]>;
}

/** One job; null where this phone does not know it. */
export async function jobOf(id: string): Promise<Job | null> {
  return ((await answered((await reading("jobs")).get(id))) as Job | undefined) ?? null;
}

/** Takes over the server's list; a job that is no longer on it stays, with its entries. */
export async function takeDay(day: readonly DayJob[]): Promise<void> {
  const transaction = await writing("jobs");
  const done = kept(transaction);
  const store = transaction.objectStore("jobs");
  const known = new Map(((await answered(store.getAll())) as Job[]).map((job) => [job.id, job]));
  for (const job of day) {
    const before = known.get(job.id);
    store.put({ ...before, ...job, said: laterWord(before?.said ?? null, job.said ?? null, job.cursor), seen: before?.seen ?? 0, today: true });
    known.delete(job.id);
  }
  for (const gone of known.values()) store.put({ ...gone, today: false });
  await done;
}

/** Changes what is kept of one job. */
export async function updateJob(id: string, change: Partial<Pick<Job, "seen" | "said">>): Promise<void> {
  const transaction = await writing("jobs");
  const done = kept(transaction);
  const store = transaction.objectStore("jobs");
  const before = (await answered(store.get(id))) as Job | undefined;
  if (before) store.put({ ...before, ...change });
  await done;
}

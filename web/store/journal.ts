// Entries on the phone: each is kept, in its place in the chain, before the page says so.
import type { Draft, Tip, Written } from "../core/entry.ts";
import { continued, START } from "../core/entry.ts";
import { sha256 } from "../core/digest.ts";
import { answered, kept, reading, writing } from "./database.ts";
import type { NewBlob } from "./blobs.ts";

export interface Kept extends Written {
  readonly n?: number; // the order in which this phone got them
  readonly job: string;
  readonly device: string;
  readonly waiting?: 1;
  readonly refused?: string; // why the server did not take it
}

export interface Writer {
  readonly device: string;
  readonly engine: string;
}

const LOCK = "backprobe-journal"; // two windows of one phone write one chain

/** Keeps `drafts`, and the blobs they name, as this device's next entries of `job`; returns them when they are on the disk. */
export async function append(job: string, drafts: readonly Draft[], writer: Writer, blobs: readonly NewBlob[] = []): Promise<Kept[]> {
  return navigator.locks.request(LOCK, async () => {
    const { written, tip } = await continued(drafts, { job, ...writer }, await tipOf(job, writer.device));
    return putAll(job, { device: writer.device, written, tip, blobs });
  });
}

/** An entry that was made over all others, with what it was made over. */
export interface Seal {
  readonly id: string;
  readonly kind: string;
  readonly raw: string;
  readonly blobs: readonly NewBlob[];
}

/** The same, with one entry more behind them that `seal` makes over all of the job's entries: everything is kept, or nothing. */
export async function appendSealed(job: string, drafts: readonly Draft[], writer: Writer, { blobs, seal }: { blobs: readonly NewBlob[]; seal: (rows: readonly Written[]) => Promise<Seal> }): Promise<Kept[]> {
  return navigator.locks.request(LOCK, async () => {
    const { written, tip } = await continued(drafts, { job, ...writer }, await tipOf(job, writer.device));
    const { id, kind, raw, blobs: made } = await seal([...(await entriesOf(job)), ...written]);
    const { device, seq, prev } = JSON.parse(raw) as { device: string; seq: number; prev: string | null };
    if (device !== writer.device || seq !== tip.seq + 1 || prev !== tip.digest) throw new Error("the last entry does not follow on this phone's own");
    const whole = [...written, { id, kind, seq, raw }];
    return putAll(job, { device, written: whole, tip: { seq, digest: await sha256(raw) }, blobs: [...blobs, ...made] });
  });
}

async function tipOf(job: string, device: string): Promise<Tip> {
  return ((await answered((await reading("tips")).get([job, device]))) as Tip | undefined) ?? START;
}

async function putAll(job: string, { device, written, tip, blobs }: { device: string; written: readonly Written[]; tip: Tip; blobs: readonly NewBlob[] }): Promise<Kept[]> {
  const rows = written.map((one): Kept => ({ ...one, job, device, waiting: 1 }));
  const transaction = await writing("entries", "tips", "blobs");
  const done = kept(transaction);
  for (const blob of blobs) transaction.objectStore("blobs").put({ ...blob, waiting: 1 });
  for (const row of rows) transaction.objectStore("entries").add(row);
  transaction.objectStore("tips").put(tip, [job, device]);
  await done;
  return rows;
}

/** All entries of a job, in the order in which this phone got them. */
export async function entriesOf(job: string): Promise<Kept[]> {
  return answered((await reading("entries")).index("job").getAll(job)) as Promise<Kept[]>;
}

/** How many entries wait to be sent. */
export async function waitingCount(): Promise<number> {
  return answered((await reading("entries")).index("waiting").count());
}

/** The oldest entries that wait, at most `most`. */
export async function waiting(most: number): Promise<Kept[]> {
  return answered((await reading("entries")).index("waiting").getAll(null, most)) as Promise<Kept[]>;
}

/** Entries that the server refused. */
export async function refused(): Promise<Kept[]> {
  return answered((await reading("entries")).index("refused").getAll()) as Promise<Kept[]>;
}

/** Notes what the server said of each entry: taken (null) or why not. */
export async function settled(rows: readonly { row: Kept; refused: string | null }[]): Promise<void> {
  const transaction = await writing("entries");
  const done = kept(transaction);
  for (const { row, refused: why } of rows) {
    const { waiting: _, ...rest } = row;
    transaction.objectStore("entries").put(why === null ? rest : { ...rest, refused: why });
  }
  await done;
}

/** Keeps entries that came from the server, each once. */
export async function received(job: string, texts: readonly string[]): Promise<void> {
  const rows = texts.map((raw) => fromServer(job, raw));
  const digests = await Promise.all(rows.map((row) => sha256(row.raw)));
  return navigator.locks.request(LOCK, async () => {
    const transaction = await writing("entries", "tips");
    const done = kept(transaction);
    const entries = transaction.objectStore("entries");
    const tips = transaction.objectStore("tips");
    for (const [at, row] of rows.entries()) {
      if (await answered(entries.index("id").getKey(row.id))) continue;
      entries.add(row);
      const tip = (await answered(tips.get([job, row.device]))) as Tip | undefined;
      if ((tip?.seq ?? 0) < row.seq) tips.put({ seq: row.seq, digest: digests[at] as string }, [job, row.device]);
    }
    await done;
  });
}

function fromServer(job: string, raw: string): Kept {
  const { id, kind, seq, device } = JSON.parse(raw) as { id: string; kind: string; seq: number; device: string };
  return { id, kind, seq, device, job, raw };
}

// Entries to the server and back, whenever there is a line: on start, when one comes back, and on a timer.
import { firstBatch, MOST_ENTRIES, wait_ms } from "../core/batches.ts";
import { blobOf, blobSent, keepKnown, textBlob, waitingBlobs } from "../store/blobs.ts";
import { allJobs, takeDay, updateJob } from "../store/jobs.ts";
import { received, settled, waiting, waitingCount } from "../store/journal.ts";
import { keepSetting, setting, type Enrolment } from "../store/settings.ts";
import * as server from "./server.ts";

export type Line = "unknown" | "busy" | "good" | "none" | "withdrawn";

export interface SyncState {
  readonly line: Line;
  readonly unsent: number;
}

const EVERY_MS = 30_000;
const LOCK = "backprobe-sync"; // one window of a phone sends at a time

type Listener = (state: SyncState, changed: boolean) => void;

let state: SyncState = { line: "unknown", unsent: 0 };
let timer: ReturnType<typeof setTimeout> | undefined;
let failures = 0;
let again = false;
let running = false;
const listeners = new Set<Listener>();

/** Calls `listener` whenever something changes; `changed` says that jobs or entries came in. Returns how to stop. */
export function onSync(listener: Listener): () => void {
  listeners.add(listener);
  listener(state, false);
  return () => listeners.delete(listener);
}

async function say(line: Line, changed = false): Promise<void> {
  state = { line, unsent: await waitingCount() };
  for (const listener of listeners) listener(state, changed);
}

/** Counts anew what waits, and sends it soon. */
export function somethingNew(): void {
  void say(state.line);
  void syncNow();
}

/** Begins: at once, when a line comes back, when the page is looked at again, and on a timer. */
export function startSync(): void {
  addEventListener("online", () => void syncNow());
  addEventListener("offline", () => void say("none"));
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && void syncNow());
  void syncNow();
}

/** Sends and fetches everything there is; does nothing where that is under way in this or another window. */
export async function syncNow(): Promise<void> {
  again = true;
  if (running) return;
  running = true;
  try {
    while (again) {
      again = false;
      await navigator.locks.request(LOCK, { ifAvailable: true }, async (lock) => lock && (await round()));
    }
  } finally {
    running = false;
    clearTimeout(timer);
    timer = setTimeout(() => void syncNow(), failures ? wait_ms(failures - 1) : EVERY_MS);
  }
}

async function round(): Promise<void> {
  const enrolment = await setting("enrolment");
  if (!enrolment) return say("unknown");
  await say("busy");
  try {
    await sendEntries(enrolment.token);
    await sendBlobs(enrolment.token);
    const changed = enrolment.withdrawn ? false : await fetchDay(enrolment);
    failures = 0;
    await say(enrolment.withdrawn ? "withdrawn" : "good", changed);
  } catch (fault) {
    failures += 1;
    await say(await fell(fault, enrolment));
  }
}

async function fell(fault: unknown, enrolment: Enrolment): Promise<Line> {
  const refused = fault instanceof server.Refused ? fault.code : "";
  if (refused !== "phone_withdrawn" && refused !== "not_enrolled") return "none";
  await keepSetting("enrolment", { ...enrolment, withdrawn: true });
  return "withdrawn";
}

async function sendEntries(token: string): Promise<void> {
  for (let rows = await waiting(MOST_ENTRIES); rows.length > 0; rows = await waiting(MOST_ENTRIES)) {
    const batch = firstBatch(rows);
    const { results } = await server.push(batch.map((row) => row.raw), token);
    await settled(batch.map((row, at) => ({ row, refused: why(results[at]) })));
    await say("busy");
  }
}

function why(result: server.Result | undefined): string | null {
  if (!result) throw new Error("the server answered for fewer entries than were sent");
  return result.state === "refused" ? (result.error ?? result.code ?? "refused") : null;
}

async function sendBlobs(token: string): Promise<void> {
  for (const sha256 of await waitingBlobs()) {
    const blob = await blobOf(sha256);
    if (blob) await server.sendBlob(sha256, blob.bytes, token);
    await blobSent(sha256);
  }
}

/** The day's jobs with their sheets, and the entries of each that this phone has not seen. */
async function fetchDay(enrolment: Enrolment): Promise<boolean> {
  const day = await server.day(enrolment.token);
  for (const { files } of day.jobs) for (const text of Object.values(files)) await keepKnown(await textBlob(text));
  await takeDay(day.jobs.map(({ files: _, ...job }) => job));
  await keepSetting("serials", day.serials);
  let changed = 0;
  for (const job of await allJobs()) if (job.today && job.seen < job.cursor) changed += await fetchEntries(job.id, job.seen, enrolment.token);
  return changed > 0;
}

async function fetchEntries(job: string, seen: number, token: string): Promise<number> {
  let after = seen;
  let fresh = 0;
  for (let more = true; more; ) {
    const pulled = await server.pull(job, after, token);
    const texts = pulled.entries.map((entry) => entry.text);
    fresh += await received(job, texts);
    await fetchBlobs(texts, token);
    after = Math.max(after, pulled.cursor);
    more = pulled.more;
    await updateJob(job, { seen: after });
  }
  return fresh;
}

const READ_HERE = ["recording", "meter_sheet", "walkround", "job", "unit_sheet"]; // photos stay on the server

async function fetchBlobs(texts: readonly string[], token: string): Promise<void> {
  for (const text of texts) {
    const entry = JSON.parse(text) as { kind: string; blobs?: string[]; body?: { kind?: string } };
    const kind = entry.kind === "correction" ? entry.body?.kind : entry.kind;
    if (!kind || !READ_HERE.includes(kind)) continue;
    for (const sha256 of entry.blobs ?? []) {
      if (await blobOf(sha256)) continue;
      const found = await server.fetchBlob(sha256, token);
      if (found) await keepKnown({ sha256, ...found });
    }
  }
}


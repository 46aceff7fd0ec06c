// Entries to the server and back, whenever there is a line: on start, when one comes back, and on a timer.
import { firstBatch, MOST_ENTRIES, wait_ms } from "../core/batches.ts";
import { blobOf, blobSent, keepKnown, textBlob, waitingBlobs } from "../store/blobs.ts";
import { allJobs, takeDay, updateJob } from "../store/jobs.ts";
import { received, settled, waiting, waitingCount } from "../store/journal.ts";
import { keepSetting, setting, type Enrolment } from "../store/settings.ts";
import { makeKeyKnown } from "./key.ts";
import * as server from "./server.ts";

export type Line = "unknown" | "busy" | "good" | "none" | "withdrawn";

export interface SyncState {
  readonly line: Line;
  readonly unsent: number; // entries
  readonly files: number; // files that are not sent yet
  readonly clock_out_min: number; // how far this phone's clock is ahead of the server's
}

const EVERY_MS = 30_000;
const MINUTE_MS = 60_000;
const BUSY_ELSEWHERE_MS = 1_000;
const LOCK = "backprobe-sync"; // one window of a phone sends at a time

const windows = new BroadcastChannel("backprobe"); // what one window of a phone keeps or sends, the others show

type Listener = (state: SyncState, changed: boolean) => void;

let state: SyncState = { line: "unknown", unsent: 0, files: 0, clock_out_min: 0 };
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
  await show(line, changed);
  windows.postMessage({ line, changed });
}

async function show(line: Line, changed: boolean): Promise<void> {
  const [unsent, files, clock_out_min] = await Promise.all([waitingCount(), waitingBlobs(), setting("clock_out_min")]);
  state = { line, unsent, files: files.length, clock_out_min: clock_out_min ?? 0 };
  for (const listener of listeners) listener(state, changed);
}

/** Counts anew what waits, tells the other windows of it, and sends it soon; resolves when it was counted. */
export async function somethingNew(): Promise<void> {
  const counted = show(state.line, false);
  windows.postMessage({ line: state.line, changed: true });
  void syncNow();
  await counted.catch(() => undefined); // what was kept is kept, counted or not
}

/** Begins: at once, when a line comes back, when the page is looked at again, and on a timer. */
export function startSync(): void {
  windows.onmessage = ({ data }: MessageEvent<{ line: Line; changed: boolean }>) => void show(data.line, data.changed);
  addEventListener("online", () => void syncNow());
  addEventListener("offline", () => void say("none"));
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && void syncNow());
  void syncNow();
}

/** Sends and fetches everything there is; where another window is at it, looks again soon. */
export async function syncNow(): Promise<void> {
  again = true;
  if (running) return;
  running = true;
  let elsewhere = false;
  try {
    while (again && !elsewhere) {
      again = false;
      elsewhere = !(await navigator.locks.request(LOCK, { ifAvailable: true }, async (lock) => lock !== null && (await round())));
    }
  } finally {
    running = false;
    clearTimeout(timer);
    timer = setTimeout(() => void syncNow(), elsewhere ? BUSY_ELSEWHERE_MS : failures ? wait_ms(failures - 1) : EVERY_MS);
  }
}

/** One round of both; true, for it was done here. */
async function round(): Promise<true> {
  const enrolment = await setting("enrolment");
  if (!enrolment) {
    await say("unknown");
    return true;
  }
  await say("busy");
  try {
    if (!enrolment.withdrawn) await makeKeyKnown(enrolment);
    await sendEntries(enrolment.token);
    await sendBlobs(enrolment.token);
    if (!enrolment.withdrawn) await fetchDay(enrolment);
    failures = 0;
    await say(enrolment.withdrawn ? "withdrawn" : "good", true);
  } catch (fault) {
    failures += 1;
    await say(await fell(fault, enrolment));
  }
  return true;
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
    await say("busy");
  }
}

/** The day's jobs with their sheets, and the entries of each that this phone has not seen. */
async function fetchDay(enrolment: Enrolment): Promise<void> {
  const { day, whole, time } = await server.day(enrolment.token, await setting("day"));
  await keepSetting("clock_out_min", Math.round((Date.now() - Date.parse(time)) / MINUTE_MS));
  if (day) {
    await takeParts(day);
    await keepSetting("day", { whole, parts: day.marks });
  }
  for (const job of await allJobs()) if (job.today && job.seen < job.cursor) await fetchEntries(job.id, job.seen, enrolment.token);
}

/** What is new in the day; the mark of the whole is kept after all of it, so that a lost page asks again. */
async function takeParts(day: server.Day): Promise<void> {
  for (const { files } of day.jobs) for (const text of Object.values(files)) await keepKnown(await textBlob(text));
  await takeDay(day.jobs.map(({ files: _, ...job }) => job));
  if (day.serials !== undefined) await keepSetting("serials", day.serials);
  if (day.usual !== undefined) await keepSetting("usual", day.usual);
  if (day.corners !== undefined) await keepSetting("corners", day.corners);
}

async function fetchEntries(job: string, seen: number, token: string): Promise<void> {
  let after = seen;
  for (let more = true; more; ) {
    const pulled = await server.pull(job, after, token);
    const texts = pulled.entries.map((entry) => entry.text);
    await received(job, texts);
    await fetchBlobs(texts, token);
    after = Math.max(after, pulled.cursor);
    more = pulled.more;
    await updateJob(job, { seen: after });
  }
}

const READ_HERE = ["person", "recording", "reports", "meter_sheet", "mount", "policy", "walkround", "job", "unit_sheet"]; // photos stay on the server

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


// What the phone says to the server; docs/api.md is the agreement.
import type { DayJob } from "../store/jobs.ts";
import type { DayMarks, Person } from "../store/settings.ts";
import type { Usual } from "../store/usual.ts";

/** The server answered, and refused. */
export class Refused extends Error {
  readonly code: string;
  readonly status: number;

  constructor(status: number, code: string, message: string) {
    super(message);
    this.status = status;
    this.code = code;
  }
}

export interface Enrolled {
  readonly token: string;
  readonly device: string;
  readonly organisation: { readonly id: string; readonly name: string };
  readonly person: Person;
}

/** What a day brings; a part that this phone has already is left out. */
export interface Day {
  readonly server_time: string;
  readonly jobs: readonly (DayJob & { readonly files: Readonly<Record<string, string>> })[];
  readonly serials?: readonly { serial: string; job: string; vehicle: string | null }[];
  readonly usual?: readonly Usual[];
  readonly corners?: string | null;
  readonly marks: Readonly<Record<string, string>>;
}

export interface Result {
  readonly id: string | null;
  readonly state: "kept" | "known" | "refused" | "quarantined";
  readonly code: string | null;
  readonly error: string | null;
}

export interface Pulled {
  readonly entries: readonly { readonly cursor: number; readonly text: string }[];
  readonly cursor: number;
  readonly more: boolean;
}

const PATIENCE_MS = 30_000;
const PIECE_BYTES = 1_048_576;

async function asked(path: string, options: RequestInit, token?: string): Promise<Response> {
  const headers = new Headers(options.headers);
  headers.set("Accept-Language", document.documentElement.lang || "en"); // in which the server says why it refuses
  if (token) headers.set("Authorization", `Bearer ${token}`);
  return fetch(`api/${path}`, { ...options, headers, cache: "no-store", signal: AbortSignal.timeout(PATIENCE_MS) });
}

async function answer<T>(path: string, options: RequestInit, token?: string): Promise<T> {
  return said(await asked(path, options, token));
}

async function said<T>(response: Response): Promise<T> {
  const told = (await response.json().catch(() => null)) as { code?: string; error?: string } | null;
  if (!response.ok || told === null) throw new Refused(response.status, told?.code ?? "", told?.error ?? `${response.status}`);
  return told as T;
}

const posted = (body: unknown): RequestInit => ({ method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body) });

export const enrol = (code: string, device: string, label: string): Promise<Enrolled> => answer("enrol", posted({ code, device, label }));

/** The day as far as it is new to whoever has the day of these marks; `day` is null where nothing is. */
export async function day(token: string, known: DayMarks | null): Promise<{ day: Day | null; whole: string; time: string }> {
  const asking: RequestInit = known ? { headers: { "If-None-Match": known.whole } } : {};
  const response = await asked(`day?${new URLSearchParams(known?.parts)}`, asking, token);
  const whole = response.headers.get("ETag") ?? "";
  if (response.status === 304) return { day: null, whole, time: response.headers.get("Date") ?? "" };
  const found = await said<Day>(response);
  return { day: found, whole, time: found.server_time };
}

export const push = (entries: readonly string[], token: string): Promise<{ results: Result[] }> => answer("entries", posted({ entries }), token);

export const giveKey = (key: string, proof: string, token: string): Promise<{ fingerprint: string }> => answer("key", posted({ key, proof }), token);

/** The record of a job as the server makes it now, a PDF. */
export async function fetchRecord(job: string, token: string): Promise<ArrayBuffer> {
  const response = await asked(`jobs/${encodeURIComponent(job)}/record.pdf`, {}, token);
  const refusal = response.ok ? null : ((await response.json().catch(() => null)) as { code?: string; error?: string } | null);
  if (!response.ok) throw new Refused(response.status, refusal?.code ?? "", refusal?.error ?? `${response.status}`);
  return response.arrayBuffer();
}

export function pull(job: string, after: number, token: string): Promise<Pulled> {
  return answer(`entries?after=${after}&limit=500&job=${encodeURIComponent(job)}`, {}, token);
}

/** The bytes of a blob that the server has; null where it has none. */
export async function fetchBlob(sha256: string, token: string): Promise<{ bytes: ArrayBuffer; type: string } | null> {
  const response = await asked(`blobs/${sha256}`, {}, token);
  if (response.status === 404) return null;
  if (!response.ok) throw new Refused(response.status, "", `${response.status}`);
  return { bytes: await response.arrayBuffer(), type: response.headers.get("Content-Type") ?? "" };
}

/** Sends a file in pieces, from where the server stands. */
export async function sendBlob(sha256: string, bytes: ArrayBuffer, token: string): Promise<void> {
  const stands = await asked(`blobs/${sha256}`, { method: "HEAD" }, token);
  if (stands.ok) return;
  let offset = Number(stands.headers.get("Upload-Offset") ?? 0);
  while (offset < bytes.byteLength) {
    const end = Math.min(offset + PIECE_BYTES, bytes.byteLength);
    const headers = { "Content-Range": `bytes ${offset}-${end - 1}/${bytes.byteLength}` };
    const whole = offset === 0 && end === bytes.byteLength;
    const options: RequestInit = { method: "PUT", body: bytes.slice(offset, end), ...(whole ? {} : { headers }) };
    await answer(`blobs/${sha256}`, options, token);
    offset = end;
  }
}

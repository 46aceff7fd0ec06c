// What the desk says to the server; docs/api.md is the agreement.
import type { Finding, Verdict } from "../page/judgement.ts";

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

export interface Session {
  readonly login_needed: boolean;
  readonly person: { readonly id: string; readonly name: string; readonly language?: string } | null;
  readonly csrf: string | null;
}

export interface Person {
  readonly id: string;
  readonly name: string;
  readonly language: string;
  readonly units: string;
}

export interface Vehicle {
  readonly plate: string | null;
  readonly fleet_number: string | null;
  readonly vin: string | null;
  readonly type: string | null;
}

export interface Row {
  readonly id: string;
  readonly name: string | null;
  readonly state: string;
  readonly verdict: Verdict | null;
  readonly fails: number;
  readonly thin: number;
  readonly open: number;
  readonly next: string | null;
  readonly vehicle: Vehicle;
  readonly unit: { readonly sheet: string | null; readonly serial: string | null };
  readonly people: readonly { readonly id: string; readonly name: string }[];
  readonly entries: number;
  readonly updated_at: string | null;
}

export interface JobList {
  readonly jobs: readonly Row[];
  readonly more: boolean;
  readonly after: string | null;
  readonly counts: Readonly<Record<string, number>>;
}

export interface Answer {
  readonly verdict: Verdict;
  readonly next: string | null;
  readonly findings: readonly Finding[];
}

export interface Drawing {
  readonly svg: string;
  readonly caption: string;
  readonly alt: string;
}

export interface Written {
  readonly cursor: number;
  readonly received_at: string;
  readonly kind: string;
  readonly device: string;
  readonly at: string | null;
  readonly person: string | null;
  readonly body: unknown;
}

export interface Photo {
  readonly file: string | null;
  readonly sha256: string;
  readonly shows: string | null;
  readonly kept: boolean;
}

/** Something that can have one value, and of which two were said. */
export interface OpenSlot {
  readonly name: string;
  readonly values: readonly string[];
}

/** Two statements in place of one entry. */
export interface Dispute {
  readonly about: string;
  readonly standing: readonly { readonly id: string; readonly kind: string; readonly device: string; readonly at: string | null; readonly body: unknown }[];
}

export type Decision = { readonly slot: string; readonly value: string } | { readonly about: string; readonly stands: string };

export interface Whole {
  readonly job: Row;
  readonly answer: Answer | null;
  readonly fault: string | null; // why the job cannot be judged yet
  readonly entries: readonly Written[]; // the newest, newest first
  readonly photos: readonly Photo[];
  readonly drawings: Readonly<Record<string, Drawing>>;
  readonly bars: Readonly<Record<string, string>>; // by the finding's place in the list
  readonly open: readonly string[];
  readonly to_decide: { readonly slots: readonly OpenSlot[]; readonly disputes: readonly Dispute[] };
  readonly faults: readonly string[];
}

export interface Phone {
  readonly id: string;
  readonly device: string;
  readonly label: string;
  readonly person: { readonly id: string; readonly name: string };
  readonly enrolled_at: string;
  readonly seen_at: string | null;
  readonly withdrawn_at: string | null;
  readonly fingerprints: readonly string[]; // of the keys that it signs with, the newest last
}

export interface Enrolment {
  readonly code: string;
  readonly url: string;
  readonly qr_svg: string;
  readonly expires_at: string;
}

export interface Aside {
  readonly number: number;
  readonly code: string;
  readonly error: string;
  readonly job: string | null;
  readonly phone: string | null;
  readonly received_at: string;
  readonly text: string;
}

export interface Feed {
  readonly id: string;
  readonly label: string;
  readonly columns: Readonly<Record<string, string>>;
  readonly withdrawn_at: string | null;
}

const PATIENCE_MS = 60_000;
let csrf: string | null = null;

async function answer<T>(path: string, options: RequestInit = {}): Promise<T> {
  const headers = new Headers(options.headers);
  headers.set("Accept-Language", document.documentElement.lang || "en"); // in which the server says why it refuses
  if (options.method && csrf !== null) headers.set("X-CSRF-Token", csrf);
  const response = await fetch(`api/${path}`, { ...options, headers, cache: "no-store", signal: AbortSignal.timeout(PATIENCE_MS) });
  const said = (await response.json().catch(() => null)) as { code?: string; error?: string } | null;
  if (!response.ok || said === null) throw new Refused(response.status, said?.code ?? "", said?.error ?? `HTTP ${response.status}`);
  return said as T;
}

const post = <T>(path: string, body: unknown = {}): Promise<T> =>
  answer(path, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body) });

const part = encodeURIComponent;

/** Who sits at the desk; the session's token is kept for the calls that change something. */
export async function session(): Promise<Session> {
  const said = await answer<Session>("session");
  csrf = said.csrf;
  return said;
}

export async function login(name: string, password: string): Promise<void> {
  csrf = (await post<{ csrf: string }>("login", { login: name, password })).csrf;
}

export const logout = (): Promise<unknown> => post("logout");

/** One page of the list, what fails or is thin first. */
export function jobs({ state, q, after, language }: { state: string; q: string; after: string | null; language: string }): Promise<JobList> {
  const asked = new URLSearchParams({ limit: "50", language });
  if (state) asked.set("state", state);
  if (q) asked.set("q", q);
  if (after !== null) asked.set("after", after);
  return answer(`desk/jobs?${asked}`);
}

export const job = (id: string, language: string): Promise<Whole> => answer(`desk/jobs/${part(id)}?language=${language}`);
export const recordAddress = (id: string): string => `api/desk/jobs/${part(id)}/record.pdf`;
export const photoAddress = (sha256: string, small: boolean): string => `api/desk/blobs/${sha256}${small ? "?size=thumb" : ""}`;
export const exportAddress = (form: string): string => `api/desk/export.${form}`;
export const makeJob = (sheet: string, unit: string, people: readonly string[]): Promise<{ id: string }> => post("desk/jobs", { "job.toml": sheet, "unit.toml": unit, people });
export const assign = (id: string, people: readonly string[]): Promise<unknown> => post(`desk/jobs/${part(id)}/assign`, { people });

export const settle = (id: string, decision: Decision): Promise<unknown> => post(`desk/jobs/${part(id)}/decide`, decision);
export const erase = (id: string, sha256: string, why: string): Promise<unknown> => post(`desk/jobs/${part(id)}/erase`, { blobs: [sha256], why });

export const release = (serial: string): Promise<unknown> => post("desk/units/release", { serial });

export const people = async (): Promise<readonly Person[]> => (await answer<{ people: readonly Person[] }>("desk/people")).people;
export const addPerson = (person: Omit<Person, "id">): Promise<unknown> => post("desk/people", person);
export const phones = async (): Promise<readonly Phone[]> => (await answer<{ phones: readonly Phone[] }>("desk/phones")).phones;
export const enrolPhone = (person: string): Promise<Enrolment> => post("desk/phones", { person });
export const withdrawPhone = (id: string): Promise<unknown> => post(`desk/phones/${part(id)}/withdraw`);

export const aside = async (): Promise<readonly Aside[]> => (await answer<{ items: readonly Aside[] }>("desk/quarantine")).items;
export const decide = (number: number, decision: "take" | "leave"): Promise<unknown> => post(`desk/quarantine/${number}`, { decision });

export const feeds = async (): Promise<readonly Feed[]> => (await answer<{ feeds: readonly Feed[] }>("desk/feeds")).feeds;
export const addFeed = (label: string, columns: Readonly<Record<string, string>>): Promise<{ token: string }> => post("desk/feeds", { label, columns });
export const withdrawFeed = (id: string): Promise<unknown> => post(`desk/feeds/${part(id)}/withdraw`);

export interface Sent {
  readonly file: File;
  readonly columns: string;
  readonly doubtsAreRight?: boolean;
}

export interface JobPlan {
  readonly "unit.toml": string;
  readonly system_V: 12 | 24;
  readonly people: readonly string[];
  readonly day: string | null;
}

/** A roster brought in with a job for each vehicle that has none; says how many were made. */
export async function rosterWithJobs({ file, columns, doubtsAreRight = false }: Sent, plan: JobPlan): Promise<{ jobs: number }> {
  const whole = await new Promise<string>((done, failed) => {
    const reader = new FileReader();
    reader.onload = () => done(String(reader.result));
    reader.onerror = () => failed(reader.error ?? new Error(file.name));
    reader.readAsDataURL(file);
  });
  const content = whole.slice(whole.indexOf(",") + 1);
  return post("desk/rosters/import-with-jobs", { file: file.name, columns: columns || null, doubts_are_right: doubtsAreRight, content, ...plan });
}

/** A roster as it would come in, or brought in; the file goes as it is. */
export function roster<T>(what: "preview" | "import", { file, columns, doubtsAreRight = false }: Sent): Promise<T> {
  const asked = new URLSearchParams({ file: file.name });
  if (columns) asked.set("columns", columns);
  if (doubtsAreRight) asked.set("doubts_are_right", "true");
  return answer(`desk/rosters/${what}?${asked}`, { method: "POST", headers: { "Content-Type": "application/octet-stream" }, body: file });
}

// One job as a page sees it: its entries, what stands of them, and what the engine says.
import { useCallback, useEffect, useMemo, useState } from "preact/hooks";
import { canonical, type Body } from "../core/canonical.ts";
import type { Draft, Written } from "../core/entry.ts";
import { newId } from "../core/ids.ts";
import { standing, type Said } from "../core/standing.ts";
import { textBlob, textOf, type NewBlob } from "../store/blobs.ts";
import { append, entriesOf, type Kept, type Writer } from "../store/journal.ts";
import { jobOf, updateJob, type Job } from "../store/jobs.ts";
import { setting } from "../store/settings.ts";
import { onSync, somethingNew } from "../sync/sync.ts";
import { engine } from "./engine.ts";
import type { Judgement, NotJudged } from "./judgement.ts";
import { spoken } from "./spoken.ts";
import { signaturesOf } from "./signatures.ts";

declare const VERSION: string;

export interface NewEntry {
  readonly kind: string;
  readonly body: Body;
  readonly blobs?: readonly string[];
}

export interface OpenJob {
  readonly job: Job | null;
  readonly entries: readonly Kept[] | null; // null while they are being read
  readonly said: readonly Said[];
  readonly judgement: Judgement | NotJudged | null;
  readonly behind: boolean; // the judgement does not know the newest entries yet
  readonly write: (entries: readonly NewEntry[], blobs?: readonly NewBlob[]) => Promise<void>;
  readonly take: (work: () => Promise<readonly Kept[]>) => Promise<void>; // entries that `work` has kept already
}

const READ = ["job", "unit_sheet", "meter_sheet", "walkround", "mount", "policy", "recording", "reports"]; // files whose text the engine reads

/** The job of that id, kept up to date; `write` adds to its journal and resolves when that is on the disk. */
export function useJob(id: string): OpenJob {
  const [job, setJob] = useState<Job | null>(null);
  const [entries, setEntries] = useState<readonly Kept[] | null>(null);
  const reload = useCallback(async () => {
    setJob(await jobOf(id));
    setEntries(await entriesOf(id));
  }, [id]);
  useEffect(() => {
    void reload();
    return onSync((_, changed) => changed && void reload());
  }, [reload]);
  const said = useMemo(() => standing((entries ?? []).map((entry) => entry.raw)), [entries]);
  const take = useCallback(async (work: () => Promise<readonly Kept[]>) => {
    const rows = await work();
    setEntries((before) => [...(before ?? []), ...rows]);
    await somethingNew(); // so that nothing is said to be kept beside a count that lacks it
  }, []);
  const write = useCallback((fresh: readonly NewEntry[], blobs: readonly NewBlob[] = []) => take(() => written(id, fresh, blobs)), [id]);
  const { judgement, behind } = useJudgement(id, entries, said);
  return { job, entries, said, judgement, behind, write, take };
}

async function written(job: string, fresh: readonly NewEntry[], blobs: readonly NewBlob[]): Promise<Kept[]> {
  const { drafts, writer, ...more } = await drafted(job, fresh);
  return append(job, drafts, writer, [...more.blobs, ...blobs]);
}

/** What is to be kept of this phone's person and clock with `fresh` entries of a job. */
export async function drafted(job: string, fresh: readonly NewEntry[]): Promise<{ drafts: Draft[]; writer: Writer; blobs: readonly NewBlob[]; at: string; by: string }> {
  const enrolment = await setting("enrolment");
  if (!enrolment) throw new Error("this phone is not enrolled");
  const { device, person } = enrolment;
  const at = `${new Date().toISOString().slice(0, 19)}Z`;
  const { by, entries, blobs } = await whoWrites(job, device, person.name);
  const drafts = [...entries, ...fresh].map((one) => ({ id: newId(), ...one, at, by: one.kind === "person" ? null : by }));
  return { drafts, writer: { device, engine: VERSION }, blobs, at, by };
}

interface Who {
  readonly by: string;
  readonly entries: readonly (NewEntry & { readonly id: string })[];
  readonly blobs: readonly NewBlob[];
}

/** The entry that stands for the person in this job; before this phone's first entry it has to be written. */
async function whoWrites(job: string, device: string, name: string): Promise<Who> {
  const blob = await textBlob(canonical({ job, name }));
  const known = (await entriesOf(job)).find((one) => one.kind === "person" && one.device === device && one.raw.includes(blob.sha256));
  if (known) return { by: known.id, entries: [], blobs: [] };
  const id = newId();
  return { by: id, entries: [{ id, kind: "person", body: { sha256: blob.sha256 }, blobs: [blob.sha256] }], blobs: [blob] };
}

/** The engine's word on the newest entries; while it works, its word on those before. */
function useJudgement(id: string, entries: readonly Kept[] | null, said: readonly Said[]): Pick<OpenJob, "judgement" | "behind"> {
  const [answer, setAnswer] = useState<{ judgement: Judgement | NotJudged; of: number } | null>(null);
  useEffect(() => {
    if (!entries || entries.length === 0) return undefined;
    let current = true;
    void (async () => {
      const judgement = await judged(entries, said);
      if (!current || judgement === null) return;
      setAnswer({ judgement, of: entries.length });
      if (judgement.ok) await remember(id, judgement);
    })();
    return () => {
      current = false;
    };
  }, [entries]);
  return { judgement: answer?.judgement ?? null, behind: answer?.of !== entries?.length };
}

/** What the engine is asked of a job: its entries, the texts of its files, which signatures hold, in which language it answers; and `more`. */
export async function question(entries: readonly Written[], said: readonly Said[], more: Readonly<Record<string, unknown>> = {}): Promise<string> {
  const digests = said.filter((one) => READ.includes(one.kind)).map((one) => String(one.body["sha256"] ?? ""));
  const texts = await Promise.all(digests.map(async (digest) => [digest, await textOf(digest)] as const));
  const blobs = Object.fromEntries(texts.filter(([, text]) => text !== null));
  const signatures = await signaturesOf(entries);
  return JSON.stringify({ entries: entries.map((entry) => entry.raw), blobs, "corners.txt": await setting("corners"), signatures, ...spoken(), ...more });
}

async function judged(entries: readonly Kept[], said: readonly Said[]): Promise<Judgement | NotJudged | null> {
  const text = await engine().ask("judge_journal", await question(entries, said));
  return text === null ? null : (JSON.parse(text) as Judgement | NotJudged);
}

async function remember(id: string, { verdict, next_stage, findings }: Judgement): Promise<void> {
  const count = (wanted: string): number => findings.filter((finding) => finding.verdict === wanted).length;
  const cursor = (await jobOf(id))?.seen ?? 0;
  await updateJob(id, { said: { verdict, stage: next_stage, open: count("open"), fails: count("fails"), cursor } });
}

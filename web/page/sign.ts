// Signs a job off: what is signed comes from the engine, made over all entries; it is kept with what belongs to it, or nothing is.
import { newId } from "../core/ids.ts";
import { grouped, publicKeyOf, signatureHolds, signatureOf, withSignature } from "../core/sign-off.ts";
import { standing } from "../core/standing.ts";
import { sha256 } from "../core/digest.ts";
import type { Written } from "../core/entry.ts";
import { textBlob, type NewBlob } from "../store/blobs.ts";
import { appendSealed, type Kept, type Seal } from "../store/journal.ts";
import { engine } from "./engine.ts";
import { drafted, question, type NewEntry } from "./use-job.ts";

declare const ENGINE_SHA256: string;
declare const LIMITS_SHA256: string;

const KIND = "sign_off";

/** The job cannot be signed off as it stands: says why, in the engine's words. */
export class NotSigned extends Error {}

type Told =
  | { readonly ok: true; readonly entry: string; readonly blobs: Readonly<Record<string, string>> }
  | { readonly ok: false; readonly error: string };

/** Keeps `fresh` entries and behind them the sign-off with this phone's keys. Throws NotSigned; then nothing is kept. */
export async function signedOff(job: string, pair: CryptoKeyPair, fresh: readonly NewEntry[], blobs: readonly NewBlob[]): Promise<Kept[]> {
  const { drafts, writer, at, by, ...more } = await drafted(job, fresh);
  const key = await publicKeyOf(pair);
  const seal = async (rows: readonly Written[]): Promise<Seal> => {
    const sign = { id: newId(), at, by, key, ...writer, engine_sha256: ENGINE_SHA256, limits_sha256: LIMITS_SHA256 };
    const told = await askedFor(rows, sign);
    const signature = await signatureOf(pair, told.entry);
    if ((await signatureHolds({ key, signature, text: told.entry })) !== true) throw new NotSigned("this browser's signature does not hold");
    const made = await Promise.all(Object.values(told.blobs).map(textBlob));
    return { id: sign.id, kind: KIND, raw: withSignature(told.entry, signature), blobs: made };
  };
  return appendSealed(job, drafts, writer, { blobs: [...more.blobs, ...blobs], seal });
}

async function askedFor(rows: readonly Written[], sign: object): Promise<Told & { ok: true }> {
  const said = standing(rows.map((row) => row.raw));
  const text = await engine().ask(KIND, await question(rows, said, { sign }));
  if (text === null) throw new NotSigned("the judge gave no answer");
  const told = JSON.parse(text) as Told;
  if (!told.ok) throw new NotSigned(told.error);
  return told;
}

/** The fingerprint of a public key (hex), in groups. */
export async function fingerprintOf(key: string): Promise<string> {
  const bytes = Uint8Array.from(key.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));
  return grouped(await sha256(bytes));
}

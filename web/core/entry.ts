// An entry of the journal in its device's chain; docs/journal.md says what each field is.
import { canonical, type Body } from "./canonical.ts";
import { sha256 } from "./digest.ts";

export const VERSION = 1;
export const MOST_BYTES = 64_000;

/** What an entry is to say, before it has its place in a chain. */
export interface Draft {
  readonly id: string;
  readonly kind: string;
  readonly body: Body;
  readonly blobs?: readonly string[];
  readonly at: string | null;
  readonly by: string | null;
}

/** The end of one device's chain in one job: the last number and its digest. */
export interface Tip {
  readonly seq: number;
  readonly digest: string | null;
}

/** Whose chain it is, and which version writes. */
export interface Chain {
  readonly job: string;
  readonly device: string;
  readonly engine: string;
}

/** An entry as it is kept and sent: its exact text. */
export interface Written {
  readonly id: string;
  readonly kind: string;
  readonly seq: number;
  readonly raw: string;
}

export const START: Tip = { seq: 0, digest: null };

/** The entries that say `drafts`, following on `tip`, and the tip after them. Throws where one is too large. */
export async function continued(drafts: readonly Draft[], chain: Chain, tip: Tip): Promise<{ written: Written[]; tip: Tip }> {
  const written: Written[] = [];
  let last = tip;
  for (const draft of drafts) {
    const seq = last.seq + 1;
    const raw = text(draft, chain, { seq, digest: last.digest });
    written.push({ id: draft.id, kind: draft.kind, seq, raw });
    last = { seq, digest: await sha256(raw) };
  }
  return { written, tip: last };
}

function text(draft: Draft, chain: Chain, place: Tip): string {
  const raw = canonical({
    v: VERSION,
    id: draft.id,
    job: chain.job,
    kind: draft.kind,
    at: draft.at,
    device: chain.device,
    seq: place.seq,
    prev: place.digest,
    by: draft.by,
    engine: chain.engine,
    body: draft.body,
    blobs: draft.blobs ?? [],
  });
  const size = new TextEncoder().encode(raw).length;
  if (size > MOST_BYTES) throw new Error(`an entry of ${size} bytes is too large: at most ${MOST_BYTES}`);
  return raw;
}

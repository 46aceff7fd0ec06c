// What a file that was opened comes to: entries of the same kinds as a job folder's import makes.
import type { Body } from "./canonical.ts";
import { text, type Said } from "./standing.ts";

export interface Opened {
  readonly ok: true;
  readonly kind: OpenedKind;
  readonly file: string; // its name in the journal
  readonly counted: string;
  readonly more: Body;
  readonly rows: readonly { readonly kind: string; readonly body: Body }[];
}

export interface Refused {
  readonly ok: false;
  readonly error: string;
}

export const OPENED_KINDS = ["recording", "reception", "bus_log", "reports", "lights_file"] as const;
export type OpenedKind = (typeof OPENED_KINDS)[number];

export interface Draft {
  readonly kind: string;
  readonly body: Body;
  readonly blobs?: readonly string[];
}

/** The entries of a file: one of the same name stands in place of the one before, and so do its rows. */
export function entriesOfFile(found: Opened, bytes: { readonly sha256: string; readonly bytes: number }, said: readonly Said[]): Draft[] {
  const body = { file: found.file, ...bytes, ...found.more };
  const before = said.filter((one) => one.kind === found.kind && text(one.body, "file") === found.file);
  const same = before.length === 1 && text((before[0] as Said).body, "sha256") === bytes.sha256;
  const file = before.length === 0 ? { kind: found.kind, body } : { kind: "correction", body: { replaces: before.map(({ id }) => id), kind: found.kind, body } };
  return [...(same ? [] : [{ ...file, blobs: [bytes.sha256] }]), ...rowsOf(found, said)];
}

const ROWS: ReadonlySet<string> = new Set(["light_seen", "skipped_line"]);

/** What changes in the rows of a file: new ones, those that say something else, and those that it has no longer. */
function rowsOf({ rows, file }: Opened, said: readonly Said[]): Draft[] {
  const left = said.filter((one) => ROWS.has(one.kind) && text(one.body, "file") === file);
  const taken = (fits: (one: Said) => boolean): Said | undefined => {
    const at = left.findIndex(fits);
    return at < 0 ? undefined : left.splice(at, 1)[0];
  };
  const fresh = rows.filter((row) => !taken((one) => one.kind === row.kind && saysSame(one.body, row.body)));
  const drafts = fresh.map((row): Draft => {
    const changed = taken((one) => one.kind === row.kind && text(one.body, "light") === text(row.body, "light"));
    return changed ? { kind: "correction", body: { replaces: changed.id, kind: row.kind, body: row.body } } : { kind: row.kind, body: row.body };
  });
  const gone = left.map(({ id }) => id);
  return gone.length > 0 ? [...drafts, { kind: "withdrawn", body: { entry: gone, why: null } }] : drafts;
}

/** The line on which a row stands may differ without the row having changed. */
function saysSame(one: Body, other: Body): boolean {
  const plain = ({ line: _, ...rest }: Body): string => JSON.stringify(Object.entries(rest).sort(([a], [b]) => (a < b ? -1 : 1)));
  return plain(one) === plain(other);
}

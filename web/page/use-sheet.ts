// A sheet of a job (walkround, job sheet, places of the unit) as a form sees it: each change is an entry and a file of its own.
import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import { standing, text, type Said } from "../core/standing.ts";
import { valueIn, withValue, type Table, type Value } from "../core/sheet.ts";
import { textBlob, textOf } from "../store/blobs.ts";
import { entriesOf } from "../store/journal.ts";
import { onSync } from "../sync/sync.ts";
import type { NewEntry, OpenJob } from "./use-job.ts";

export type SheetKind = "walkround" | "job" | "mount";

const FILES: Readonly<Record<SheetKind, string>> = { walkround: "walkround.toml", job: "job.toml", mount: "mount.toml" };

export interface Change {
  readonly table: Table;
  readonly key: string;
  readonly value: Value | null;
  readonly only?: "unsaid"; // where the sheet says something by the time that it is written, that stays
}

/** Takes changes of a sheet, and entries that go with them. */
export type Answer = (changes: readonly Change[], more?: readonly NewEntry[]) => void;

export interface Sheet {
  readonly text: string | null; // null while it is being read
  readonly change: (changes: readonly Change[], more?: readonly NewEntry[]) => Promise<void>;
  readonly rewrite: (made: (before: string) => string, more?: readonly NewEntry[]) => Promise<void>;
}

/** The sheet as it stands; `change` and `rewrite` resolve when the new one is on the disk. */
export function useSheet(id: string, kind: SheetKind, open: OpenJob): Sheet {
  const [shown, setShown] = useState<string | null>(null);
  const queue = useRef(Promise.resolve()); // one change after the other, each on what the one before has left
  useEffect(() => {
    if (open.entries === null) return undefined;
    let isMissing = false;
    const read = async (): Promise<void> => {
      const found = await textOfSheet(open.said, kind);
      isMissing = found === "" && open.said.some((one) => one.kind === kind);
      setShown(found);
    };
    void read();
    return onSync(() => isMissing && void read()); // the text of another phone's sheet may arrive after its entry
  }, [open.entries]);
  const rewrite = useCallback(
    (made: (before: string) => string, more: readonly NewEntry[] = []) => {
      const work = async (): Promise<void> => {
        const said = standing((await entriesOf(id)).map((entry) => entry.raw));
        const before = await textOfSheet(said, kind);
        const after = made(before);
        if (after === before && more.length === 0) return;
        const blob = await textBlob(after);
        await open.write([sheetEntry(said, kind, { sha256: blob.sha256, bytes: blob.bytes.byteLength }), ...more], [blob]);
        setShown(after);
      };
      const done = queue.current.then(work);
      queue.current = done.catch(() => undefined);
      return done;
    },
    [id, kind, open.write],
  );
  const change = useCallback((changes: readonly Change[], more: readonly NewEntry[] = []) => rewrite((before) => changes.reduce(changed, before), more), [rewrite]);
  return { text: shown, change, rewrite };
}

function changed(sheet: string, { table, key, value, only }: Change): string {
  return only === "unsaid" && valueIn(sheet, table, key) !== null ? sheet : withValue(sheet, table, key, value);
}

async function textOfSheet(said: readonly Said[], kind: SheetKind): Promise<string> {
  const last = said.findLast((one) => one.kind === kind);
  return last ? ((await textOf(text(last.body, "sha256"))) ?? "") : "";
}

/** The entry of a sheet, in place of the one that is shown; what a job's entry claims of VIN and serial stays.
 *
 * A sheet that another phone has written beside it is left standing: which of the two holds is for the lead to decide.
 */
function sheetEntry(said: readonly Said[], kind: SheetKind, file: { sha256: string; bytes: number }): NewEntry {
  const before = said.findLast((one) => one.kind === kind);
  const claims = kind === "job" ? { vin: before?.body["vin"] ?? null, serial: before?.body["serial"] ?? null } : {};
  const body = { file: FILES[kind], ...file, ...claims };
  const blobs = [file.sha256];
  if (!before) return { kind, body, blobs };
  return { kind: "correction", body: { replaces: before.id, kind, body }, blobs };
}

// What a form knows around its own sheet: the job, its other sheets, the last vehicle of the type, the person.
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import { text } from "../core/standing.ts";
import { textOf } from "../store/blobs.ts";
import { earlierFor, yardOf, type EarlierOnes } from "../store/earlier.ts";
import { setting } from "../store/settings.ts";
import type { Around } from "./forms/offer.ts";
import type { OpenJob } from "./use-job.ts";
import { useUsual } from "./use-usual.ts";

const NONE: EarlierOnes = { yard: null, unit: null };
const digestOf = (open: OpenJob, kind: string): string | null => text(open.said.findLast((one) => one.kind === kind)?.body ?? {}, "sha256") || null;

type Others = Pick<Around, "jobSheet" | "unitSheet" | "person" | "earlier">;

/** Null until all of it is read. */
export function useAround(open: OpenJob, sheet: string | null): Around | null {
  const usual = useUsual(open);
  const [others, setOthers] = useState<Others | null>(null);
  const earlier = useRef<EarlierOnes | null>(null); // looked for once: other jobs do not change while this one is open
  const { job } = open;
  useEffect(() => {
    if (open.entries === null) return;
    const read = async (kind: string): Promise<string> => {
      const last = open.said.findLast((one) => one.kind === kind);
      return last ? ((await textOf(text(last.body, "sha256"))) ?? "") : "";
    };
    void (async () => {
      const [jobSheet, unitSheet, enrolment] = [await read("job"), await read("unit_sheet"), await setting("enrolment")];
      earlier.current ??= job ? await earlierFor(job, { yard: yardOf(jobSheet), unitSheet: digestOf(open, "unit_sheet") }) : NONE;
      setOthers({ jobSheet, unitSheet, person: enrolment?.person.name ?? null, earlier: earlier.current });
    })();
  }, [open.entries, job?.id]);
  return useMemo(() => (sheet !== null && usual !== undefined && others !== null ? { job, sheet, usual, ...others } : null), [job, sheet, usual, others]);
}

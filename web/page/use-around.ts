// What a form knows around its own sheet: the job, its other sheets, the last vehicle of the type, the person.
import { useEffect, useMemo, useState } from "preact/hooks";
import { text } from "../core/standing.ts";
import { textOf } from "../store/blobs.ts";
import { setting } from "../store/settings.ts";
import type { Around } from "./forms/offer.ts";
import type { OpenJob } from "./use-job.ts";
import { useUsual } from "./use-usual.ts";

type Others = Pick<Around, "jobSheet" | "unitSheet" | "person">;

/** Null until all of it is read. */
export function useAround(open: OpenJob, sheet: string | null): Around | null {
  const usual = useUsual(open);
  const [others, setOthers] = useState<Others | null>(null);
  useEffect(() => {
    if (open.entries === null) return;
    const read = async (kind: string): Promise<string> => {
      const last = open.said.findLast((one) => one.kind === kind);
      return last ? ((await textOf(text(last.body, "sha256"))) ?? "") : "";
    };
    void (async () => {
      const [jobSheet, unitSheet, enrolment] = [await read("job"), await read("unit_sheet"), await setting("enrolment")];
      setOthers({ jobSheet, unitSheet, person: enrolment?.person.name ?? null });
    })();
  }, [open.entries]);
  const { job } = open;
  return useMemo(() => (sheet !== null && usual !== undefined && others !== null ? { job, sheet, usual, ...others } : null), [job, sheet, usual, others]);
}

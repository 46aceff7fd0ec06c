// The last vehicle of the same type, as a page sees it.
import { useEffect, useState } from "preact/hooks";
import { usualFor, type Usual } from "../store/usual.ts";
import type { OpenJob } from "./use-job.ts";

/** Undefined until it is known; null where there is none. */
export function useUsual({ job, entries }: OpenJob): Usual | null | undefined {
  const [usual, setUsual] = useState<Usual | null | undefined>(undefined);
  useEffect(() => {
    if (job !== null) void usualFor(job).then(setUsual);
    else if (entries !== null) setUsual(null); // a job that the day's list does not know
  }, [job?.id, job?.vehicle.type, entries === null]);
  return usual;
}

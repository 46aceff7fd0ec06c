// The last vehicle of the same type, as a page sees it.
import { useEffect, useState } from "preact/hooks";
import { usualFor, type Usual } from "../store/usual.ts";
import type { OpenJob } from "./use-job.ts";

/** Null until it is known, and where there is none. */
export function useUsual({ job }: OpenJob): Usual | null {
  const [usual, setUsual] = useState<Usual | null>(null);
  useEffect(() => {
    if (job !== null) void usualFor(job).then(setUsual);
  }, [job?.id, job?.vehicle.type]);
  return usual;
}

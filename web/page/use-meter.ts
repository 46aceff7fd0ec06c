// The meter in the hand: chosen once by each person, said in each job where nobody has said so yet.
import { useEffect, useState } from "preact/hooks";
import type { ProbeTable } from "../core/probe-table.ts";
import { keepSetting, setting } from "../store/settings.ts";
import type { MeterName } from "./meters.ts";
import { claimEntry } from "./probe-entries.ts";
import type { NewEntry } from "./use-job.ts";

const SLOT = "meter";

export interface MeterInHand {
  readonly unknown: boolean;
  readonly choose: (meter: MeterName) => void;
  readonly claim: () => NewEntry[]; // what has to be written before the first figure of this meter
}

export function useMeter(table: ProbeTable): MeterInHand {
  const [meter, setMeter] = useState<string | null | "reading">("reading");
  useEffect(() => void setting("meter").then(setMeter), []);
  const known = meter !== null && meter !== "reading";
  return {
    unknown: meter === null,
    choose: (chosen) => {
      setMeter(chosen);
      void keepSetting("meter", chosen);
    },
    claim: () => (known && !table.claims.has(SLOT) ? [claimEntry(SLOT, meter, undefined)] : []),
  };
}

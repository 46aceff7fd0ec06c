// The test lamp of whoever holds the phone: its current is chosen once, and where there is none the job knows it.
import { useEffect, useState } from "preact/hooks";
import type { ProbeTable } from "../core/probe-table.ts";
import { keepSetting, setting } from "../store/settings.ts";
import { claimEntry } from "./probe-entries.ts";
import type { NewEntry } from "./use-job.ts";

export const LAMPS = ["1", "1.5", "2"] as const; // currents of common test lamps at battery level [A]
export const NO_LAMP = "none";
const SLOT = "lamp";

export interface Lamp {
  readonly amperes: string; // empty where none is to be had, or nobody has said so yet
  readonly unknown: boolean;
  readonly choose: (lamp: string) => void;
  readonly without: NewEntry[]; // what the job has to know where there is none
}

export function useLamp(table: ProbeTable): Lamp {
  const [lamp, setLamp] = useState<string | null | "reading">("reading");
  useEffect(() => void setting("lamp").then(setLamp), []);
  const none = lamp === NO_LAMP && !table.claims.get(SLOT)?.values.includes(NO_LAMP);
  return {
    amperes: lamp === null || lamp === "reading" || lamp === NO_LAMP ? "" : lamp,
    unknown: lamp === null,
    choose: (chosen) => {
      setLamp(chosen);
      void keepSetting("lamp", chosen);
    },
    without: none ? [claimEntry(SLOT, NO_LAMP, table.claims.get(SLOT))] : [],
  };
}

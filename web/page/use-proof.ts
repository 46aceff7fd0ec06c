// The proof under way, as the engine tells it: what to do with the key, what the unit says now, what its lights mean.
import { useEffect, useId, useState } from "preact/hooks";
import type { Step } from "../core/key-plan.ts";
import { syncNow } from "../sync/sync.ts";
import { engine } from "./engine.ts";
import { question, type OpenJob } from "./use-job.ts";

const LOOK_MS = 10_000; // between two looks for reports while somebody stands and waits for them

/** What the unit says now; moments in seconds since 1970. src/backprobe/stages/prove/heard.py writes it. */
export interface Heard {
  readonly count: number;
  readonly others: number;
  readonly last_s: number | null;
  readonly received_s: number | null;
  readonly fix_s: number | null;
  readonly supply_V: number | null;
  readonly ignition: boolean | null;
  readonly ignition_s: number | null;
}

export interface Light {
  readonly light: string;
  readonly colour: string | null;
  readonly pattern: string | null;
  readonly means: string | null;
  readonly seen: string | null;
}

export interface UnderWay {
  readonly plan: readonly Step[];
  readonly heard: Heard | null;
  readonly lights: readonly Light[];
}

/** Null until the engine has spoken, and where it cannot read the job. */
export function useProof({ entries, said }: OpenJob): UnderWay | null {
  const asker = useId();
  const [told, setTold] = useState<UnderWay | null>(null);
  useEffect(() => {
    let current = true;
    if (!entries || entries.length === 0) return undefined;
    void (async () => {
      const text = await engine().ask("proof", await question(entries, said), asker);
      const answer = text === null ? null : (JSON.parse(text) as UnderWay & { readonly ok: boolean });
      if (answer?.ok && current) setTold(answer);
    })();
    return () => {
      current = false;
    };
  }, [entries]);
  return told;
}

/** Looks for reports more often than at other times, while the page is looked at. */
export function useLookingOut(): void {
  useEffect(() => {
    const timer = setInterval(() => document.visibilityState === "visible" && void syncNow(), LOOK_MS);
    return () => clearInterval(timer);
  }, []);
}

/** The time of day, anew every half second; at once when the page is looked at again. */
export function useNow(): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const look = (): void => setNow(Date.now());
    const timer = setInterval(look, 500);
    document.addEventListener("visibilitychange", look);
    return () => {
      clearInterval(timer);
      document.removeEventListener("visibilitychange", look);
    };
  }, []);
  return now;
}

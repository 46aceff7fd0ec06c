// The sky that each place of a mount sheet leaves, predicted by the engine on this phone.
import { useEffect, useState } from "preact/hooks";
import { valueIn, valuesIn } from "../core/sheet.ts";
import { useShared } from "./context.ts";
import { engine } from "./engine.ts";
import type { Verdict } from "./judgement.ts";
import { spoken } from "./spoken.ts";

export interface PlaceSky {
  readonly name: string;
  readonly fix_share: number;
  readonly satellites: { readonly least: number; readonly median: number };
  readonly worst_heading_deg: number;
  readonly verdict: Verdict;
  readonly because: string;
  readonly next: string | null;
  readonly figures: readonly string[];
}

export interface Sky {
  readonly ok: true;
  readonly best: string;
  readonly shown: string;
  readonly places: readonly PlaceSky[]; // the best first
  readonly svg: string;
  readonly alt: string;
}

interface NoSky {
  readonly ok: false;
  readonly error: string;
}

/** What the door is asked; null where there is no place, or nobody has said where the vehicle stands. */
export function skyQuestion(mount: string, jobSheet: string, spoken: object = {}): string | null {
  const [lat, lon] = ["lat", "lon"].map((key) => valueIn(jobSheet, { name: "place" }, key));
  if (typeof lat !== "number" || typeof lon !== "number" || valuesIn(mount, "place", "name").length === 0) return null;
  const day = valueIn(jobSheet, { name: "job" }, "date");
  return JSON.stringify({ "mount.toml": mount, lat, lon, date: typeof day === "string" ? day : null, shown: null, ...spoken });
}

/** The newest answer, and whether it is about what stands in the sheet now. */
export function useSky(mount: string, jobSheet: string): { readonly sky: Sky | NoSky | null; readonly behind: boolean } {
  const [answer, setAnswer] = useState<{ readonly sky: Sky | NoSky; readonly to: string } | null>(null);
  const { language } = useShared();
  const asked = skyQuestion(mount, jobSheet, { ...spoken(), language });
  useEffect(() => {
    let current = true;
    if (asked === null) return undefined;
    void engine()
      .ask("places", asked)
      .then((text) => {
        if (text !== null && current) setAnswer({ sky: JSON.parse(text) as Sky | NoSky, to: asked });
      });
    return () => {
      current = false;
    };
  }, [asked]);
  return { sky: asked === null ? null : (answer?.sky ?? null), behind: asked !== null && answer?.to !== asked };
}

// Which wire and which position the next figure is for: what the engine asks for, unless a hand has chosen otherwise.
import { useEffect, useState } from "preact/hooks";
import type { Capture, Key } from "../core/probe-table.ts";
import type { NextReading } from "./judgement.ts";

const STEADY_AFTER_MS = 350; // a figure meant for the wire before must not land on the one just moved to

export interface Selection {
  readonly wire: string | null;
  readonly key: Key | null;
  readonly capture: Capture;
  readonly load: string;
  readonly steady: boolean;
  readonly setWire: (wire: string) => void;
  readonly setKey: (key: Key) => void;
  readonly setCapture: (capture: Capture) => void;
  readonly setLoad: (load: string) => void;
  readonly follow: () => void;
}

interface Around {
  readonly names: readonly string[];
  readonly behind: boolean;
  readonly typing: boolean;
  readonly lamp: string; // the load of a reading that is asked for under one [A]
}

interface Chosen {
  readonly wire: string | null;
  readonly key: Key | null;
  readonly capture: Capture;
  readonly load: string;
  readonly byHand: boolean;
}

const BEGIN: Chosen = { wire: null, key: "off", capture: "display", load: "", byHand: false };

export function useSelection(next: NextReading | null, { names, behind, typing, lamp }: Around): Selection {
  const [chosen, setChosen] = useState<Chosen>(BEGIN);
  const [steady, setSteady] = useState(true);
  const change = (part: Partial<Chosen>): void => setChosen((before) => ({ ...before, ...part, byHand: true }));
  useEffect(() => {
    const wire = next?.wire ?? null;
    if (!next || chosen.byHand || behind || typing || (wire !== null && !names.includes(wire))) return undefined;
    const load = next.loaded ? lamp : "";
    const same = (wire === null || wire === chosen.wire) && next.key === chosen.key && next.capture === chosen.capture && load === chosen.load;
    if (same) return undefined;
    setChosen((before) => before.byHand ? before : { ...before, wire: wire ?? before.wire, key: next.key, capture: next.capture, load });
    setSteady(false);
    const timer = setTimeout(() => setSteady(true), STEADY_AFTER_MS);
    return () => {
      clearTimeout(timer);
      setSteady(true);
    };
  }, [next, behind, typing, chosen.byHand, lamp]);
  return {
    wire: chosen.wire ?? names[0] ?? null,
    key: chosen.key,
    capture: chosen.capture,
    load: chosen.load,
    steady,
    setWire: (wire) => change({ wire }),
    setKey: (key) => change({ key, capture: key === "crank" ? "min" : "display" }),
    setCapture: (capture) => change({ capture }),
    setLoad: (load) => change({ load }),
    follow: () => setChosen((before) => ({ ...before, load: "", byHand: false })),
  };
}

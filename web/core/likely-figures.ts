// The figures that a meter is likely to show next, for one touch: each is a figure that may be kept as it stands there.
import { LIVE_SHARE, type Key, type Reading } from "./probe-table.ts";

const SHOWN = 10;
const ABOVE: Readonly<Record<"rest" | "running", number>> = { rest: 2, running: 4 }; // of them, how many lie above the last one
const CHARGED_V = { 12: 13.6, 24: 27.6 } as const; // where the figures begin before one was read with the engine running

/** What a figure is asked for: on which wire, at which position, under which load. */
export interface Asked {
  readonly wire: string;
  readonly key: Key;
  readonly load: string;
}

/** Tenths of a volt around the last live figure with the engine as it is now, the highest first, without that one: it has a
 * key of its own. Under a lamp hundredths, from the wire's own figure without it down. None in the crank, on the charger,
 * and before the battery was read once. */
export function likelyFigures(readings: readonly Reading[], { wire, key, load }: Asked, system_V: number): string[] {
  if (key === "crank" || key === "charging") return [];
  const live = readings.filter((one) => one.key !== "crank" && one.key !== "charging" && !one.load && Number(one.volts) >= LIVE_SHARE * system_V);
  if (load !== "") return beneath(live.findLast((one) => one.wire === wire && one.key === key && one.capture === "display")?.volts);
  const engine = key === "running" ? "running" : "rest";
  const last = live.findLast((one) => (one.key === "running") === (key === "running"))?.volts;
  if (last === undefined && engine === "rest") return [];
  if (last === undefined) return downFrom(Math.round(CHARGED_V[system_V === 24 ? 24 : 12] * 10) + SHOWN - 1, 10);
  const own = Math.round(Number(Number(last).toFixed(1)) * 10);
  return downFrom(own + ABOVE[engine], 10, own);
}

/** As many hundredths as are shown, from the figure without load down; none where it was not typed to hundredths. */
function beneath(bare: string | undefined): string[] {
  if (bare === undefined || (bare.split(".")[1] ?? "").length !== 2) return [];
  return downFrom(Math.round(Number(bare) * 100), 100);
}

/** So many figures as are shown, from `most` parts of a volt down, without `left_out`. */
function downFrom(most: number, parts: 10 | 100, left_out: number | null = null): string[] {
  const all = Array.from({ length: SHOWN + 1 }, (_, down) => most - down).filter((one) => one !== left_out);
  return all.slice(0, SHOWN).map((one) => (one / parts).toFixed(parts === 10 ? 1 : 2));
}

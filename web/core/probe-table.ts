// The wires of a job and what was read on them, as the phone shows them.
import { text, type Said } from "./standing.ts";

export const KEYS = ["off", "accessory", "on", "crank", "running", "after", "isolated", "charging"] as const;
export type Key = (typeof KEYS)[number];
export const CAPTURES = ["display", "min", "max", "logged"] as const;
export type Capture = (typeof CAPTURES)[number];
export const LEADS = ["supply", "ignition"] as const;
export type Lead = (typeof LEADS)[number];

export const LIVE_SHARE = 0.85; // of the system's voltage: from here on a figure is taken for the battery's
const WITH_ENGINE: readonly Key[] = ["running"];

export interface Reading {
  readonly id: string;
  readonly wire: string;
  readonly key: Key;
  readonly volts: string;
  readonly capture: Capture;
  readonly load: string;
  readonly disputed: boolean;
}

export interface Wire {
  readonly name: string;
  readonly connector: string;
  readonly cavity: string;
  readonly colour: string;
  readonly circuits: readonly string[];
}

export interface Claim {
  readonly ids: readonly string[];
  readonly values: readonly string[];
}

export interface ProbeTable {
  readonly wires: readonly Wire[];
  readonly readings: readonly Reading[];
  readonly absent: ReadonlySet<string>;
  readonly claims: ReadonlyMap<string, Claim>;
}

/** The table of what stands. */
export function probeTable(said: readonly Said[]): ProbeTable {
  const wires = new Map<string, Wire>();
  const claims = new Map<string, Claim>();
  for (const one of said) {
    noteWire(wires, one);
    if (one.kind === "claim") noteClaim(claims, one);
  }
  return {
    wires: [...wires.values()],
    readings: said.filter((one) => one.kind === "reading").map(reading),
    absent: new Set(said.filter((one) => one.kind === "absent_key").map((one) => text(one.body, "key"))),
    claims,
  };
}

function noteWire(wires: Map<string, Wire>, { kind, body }: Said): void {
  const name = text(body, "wire");
  if (!name || !["wire_declared", "circuit", "reading", "unread"].includes(kind)) return;
  const known = wires.get(name) ?? { name, connector: "", cavity: "", colour: "", circuits: [] };
  const circuit = kind === "circuit" ? text(body, "circuit") : "";
  wires.set(name, {
    name,
    connector: text(body, "connector") || known.connector,
    cavity: text(body, "cavity") || known.cavity,
    colour: text(body, "colour") || known.colour,
    circuits: circuit && !known.circuits.includes(circuit) ? [...known.circuits, circuit] : known.circuits,
  });
}

function noteClaim(claims: Map<string, Claim>, { id, body }: Said): void {
  const known = claims.get(text(body, "slot"));
  claims.set(text(body, "slot"), {
    ids: [...(known?.ids ?? []), id],
    values: [...new Set([...(known?.values ?? []), text(body, "value")])],
  });
}

function reading({ id, body, disputed }: Said): Reading {
  return {
    id,
    wire: text(body, "wire"),
    key: text(body, "key") as Key,
    volts: text(body, "volts"),
    capture: text(body, "capture") as Capture,
    load: text(body, "load_A"),
    disputed,
  };
}

/** The battery's figure to a tenth of a volt, no finer than it was typed, by the latest live reading with the engine as at `key`; null before there is one. */
export function batteryFigure(readings: readonly Reading[], key: Key, system_V: number): string | null {
  if (key === "crank" || key === "charging") return null; // there the battery itself moves: only a figure will do
  const running = WITH_ENGINE.includes(key);
  const alike = readings.filter((one) => one.key !== "crank" && one.key !== "charging" && WITH_ENGINE.includes(one.key) === running);
  const live = alike.filter((one) => !one.load && Number(one.volts) >= LIVE_SHARE * system_V);
  const last = live.at(-1)?.volts;
  return last === undefined ? null : last.includes(".") ? Number(last).toFixed(1) : last;
}

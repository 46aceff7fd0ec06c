// What the probe stage writes into the journal; docs/journal.md says what each body holds.
import type { Body } from "../core/canonical.ts";
import type { Capture, Claim, Key, Lead, Reading } from "../core/probe-table.ts";
import type { NewEntry } from "./use-job.ts";

const AFTER_MIN = "10";

export interface NewReading {
  readonly wire: string;
  readonly key: Key;
  readonly volts: string;
  readonly capture: Capture;
  readonly load: string;
}

function readingBody({ wire, key, volts, capture, load }: NewReading): Body {
  const after_min = key === "after" ? AFTER_MIN : null;
  return { wire, key, volts, capture, after_min, load_A: load || null, file: null, line: null };
}

export const readingEntry = (reading: NewReading): NewEntry => ({ kind: "reading", body: readingBody(reading) });

export function correctedReading(reading: Reading, volts: string): NewEntry {
  return { kind: "correction", body: { replaces: reading.id, kind: "reading", body: readingBody({ ...reading, volts }) } };
}

export function withdrawn(ids: readonly string[]): NewEntry {
  return { kind: "withdrawn", body: { entry: [...ids], why: null } };
}

export interface NewWireFacts {
  readonly wire: string;
  readonly connector: string;
  readonly cavity: string;
  readonly colour: string;
}

export function wireEntry({ wire, connector, cavity, colour }: NewWireFacts): NewEntry {
  return { kind: "wire_declared", body: { wire, connector, cavity, colour, file: null, order: null } };
}

export function circuitEntry(wire: string, circuit: string): NewEntry {
  return { kind: "circuit", body: { wire, circuit, marks: [], file: null, order: null } };
}

export const absentEntry = (key: Key): NewEntry => ({ kind: "absent_key", body: { key, file: null } });

/** The claim of a slot, in place of what was claimed for it before. */
export function claimEntry(slot: string, value: string, before: Claim | undefined): NewEntry {
  const body = { slot, value };
  if (!before) return { kind: "claim", body };
  return { kind: "correction", body: { replaces: [...before.ids], kind: "claim", body } };
}

export const slotOf = (lead: Lead): string => `tap_${lead}`;

// What the engine says of a job; src/backprobe/job/journal_door.py writes it.
import type { Capture, Key } from "../core/probe-table.ts";

export type Verdict = "holds" | "thin" | "fails" | "open";

export const WORST_FIRST: readonly Verdict[] = ["fails", "open", "thin", "holds"];

export interface Finding {
  readonly id: string;
  readonly stage: string;
  readonly what: string;
  readonly verdict: Verdict;
  readonly value: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly unit: string;
  readonly limit: { readonly value: number; readonly side: string; readonly basis: string; readonly standing: string } | null;
  readonly because: string;
  readonly next: string | null;
}

export interface JudgedWire {
  readonly wire: string;
  readonly role: string;
  readonly probability: number;
  readonly verdict: Verdict;
  readonly tap: string;
  readonly reasons: readonly string[];
}

export interface NextReading {
  readonly wire: string | null;
  readonly key: Key;
  readonly capture: Capture;
  readonly why: string;
  readonly loaded?: true; // under a load of about 1 to 2 A
}

export interface ProvedTurn {
  readonly key: string;
  readonly expected: "on" | "off" | "none";
  readonly state: "matched" | "missing" | "open";
}

export interface Judgement {
  readonly ok: true;
  readonly verdict: Verdict;
  readonly next: string | null;
  readonly next_stage: string | null; // as findings name it
  readonly findings: readonly Finding[];
  readonly wires: readonly JudgedWire[];
  readonly next_reading: NextReading | null;
  readonly prove: { readonly turns: readonly ProvedTurn[] } | null;
  readonly choice: { readonly supply: string | null; readonly ignition: string | null };
  readonly ends: Ends;
  readonly signed: SignedOff | null;
  readonly journal: { readonly settled: boolean; readonly open: readonly string[] };
  readonly leads: Readonly<Record<string, Verdict>>; // how each lead of the unit stands
  readonly body_builder: readonly string[]; // wires that are at a body-builder connector
  readonly setup: { readonly system_V: number; readonly keys: readonly Key[]; readonly captures: readonly Capture[]; readonly meter: string };
}

/** What a job lacks: `what` as it is written into the sheet, `said` in the language of the page where that is not English. */
export interface Lack {
  readonly what: string;
  readonly said?: string;
  readonly means: string | null;
}

/** How the job can end; `hindered` is what keeps it from ending as its sheet says, null where that says nothing. */
export interface Ends {
  readonly can: "proven" | "provisional" | "abandoned";
  readonly not_proven: readonly string[];
  readonly fails: readonly string[];
  readonly lacks: readonly Lack[];
  readonly hindered: readonly string[] | null;
}

/** The sign-off that counts: how many entries came after it, and whether its signature holds (null: not checked here). */
export interface SignedOff {
  readonly id: string;
  readonly end: string;
  readonly late: number;
  readonly holds: boolean | null;
}

export interface NotJudged {
  readonly ok: false;
  readonly error: string;
}

// What this phone remembers of itself and of the person who holds it.
import type { Units } from "../core/units.ts";
import { answered, kept, reading, writing } from "./database.ts";
import type { Usual } from "./usual.ts";

export interface Person {
  readonly id: string;
  readonly name: string;
  readonly language: "en" | "es";
  readonly units: Units;
}

export interface Enrolment {
  readonly device: string;
  readonly token: string;
  readonly organisation: string;
  readonly person: Person;
  readonly withdrawn?: boolean;
}

/** The marks of the day that this phone has: of the whole, and of its parts. */
export interface DayMarks {
  readonly whole: string;
  readonly parts: Readonly<Record<string, string>>;
}

export interface Settings {
  enrolment: Enrolment;
  device: string; // chosen before the first enrolment, kept through later ones
  language: "en" | "es";
  units: Units; // chosen on this phone, else as the desk has them of the person
  theme: "auto" | "light" | "dark";
  meter: string; // the class of meter that this person uses
  lamp: string; // the current of this person's test lamp [A]; "none" where there is none
  serials: readonly { serial: string; job: string; vehicle: string | null }[];
  clock_out_min: number; // how far this phone's clock was ahead of the server's when they last spoke
  day: DayMarks; // of what the server told last
  usual: readonly Usual[]; // by the server: vehicles of the day's types that were finished before
  corners: string | null; // an index of the street corners around the day's jobs
}

/** A setting; null where it was never made. */
export async function setting<K extends keyof Settings>(name: K): Promise<Settings[K] | null> {
  return ((await answered((await reading("settings")).get(name))) as Settings[K] | undefined) ?? null;
}

/** Keeps a setting. */
export async function keepSetting<K extends keyof Settings>(name: K, value: Settings[K]): Promise<void> {
  const transaction = await writing("settings");
  transaction.objectStore("settings").put(value, name);
  await kept(transaction);
}

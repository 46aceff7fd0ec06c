// Answers that one touch gives: each stands on the screen in words before it is touched, and can be changed after.
import { valueIn, type Value } from "../../core/sheet.ts";
import type { Job } from "../../store/jobs.ts";
import type { Usual } from "../../store/usual.ts";
import type { FormWord } from "../../words/form-words.ts";
import type { Change } from "../use-sheet.ts";
import { isDue, tableOf, type Ask, type Which } from "./ask.ts";

/** What a section knows when it offers something. */
export interface Around {
  readonly job: Job | null;
  readonly sheet: string; // the sheet that the form writes
  readonly jobSheet: string;
  readonly unitSheet: string;
  readonly usual: Usual | null;
  readonly person: string | null; // whoever holds the phone
}

export interface Given {
  readonly ask: Ask;
  readonly value: Value;
  readonly which?: Which;
}

/** One touch: what it says, where that comes from (a vehicle's name; null where it is an observation), and its answers. */
export interface Offer {
  readonly word: FormWord;
  readonly from: string | null;
  readonly given: readonly Given[];
}

/** The changes of a sheet that an offer makes. */
export function changesOf({ given }: Offer): Change[] {
  return given.map(({ ask, value, which }) => ({ table: tableOf(ask, which ?? null), key: ask.key, value }));
}

/** An offer without the answers that stand already; null where nothing is left of it. */
export function stillOpen(offer: Offer, sheet: string): Offer | null {
  const given = offer.given.filter(({ ask, which }) => valueIn(sheet, tableOf(ask, which ?? null), ask.key) === null);
  return given.length > 0 ? { ...offer, given } : null;
}

/** Whether every question that is due has its answer. */
export function isAnswered(asks: readonly Ask[], sheet: string, which: Which | null = null): boolean {
  const value = (table: string, key: string): Value | null => valueIn(sheet, table === "joint" || table === "input" ? { name: table, ...(which ? { where: which } : {}) } : { name: table }, key);
  const due = asks.filter(({ when, table }) => !when || isDue(when, value(when.table ?? table, when.key)));
  return due.every((ask) => value(ask.table, ask.key) !== null);
}

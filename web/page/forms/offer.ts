// Answers that one touch gives: each stands on the screen in words before it is touched, and can be changed after.
import { valueIn, type Value } from "../../core/sheet.ts";
import type { EarlierOnes } from "../../store/earlier.ts";
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
  readonly earlier: EarlierOnes;
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

/** What tells one question from another, on one page. */
export const nameOf = (ask: Ask, which: Which | null = null): string => `${which?.value ?? ""}/${ask.table}.${ask.key}`;

/** The changes of a sheet that an offer makes; what somebody has answered meanwhile by hand stays. */
export function changesOf({ given }: Offer): Change[] {
  return given.map(({ ask, value, which }) => ({ table: tableOf(ask, which ?? null), key: ask.key, value, only: "unsaid" }));
}

/** What takes an offer back: of its answers those that stand as it gave them. */
export function takenBack({ given }: Offer, sheet: string): Change[] {
  const stands = ({ ask, value, which }: Given): boolean => same(valueIn(sheet, tableOf(ask, which ?? null), ask.key), value);
  return given.filter(stands).map(({ ask, which }) => ({ table: tableOf(ask, which ?? null), key: ask.key, value: null }));
}

/** An offer without the answers that stand already; null where nothing is left of it. */
export function stillOpen(offer: Offer, sheet: string): Offer | null {
  const given = offer.given.filter(({ ask, which }) => valueIn(sheet, tableOf(ask, which ?? null), ask.key) === null);
  return given.length > 0 ? { ...offer, given } : null;
}

/** The questions that are asked, by the answers that stand. */
export function dueOf(asks: readonly Ask[], sheet: string, which: Which | null = null): Ask[] {
  const said = (table: string, key: string): Value | null => valueIn(sheet, { name: table, ...(which ? { where: which } : {}) }, key);
  return asks.filter(({ when, table }) => !when || isDue(when, said(when.table ?? table, when.key)));
}

/** Whether every question that is due has its answer. */
export function isAnswered(asks: readonly Ask[], sheet: string, which: Which | null = null): boolean {
  return dueOf(asks, sheet, which).every((ask) => valueIn(sheet, tableOf(ask, which), ask.key) !== null);
}

const same = (one: Value | null, other: Value): boolean => JSON.stringify(one) === JSON.stringify(other);

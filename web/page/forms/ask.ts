// A question of a form: where its answer stands in the sheets, and when it is asked.
import { valueIn, type Table } from "../../core/sheet.ts";
import type { Units } from "../../core/units.ts";
import type { FormWord } from "../../words/form-words.ts";
import type { SheetKind } from "../use-sheet.ts";
import type { Around, Offer } from "./offer.ts";

export type Ask =
  | { readonly kind: "flag" | "text" | "figure" | "list" | "day"; readonly table: string; readonly key: string; readonly word: FormWord; readonly unit?: string; readonly twin?: Twin; readonly scan?: "vin" | "serial"; readonly when?: Condition }
  | { readonly kind: "choice"; readonly table: string; readonly key: string; readonly word: FormWord; readonly values: readonly FormWord[]; readonly when?: Condition };

/** The same question in the other system, where the sheet has a key of its own for it: an odometer is written as it reads. */
export interface Twin {
  readonly key: string;
  readonly unit: string;
  readonly as: string; // a table that was written before: the same unit is asked again
}

/** A question that is asked only where another one, perhaps of another table, was answered so, or answered at all. */
export interface Condition {
  readonly table?: string;
  readonly key: string;
  readonly is?: boolean | string;
  readonly isSet?: boolean;
}

/** Whether a question is asked, by the answer to the one that it hangs on. */
export function isDue(when: Condition, given: unknown): boolean {
  const isSet = given !== null && given !== "";
  return when.isSet === undefined ? given === when.is : isSet === when.isSet;
}

/** The question in the person's units where it has a key for them, unless the other key is written already. */
export function inUnits(ask: Ask, units: Units, sheet: string): Ask {
  if (ask.kind !== "figure" || !ask.twin) return ask;
  const { twin, ...plain } = ask;
  const isIn = (table: string, key: string): boolean => valueIn(sheet, { name: table }, key) !== null;
  const written = [ask.table, twin.as].find((table) => isIn(table, ask.key) || isIn(table, twin.key));
  const isTwin = written === undefined ? units === "us" : isIn(written, twin.key);
  return isTwin ? { ...plain, key: twin.key, unit: twin.unit } : plain;
}

export interface Section {
  readonly title: FormWord;
  readonly caution?: FormWord;
  readonly asks: readonly Ask[];
  readonly photos?: readonly string[];
  readonly rare?: (around: Around) => readonly string[]; // keys that nobody needs here: behind the fold, and asked of whoever wants to say
  readonly expected?: (around: Around) => Readonly<Record<string, string>>; // by key: what the day's sheet says, shown beside what is read
  readonly offers?: (around: Around) => readonly Offer[]; // what one touch may answer
}

export interface Form {
  readonly stage: string; // as findings name it
  readonly sheet: SheetKind;
  readonly sections: readonly Section[];
}

export const flag = (table: string, key: FormWord, when?: Condition): Ask => ({ kind: "flag", table, key, word: key, ...(when ? { when } : {}) });
export const line = (table: string, key: FormWord, when?: Condition): Ask => ({ kind: "text", table, key, word: key, ...(when ? { when } : {}) });
export const figure = (table: string, key: string, word: FormWord, unit: string): Ask => ({ kind: "figure", table, key, word, unit });
export const list = (table: string, key: FormWord): Ask => ({ kind: "list", table, key, word: key });

/** Of several tables the one that is meant: the joint of a lead, what is missing or a place by its name. */
export interface Which {
  readonly key: "lead" | "what" | "name";
  readonly value: string;
}

/** The table in which an ask's answer stands. */
export function tableOf(ask: Ask, which: Which | null): Table {
  return which === null ? { name: ask.table } : { name: ask.table, where: which };
}

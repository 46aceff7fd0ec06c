// A question of a form: where its answer stands in the sheets, and when it is asked.
import type { Table } from "../../core/sheet.ts";
import type { FormWord } from "../../words/form-words.ts";
import type { SheetKind } from "../use-sheet.ts";
import type { Around, Offer } from "./offer.ts";

export type Ask =
  | { readonly kind: "flag" | "text" | "figure" | "list" | "day"; readonly table: string; readonly key: string; readonly word: FormWord; readonly unit?: string; readonly scan?: "vin" | "serial"; readonly when?: Condition }
  | { readonly kind: "choice"; readonly table: string; readonly key: string; readonly word: FormWord; readonly values: readonly FormWord[]; readonly when?: Condition };

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

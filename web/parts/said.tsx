// Answers in words: what an offer would say, and in short what was said.
import { valueIn, type Value } from "../core/sheet.ts";
import { fromSheet, unitFor, type Units } from "../core/units.ts";
import { useShared } from "../page/context.ts";
import { tableOf, type Ask, type Which } from "../page/forms/ask.ts";
import { formWordsIn, isFormWord, type FormWords } from "../words/form-words.ts";

/** What was answered, in one paragraph; nothing where nothing was. */
export function Said({ asks, which, sheet }: { asks: readonly Ask[]; which: Which | null; sheet: string }) {
  const { language, units } = useShared();
  const words = formWordsIn(language);
  const said = asks.map((ask) => ({ ask, value: valueIn(sheet, tableOf(ask, which), ask.key) }));
  const given = said.flatMap(({ ask, value }) => (value === null ? [] : [{ ask, value }]));
  if (given.length === 0) return null;
  return (
    <p class="answered">
      {given.map(({ ask, value }, at) => (
        <span key={`${ask.table}.${ask.key}`}>
          {at > 0 && " · "}
          {withoutMark(words(ask.word))} <b>{saidOf(ask, value, { words, units })}</b>
        </span>
      ))}
    </p>
  );
}

/** In which words and units something is said. */
export interface Saying {
  readonly words: FormWords;
  readonly units: Units;
}

/** An answer in words, with its unit. */
export function saidOf(ask: Ask, value: Value, { words, units }: Saying): string {
  if (!("unit" in ask) || !ask.unit) return plain(ask, value, words);
  const shown = typeof value === "number" ? fromSheet(value, ask.unit, units) : plain(ask, value, words);
  return `${shown} ${unitFor(ask.unit, units)}`;
}

function plain(ask: Ask, value: Value, words: FormWords): string {
  if (typeof value === "boolean") return words(value ? "yes" : "no");
  if (value === "none") return words("none");
  if (typeof value === "string") return ask.kind === "choice" && isFormWord(value) ? words(value) : value;
  return Array.isArray(value) ? value.join(", ") : String(value);
}

/** A question as a heading: without its marks. */
export const withoutMark = (question: string): string => `${question.replace(/^¿/, "").replace(/\?$/, "")}:`;

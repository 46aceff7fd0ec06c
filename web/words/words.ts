// The phone's sentences in the language of whoever holds it.
import { en, type Word } from "./en.ts";
import { es } from "./es.ts";

export type Language = "en" | "es";
export type Words = (word: Word, filled?: Readonly<Record<string, string | number>>) => string;

/** Words of a form: each in English and in Spanish. */
export type Pairs = Readonly<Record<string, readonly [en: string, es: string]>>;

export const LANGUAGES: Readonly<Record<Language, string>> = { en: "English", es: "Español" };

const BOOKS: Readonly<Record<Language, Readonly<Record<Word, string>>>> = { en, es };

/** The sentences of one language. */
export function wordsIn(language: Language): Words {
  const book = BOOKS[language];
  return (word, filled = {}) => book[word].replace(/\{(\w+)\}/g, (_, name: string) => String(filled[name] ?? ""));
}

/** The language to begin with: the phone's, where it is one of ours. */
export function languageOf(wanted: readonly string[]): Language {
  return wanted.map((tag) => tag.slice(0, 2).toLowerCase()).find((tag): tag is Language => tag in BOOKS) ?? "en";
}

/** A word that carries a name of the engine, such as role_constant; the name itself where there is no such word. */
export function named(words: Words, family: string, name: string): string {
  const word = `${family}_${name.replaceAll(" ", "_")}`;
  return word in en ? words(word as Word) : name;
}

// The desk's sentences in the language of whoever sits at it.
import type { Language } from "../../words/words.ts";
import { en, type Word } from "./en.ts";
import { es } from "./es.ts";

export type DeskWords = (word: Word, filled?: Readonly<Record<string, string | number>>) => string;

const BOOKS: Readonly<Record<Language, Readonly<Record<Word, string>>>> = { en, es };

/** The sentences of one language. */
export function deskWordsIn(language: Language): DeskWords {
  const book = BOOKS[language];
  return (word, filled = {}) => book[word].replace(/\{(\w+)\}/g, (_, name: string) => String(filled[name] ?? ""));
}

/** A word that carries a name of the engine, such as stage_prove; the name itself where there is no such word. */
export function deskNamed(words: DeskWords, family: string, name: string): string {
  const word = `${family}_${name.replaceAll(" ", "_")}`;
  return word in en ? words(word as Word) : name;
}

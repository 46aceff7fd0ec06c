// What the forms of the stages ask, in English and in Spanish side by side, so that neither can be forgotten.
import { COMMON } from "./forms/common.ts";
import { FILES } from "./forms/files.ts";
import { HAND_OVER } from "./forms/hand-over.ts";
import { JOIN } from "./forms/join.ts";
import { MOUNT } from "./forms/mount.ts";
import { PHOTOS } from "./forms/photos.ts";
import { WALKROUND } from "./forms/walkround.ts";
import type { Language, Pairs } from "./words.ts";

const BOTH = { ...COMMON, ...WALKROUND, ...MOUNT, ...JOIN, ...HAND_OVER, ...FILES, ...PHOTOS } as const satisfies Pairs;

export type FormWord = keyof typeof BOTH;
export type FormWords = (word: FormWord, filled?: Readonly<Record<string, string>>) => string;

const PLACE: Readonly<Record<Language, 0 | 1>> = { en: 0, es: 1 };

/** What forms ask, in one language. */
export function formWordsIn(language: Language): FormWords {
  return (word, filled = {}) => BOTH[word][PLACE[language]].replace(/\{(\w+)\}/g, (_, name: string) => filled[name] ?? "");
}

/** Whether there is such a word. */
export function isFormWord(word: string): word is FormWord {
  return word in BOTH;
}

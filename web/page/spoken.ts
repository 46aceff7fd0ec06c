// In which language and voice the engine is asked: those of this page.

export interface Spoken {
  readonly language: string;
  readonly voice: "phone"; // the page is spoken of, not the files and commands of a terminal
}

/** The language that the page is in now. */
export const spoken = (): Spoken => ({ language: document.documentElement.lang, voice: "phone" });

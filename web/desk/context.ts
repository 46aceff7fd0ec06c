// What every page of the desk may use: its sentences, dates as the reader writes them, and asking the server.
import { createContext } from "preact";
import { useCallback, useContext, useEffect, useState } from "preact/hooks";
import type { Language } from "../words/words.ts";
import { Refused } from "./api.ts";
import { deskWordsIn, type DeskWords } from "./words/words.ts";

export interface Desk {
  readonly words: DeskWords;
  readonly language: Language;
  readonly onLoggedOut: () => void;
}

export const DeskContext = createContext<Desk>({ words: deskWordsIn("en"), language: "en", onLoggedOut: () => undefined });

export const useDesk = (): Desk => useContext(DeskContext);

/** A moment as the reader's language writes it, in this machine's zone; a dash for none. */
export function when(moment: string | null, language: Language): string {
  if (!moment) return "–";
  return new Date(moment).toLocaleString(language, { dateStyle: "medium", timeStyle: "short" });
}

export interface Loaded<T> {
  readonly value: T | null;
  readonly fault: string | null;
  readonly again: () => void;
}

/** What `load` gives, asked anew whenever `of` changes; an answer that comes late is dropped. */
export function useLoaded<T>(load: () => Promise<T>, of: readonly unknown[]): Loaded<T> {
  const { onLoggedOut } = useDesk();
  const [value, setValue] = useState<T | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const [turn, setTurn] = useState(0);
  useEffect(() => {
    let current = true;
    load().then(
      (loaded) => {
        if (!current) return;
        setValue(loaded);
        setFault(null);
      },
      (problem: unknown) => {
        if (!current) return;
        if (problem instanceof Refused && problem.status === 401) onLoggedOut();
        setFault(String(problem instanceof Error ? problem.message : problem));
      },
    );
    return () => {
      current = false;
    };
  }, [...of, turn]);
  return { value, fault, again: useCallback(() => setTurn((before) => before + 1), []) };
}

export interface Doing {
  readonly busy: boolean;
  readonly fault: string | null;
  readonly run: (work: () => Promise<unknown>) => Promise<boolean>;
}

/** Something that changes the server: whether it is under way, what went wrong, and how to begin it. */
export function useDoing(): Doing {
  const [busy, setBusy] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const run = async (work: () => Promise<unknown>): Promise<boolean> => {
    setBusy(true);
    try {
      await work();
      setFault(null);
      return true;
    } catch (problem) {
      setFault(problem instanceof Error ? problem.message : String(problem));
      return false;
    } finally {
      setBusy(false);
    }
  };
  return { busy, fault, run };
}

// What every part of the page may use: sentences, and saying aloud that something went wrong.
import { createContext } from "preact";
import { useContext } from "preact/hooks";
import type { Units } from "../core/units.ts";
import { NoRoom } from "../store/database.ts";
import { wordsIn, type Language, type Words } from "../words/words.ts";

export interface Shared {
  readonly words: Words;
  readonly language: Language;
  readonly setLanguage: (language: Language) => void;
  readonly units: Units;
  readonly setUnits: (units: Units) => void;
  readonly fault: string | null;
  readonly setFault: (fault: string | null) => void;
}

export const SharedContext = createContext<Shared>({
  words: wordsIn("en"),
  language: "en",
  setLanguage: () => undefined,
  units: "metric",
  setUnits: () => undefined,
  fault: null,
  setFault: () => undefined,
});

export const useShared = (): Shared => useContext(SharedContext);

/** Runs what keeps something; says where it could not, and whether it went well. */
export function useKeeping(): (work: () => Promise<void>) => Promise<boolean> {
  const { words, setFault } = useShared();
  return async (work) => {
    try {
      await work();
      setFault(null);
      return true;
    } catch (fault) {
      setFault(fault instanceof NoRoom ? words("no_room") : words("not_kept", { why: String(fault) }));
      return false;
    }
  };
}

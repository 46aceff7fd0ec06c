// Answers on several leads by one touch: each lead in one short line, the rest of what is said beneath.
import { useEffect, useState } from "preact/hooks";
import { useShared } from "../page/context.ts";
import type { Given, Offer } from "../page/forms/offer.ts";
import { formWordsIn } from "../words/form-words.ts";
import { saidOf, withoutMark, type Saying } from "./said.tsx";

const SHORT = ["wire", "method", "fuse_A", "length_m", "place", "vehicle_fuse_A", "vehicle_load_A"];
const STEADY_MS = 700; // after a change, so that a second touch on the same spot says nothing more

interface Props {
  readonly offer: Offer;
  readonly lines: readonly string[]; // beside the button's own words
  readonly sheet: string;
  readonly onTake: () => void;
}

/** What is said of each lead stands in `lines`; where there are none, in the answers' own words. */
export function AllAtOnce({ offer, lines, sheet, onTake }: Props) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const steady = useSteady(sheet);
  return (
    <div class="at-once">
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
      <button type="button" class="wide" disabled={!steady} onClick={onTake}>
        {words(offer.word, { vehicle: offer.from ?? "" })}
      </button>
    </div>
  );
}

/** The answers by lead, each in a short line, with all else folded. */
export function ShortLines({ offer, circuit }: { offer: Offer; circuit: string }) {
  const { language, units } = useShared();
  const words = formWordsIn(language);
  const names = [...new Set(offer.given.map((one) => one.which?.value ?? ""))];
  const of = (name: string): Given[] => offer.given.filter((one) => (one.which?.value ?? "") === name);
  const rest = (name: string): Given[] => of(name).filter((one) => !SHORT.includes(one.ask.key));
  const line = (name: string): string => (name ? lineOf : named)(of(name).filter((one) => SHORT.includes(one.ask.key)), { words, units });
  return (
    <>
      <ul class="short">
        {names.map((name) => (
          <li key={name}>
            <b>{name || circuit}</b> {line(name)}
          </li>
        ))}
      </ul>
      <details class="single">
        <summary>{words("all_of_it")}</summary>
        <ul class="short">
          {names.filter((name) => rest(name).length > 0).map((name) => (
            <li key={name}>
              <b>{name || circuit}</b>{" "}
              {named(rest(name), { words, units })}
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}

function lineOf(given: readonly Given[], saying: Saying): string {
  return given.map(({ ask, value }) => `${ask.key === "wire" ? "→ " : ""}${saidOf(ask, value, saying)}`).join(" · ");
}

/** Each answer behind its question. */
function named(given: readonly Given[], saying: Saying): string {
  return given.map(({ ask, value }) => `${withoutMark(saying.words(ask.word))} ${saidOf(ask, value, saying)}`).join(" · ");
}

/** Whether the sheet has stood still for a moment. */
function useSteady(sheet: string): boolean {
  const [seen, setSeen] = useState(sheet);
  useEffect(() => {
    const timer = setTimeout(() => setSeen(sheet), STEADY_MS);
    return () => clearTimeout(timer);
  }, [sheet]);
  return seen === sheet;
}

// Questions that belong together: what one touch may answer, what is asked openly, and what is folded away with its answers.
import { useEffect, useRef, useState } from "preact/hooks";
import { valueIn } from "../core/sheet.ts";
import { AtOnce } from "../parts/at-once.tsx";
import { Said } from "../parts/said.tsx";
import { formWordsIn } from "../words/form-words.ts";
import { useShared } from "./context.ts";
import { inUnits, tableOf, type Ask, type Which } from "./forms/ask.ts";
import { changesOf, dueOf, isAnswered, nameOf, stillOpen, takenBack, type Offer } from "./forms/offer.ts";
import { Questions } from "./questions.tsx";
import type { Change } from "./use-sheet.ts";

interface Props {
  readonly asks: readonly Ask[];
  readonly which?: Which | null;
  readonly offers: readonly Offer[];
  readonly rare?: readonly string[]; // keys that nobody needs: behind the fold
  readonly expected?: Readonly<Record<string, string>>; // by key: what the day's sheet says
  readonly sheet: string;
  readonly onAnswer: (changes: readonly Change[]) => void;
}

/** Nothing moves under a finger: what is answered by hand stays where it was asked until the page is opened again. */
export function AskGroup({ asks: given, which = null, offers, rare = [], expected = {}, sheet, onAnswer }: Props) {
  const { words, language, units } = useShared();
  const asks = given.map((ask) => inUnits(ask, units, sheet));
  const asked = formWordsIn(language);
  const open = offers.map((offer) => stillOpen(offer, sheet)).filter((offer): offer is Offer => offer !== null);
  const due = dueOf(asks, sheet, which);
  const isSaid = (ask: Ask): boolean => valueIn(sheet, tableOf(ask, which), ask.key) !== null;
  const needed = asks.filter((ask) => !rare.includes(ask.key));
  const isFoldedFirst = (ask: Ask): boolean => rare.includes(ask.key) || (isSaid(ask) && (isAnswered(needed, sheet, which) || (offers.length > 0 && !isScanned(ask))));
  const [folded] = useState(() => new Set(due.filter(isFoldedFirst).map((ask) => nameOf(ask, which))));
  for (const offer of open) for (const one of offer.given) folded.add(nameOf(one.ask, one.which ?? which));
  const isAway = (ask: Ask): boolean => folded.has(nameOf(ask, which));
  const [openly, away] = [due.filter((ask) => !isAway(ask)), due.filter(isAway)];
  const [taken, setTaken] = useState<Offer | null>(null);
  const { group, onward } = useOnward(sheet);
  const take = (offer: Offer): void => {
    for (const ask of due.filter(isSaid)) folded.add(nameOf(ask, which));
    setTaken(offer);
    onward();
    onAnswer(changesOf(offer));
  };
  const back = taken ? takenBack(taken, sheet) : [];
  const heading = away.some(isSaid) ? words("change") : open.length > 0 ? asked("one_by_one") : words("more");
  const questions = (some: readonly Ask[]) => some.length > 0 && <Questions asks={some} which={which} sheet={sheet} expected={expected} onAnswer={onAnswer} />;
  return (
    <div class="group" ref={group}>
      {questions(openly.filter(isScanned))}
      <Said asks={away} which={which} sheet={sheet} />
      {open.map((offer) => (
        <AtOnce key={`${offer.word}.${offer.from}`} offer={offer} onTake={() => take(offer)} />
      ))}
      {questions(openly.filter((ask) => !isScanned(ask)))}
      {away.length > 0 && (
        <details class="single">
          <summary>{heading}</summary>
          {back.length > 0 && (
            <button type="button" onClick={() => onAnswer(back)}>
              {asked("take_back_touch")}
            </button>
          )}
          {questions(away)}
        </details>
      )}
    </div>
  );
}

const isScanned = (ask: Ask): boolean => ask.kind === "text" && ask.scan !== undefined;

/** After a touch its button is gone: the focus goes to the next line that is to be typed in, else to the fold. */
function useOnward(sheet: string) {
  const group = useRef<HTMLDivElement>(null);
  const isDue = useRef(false);
  useEffect(() => {
    if (!isDue.current || !group.current) return;
    isDue.current = false;
    const lines = [...group.current.querySelectorAll<HTMLInputElement>(":scope > .question:not(.scanned) input")];
    const next = lines.find((line) => line.value === "");
    if (next) next.focus();
    else group.current.querySelector<HTMLElement>(":scope > .single > summary")?.focus({ preventScroll: true });
  }, [sheet]);
  return { group, onward: () => void (isDue.current = true) };
}

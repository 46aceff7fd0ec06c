// Questions that belong together: what one touch may answer, what is asked openly, and what is folded away with its answers.
import { useEffect, useRef, useState } from "preact/hooks";
import { valueIn } from "../core/sheet.ts";
import { AtOnce } from "../parts/at-once.tsx";
import { Said } from "../parts/said.tsx";
import { formWordsIn } from "../words/form-words.ts";
import { useShared } from "./context.ts";
import { tableOf, type Ask, type Which } from "./forms/ask.ts";
import { changesOf, dueOf, isAnswered, nameOf, stillOpen, takenBack, type Offer } from "./forms/offer.ts";
import { Questions } from "./questions.tsx";
import type { Change } from "./use-sheet.ts";

interface Props {
  readonly asks: readonly Ask[];
  readonly which?: Which | null;
  readonly offers: readonly Offer[];
  readonly sheet: string;
  readonly onAnswer: (changes: readonly Change[]) => void;
}

/** Nothing moves under a finger: what is answered by hand stays where it was asked until the page is opened again. */
export function AskGroup({ asks, which = null, offers, sheet, onAnswer }: Props) {
  const { words, language } = useShared();
  const asked = formWordsIn(language);
  const open = offers.map((offer) => stillOpen(offer, sheet)).filter((offer): offer is Offer => offer !== null);
  const due = dueOf(asks, sheet, which);
  const isSaid = (ask: Ask): boolean => valueIn(sheet, tableOf(ask, which), ask.key) !== null;
  const folded = useRef(new Set<string>(isAnswered(asks, sheet, which) || offers.length > 0 ? due.filter(isSaid).map((ask) => nameOf(ask, which)) : []));
  for (const offer of open) for (const one of offer.given) folded.current.add(nameOf(one.ask, one.which ?? which));
  const [taken, setTaken] = useState<Offer | null>(null);
  const fold = useRef<HTMLElement>(null);
  useEffect(() => {
    if (taken) fold.current?.focus({ preventScroll: true }); // the button that had the focus is gone
  }, [taken]);
  const take = (offer: Offer): void => {
    for (const ask of due.filter(isSaid)) folded.current.add(nameOf(ask, which));
    setTaken(offer);
    onAnswer(changesOf(offer));
  };
  const isAway = (ask: Ask): boolean => folded.current.has(nameOf(ask, which));
  const [openly, away] = [due.filter((ask) => !isAway(ask)), due.filter(isAway)];
  const back = taken ? takenBack(taken, sheet) : [];
  const isAnyAway = away.some(isSaid);
  return (
    <>
      <Said asks={away} which={which} sheet={sheet} />
      {open.map((offer) => (
        <AtOnce key={`${offer.word}.${offer.from}`} offer={offer} onTake={() => take(offer)} />
      ))}
      {openly.length > 0 && <Questions asks={openly} which={which} sheet={sheet} onAnswer={onAnswer} />}
      {away.length > 0 && (
        <details class="single">
          <summary ref={fold}>{isAnyAway ? words("change") : asked("one_by_one")}</summary>
          {back.length > 0 && (
            <button type="button" onClick={() => onAnswer(back)}>
              {asked("take_back_touch")}
            </button>
          )}
          <Questions asks={away} which={which} sheet={sheet} onAnswer={onAnswer} />
        </details>
      )}
    </>
  );
}

// One place that was described: what is round it, by large choices; with a tape, by figures.
import { useEffect, useRef } from "preact/hooks";
import { valueIn, type Value } from "../core/sheet.ts";
import { Choice } from "../parts/choice.tsx";
import { Question } from "../parts/form.tsx";
import { formWordsIn, isFormWord } from "../words/form-words.ts";
import { useShared } from "./context.ts";
import { tableOf, type Ask } from "./forms/ask.ts";
import { measuredAsks, placeAsks, spanOf, type Seat } from "./forms/places.ts";
import { Questions } from "./questions.tsx";
import type { Change } from "./use-sheet.ts";

interface Props {
  readonly seat: Seat;
  readonly name: string;
  readonly sheet: string; // the mount sheet
  readonly figures: readonly string[]; // that its choices stand for, in the engine's words
  readonly isOpen: boolean;
  readonly onAnswer: (changes: readonly Change[]) => void;
  readonly onRename: (typed: string) => void;
  readonly onTakeOut?: () => void;
}

/** Choices as a grid, each with the span that it stands for. */
function PlaceQuestion({ ask, value, onAnswer }: { ask: Ask; value: Value | null; onAnswer: (value: Value | null) => void }) {
  const { language, units } = useShared();
  const words = formWordsIn(language);
  if (ask.kind !== "choice") return <Question ask={ask} value={value} onAnswer={onAnswer} />;
  const options = ask.values.map((one) => {
    const note = `${one}_note`;
    return { value: one, label: words(one), note: spanOf(one, units) || (isFormWord(note) ? words(note) : undefined) };
  });
  return <Choice legend={words(ask.word)} options={options} value={options.find((one) => one.value === value)?.value ?? null} onChange={onAnswer} />;
}

export function PlaceFold({ seat, name, sheet, figures, isOpen, onAnswer, onRename, onTakeOut }: Props) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const summary = useRef<HTMLElement>(null);
  useEffect(() => {
    if (isOpen) summary.current?.focus({ preventScroll: true }); // the button that was touched is gone
  }, [isOpen]);
  const which = { key: "name", value: name } as const;
  const answer = (changes: readonly Change[]): void => {
    const typed = changes.find(({ key }) => key === "name");
    if (typed) {
      if (typeof typed.value === "string") onRename(typed.value);
    } else onAnswer(changes);
  };
  return (
    <details class="single" open={isOpen}>
      <summary ref={summary}>{words("change_place", { place: name })}</summary>
      {placeAsks(seat).map((ask) => (
        <PlaceQuestion key={ask.key} ask={ask} value={valueIn(sheet, tableOf(ask, which), ask.key)} onAnswer={(value) => answer([{ table: tableOf(ask, which), key: ask.key, value }])} />
      ))}
      <details class="single">
        <summary>{words("place_figures")}</summary>
        <Questions asks={measuredAsks(seat)} which={which} sheet={sheet} onAnswer={answer} />
        <ul class="small">
          {figures.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </details>
      {onTakeOut && (
        <button type="button" onClick={onTakeOut}>
          {words("take_out_place")}
        </button>
      )}
    </details>
  );
}

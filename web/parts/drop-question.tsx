// A drop in millivolts with the load that it was read under: both are kept together, for neither says anything alone.
import { useState } from "preact/hooks";
import { valueIn, type Value } from "../core/sheet.ts";
import { useShared } from "../page/context.ts";
import { tableOf } from "../page/forms/ask.ts";
import type { DropAsk } from "../page/forms/join.ts";
import type { Change } from "../page/use-sheet.ts";
import { formWordsIn } from "../words/form-words.ts";
import { Question } from "./form.tsx";
import { saidOf } from "./said.tsx";

interface Props {
  readonly ask: DropAsk;
  readonly sheet: string;
  readonly usualLoad: Value | null; // of the lamp that was used before
  readonly onAnswer: (changes: readonly Change[]) => void;
}

export function DropQuestion({ ask: { drop, load }, sheet, usualLoad, onAnswer }: Props) {
  const { language, units } = useShared();
  const words = formWordsIn(language);
  const kept = (ask: typeof drop): Value | null => valueIn(sheet, tableOf(ask, null), ask.key);
  const [typed, setTyped] = useState<Value | null>(null); // a drop that waits for its load
  const [chosen, setChosen] = useState<Value | null>(null); // a load that waits for its drop
  const [written, under] = [kept(drop), kept(load)];
  const [mV, A] = [written ?? typed, under ?? chosen ?? usualLoad];
  const say = (one: Value | null, other: Value | null): void => {
    setTyped(one);
    setChosen(other);
    const both = one !== null && other !== null;
    if (both || written !== null) onAnswer([drop, load].map((ask, at) => ({ table: tableOf(ask, null), key: ask.key, value: both ? [one, other][at] ?? null : null })));
  };
  return (
    <div class="drop">
      <Question ask={drop} value={mV} onAnswer={(value) => say(value, A)} />
      <Question ask={load} value={A} onAnswer={(value) => say(mV, value)} />
      {written !== null && under !== null && (
        <p class="answered">{words("drop_under", { drop: saidOf(drop, written, { words, units }), load: saidOf(load, under, { words, units }) })}</p>
      )}
      {mV !== null && A === null && <p class="say">{words("load_first")}</p>}
    </div>
  );
}

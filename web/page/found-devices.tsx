// What somebody fitted before and was found: each with what became of it, and by whose consent.
import { useState } from "preact/hooks";
import { valuesIn } from "../core/sheet.ts";
import { Choice } from "../parts/choice.tsx";
import { Typed } from "../parts/typed.tsx";
import { formWordsIn } from "../words/form-words.ts";
import { useShared } from "./context.ts";
import type { Ask, Which } from "./forms/ask.ts";
import { Questions } from "./questions.tsx";
import type { Answer } from "./use-sheet.ts";

const TABLE = "devices.found";
const FATES = ["left", "removed"] as const;
const ASKS: readonly Ask[] = [
  { kind: "choice", table: TABLE, key: "fate", word: "fate", values: FATES },
  { kind: "text", table: TABLE, key: "consent", word: "consent" },
];

export function FoundDevices({ sheet, onAnswer }: { sheet: string; onAnswer: Answer }) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const [what, setWhat] = useState("");
  const names = valuesIn(sheet, TABLE, "what");
  const which = (value: string): Which => ({ key: "what", value });
  const isNew = what !== "" && !names.includes(what);
  return (
    <section>
      {names.map((name) => (
        <div class="group" key={name}>
          <h3>{name}</h3>
          <Questions asks={ASKS} which={which(name)} sheet={sheet} onAnswer={onAnswer} />
        </div>
      ))}
      <details class="single">
        <summary>{words(names.length > 0 ? "another_found" : "one_found")}</summary>
        <Typed label={words("found_what")} figure={false} value={what} onTyped={(text) => setWhat(text.trim())} />
        {isNew && (
          <Choice
            legend={words("fate")}
            kind="strip"
            options={FATES.map((value) => ({ value, label: words(value) }))}
            value={null}
            onChange={(fate) => {
              onAnswer([{ table: { name: TABLE, where: which(what) }, key: "fate", value: fate }]);
              setWhat("");
            }}
          />
        )}
      </details>
    </section>
  );
}

// One question of a form, as a target that a glove can hit; the answer is kept as soon as it is given.
import { useState } from "preact/hooks";
import { finished } from "../core/figures.ts";
import { fromSheet, toSheet, unitFor } from "../core/units.ts";
import type { Value } from "../core/sheet.ts";
import { useShared } from "../page/context.ts";
import type { Ask } from "../page/forms/ask.ts";
import { formWordsIn } from "../words/form-words.ts";
import { Choice } from "./choice.tsx";
import { ScannedQuestion } from "./scanned.tsx";
import { Typed } from "./typed.tsx";

interface Props {
  readonly ask: Ask;
  readonly value: Value | null;
  readonly expected?: string | null; // what the day's sheet says
  readonly onAnswer: (value: Value | null, how?: string) => void; // `how` a VIN was read
}

export function Question({ ask, value, expected = null, onAnswer }: Props) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const legend = words(ask.word);
  if (ask.kind === "flag") {
    const options = [
      { value: "yes" as const, label: words("yes") },
      { value: "no" as const, label: words("no") },
    ];
    const shown = typeof value === "boolean" ? (value ? "yes" : "no") : null;
    return <Choice legend={legend} kind="strip" options={options} value={shown} onChange={(chosen) => onAnswer(chosen === "yes")} />;
  }
  if (ask.kind === "choice") {
    const options = ask.values.map((one) => ({ value: one, label: words(one) }));
    return <Choice legend={legend} kind="strip" options={options} value={options.find((one) => one.value === value)?.value ?? null} onChange={(chosen) => onAnswer(chosen)} />;
  }
  if (ask.kind === "list") return <ListQuestion legend={legend} value={value} onAnswer={onAnswer} />;
  if (ask.kind === "day") {
    return (
      <label class="typed">
        {legend}
        <input type="date" value={typeof value === "string" ? value : ""} onChange={(event) => onAnswer(event.currentTarget.value || null)} />
      </label>
    );
  }
  if (ask.kind === "text" && ask.scan) return <ScannedQuestion ask={ask} scan={ask.scan} legend={legend} value={value} expected={expected} onAnswer={onAnswer} />;
  return <LineQuestion ask={ask} legend={legend} value={value} onAnswer={onAnswer} />;
}

interface LineProps extends Props {
  readonly legend: string;
}

function LineQuestion({ ask, legend, value, onAnswer }: LineProps) {
  const { units } = useShared();
  const isFigure = ask.kind === "figure";
  const unit = ask.kind === "figure" ? ask.unit : undefined;
  const isDegrees = unit?.startsWith("°"); // the only figures that may lie below nothing; a decimal keypad may lack the sign
  const said = (typed: string): void => {
    const text = typed.trim();
    const isBelow = isDegrees && /^[-−]/.test(text);
    const figure = finished(isBelow ? text.slice(1) : text);
    if (text === "") onAnswer(null);
    else if (!isFigure) onAnswer(text);
    else if (figure !== null) onAnswer(toSheet(isBelow ? `-${figure}` : figure, unit ?? "", units));
  };
  const shown = typeof value === "number" && unit ? fromSheet(value, unit, units) : value === null ? "" : String(value);
  return (
    <div class="question">
      <Typed label={unit ? `${legend} [${unitFor(unit, units)}]` : legend} figure={isFigure && !isDegrees} value={shown} onTyped={said} />
    </div>
  );
}

/** 'none' by one touch, or what there was, in words. */
function ListQuestion({ legend, value, onAnswer }: Omit<LineProps, "ask">) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const none = value === "none";
  const listed = Array.isArray(value) ? value.join(", ") : "";
  const [naming, setNaming] = useState(false);
  const options = [
    { value: "none" as const, label: words("none") },
    { value: "some" as const, label: words("something") },
  ];
  const choose = (chosen: "none" | "some"): void => {
    setNaming(chosen === "some");
    if (chosen === "none") onAnswer("none");
  };
  const split = (typed: string): void => {
    const items = typed.split(",").map((item) => item.trim()).filter(Boolean);
    onAnswer(items.length > 0 ? items : null);
  };
  const some = naming || listed !== "";
  return (
    <>
      <Choice legend={legend} kind="strip" options={options} value={some ? "some" : none ? "none" : null} onChange={choose} />
      {some && <Typed label={words("separated")} figure={false} value={listed} onTyped={split} />}
    </>
  );
}

// A number that is read off a plate or a label: by the camera, or typed; what the day's sheet says stands beside it.
import { useEffect, useState } from "preact/hooks";
import { isSameCode, likelySerials, likelyVins, restOf } from "../core/scanned.ts";
import type { Value } from "../core/sheet.ts";
import { useShared } from "../page/context.ts";
import type { Ask } from "../page/forms/ask.ts";
import { setting } from "../store/settings.ts";
import { formWordsIn } from "../words/form-words.ts";
import { Scanner } from "./scanner.tsx";
import { Typed } from "./typed.tsx";

interface Props {
  readonly ask: Ask;
  readonly scan: "vin" | "serial";
  readonly legend: string;
  readonly value: Value | null;
  readonly expected: string | null;
  readonly onAnswer: (value: Value | null, how?: string) => void;
}

/** Of a VIN its last six characters may be typed: then whoever reads says by a touch that the rest was compared. */
export function ScannedQuestion({ scan, legend, value, expected, onAnswer }: Props) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const [scanning, setScanning] = useState(false);
  const [rest, setRest] = useState<string | null>(null);
  const [others, setOthers] = useState<readonly string[]>([]); // that stood on the label beside what was taken
  const [known, setKnown] = useState<readonly string[]>([]);
  useEffect(() => void setting("serials").then((found) => setKnown((found ?? []).map(({ serial }) => serial))), []);
  const isVin = scan === "vin";
  const read = typeof value === "string" ? value : "";
  const say = (text: string, how: "scanned" | "typed" | "last_six"): void => {
    setRest(null);
    setOthers([]);
    if (isVin) onAnswer(text === "" ? null : text, how);
    else onAnswer(text === "" ? null : text);
  };
  const typed = (text: string): void => {
    const before = isVin ? restOf(text, expected) : null;
    if (before === null) say(text.trim(), "typed");
    else setRest(before);
  };
  return (
    <div class="question scanned">
      <Typed label={legend} figure={false} value={read} onTyped={typed} />
      {!scanning && (
        <button type="button" class={read === "" ? "main" : ""} onClick={() => setScanning(true)} aria-label={`${words("scan")}: ${legend}`}>
          {words("scan")}
        </button>
      )}
      {scanning && (
        <Scanner
          choose={(codes) => (isVin ? likelyVins(codes, expected) : likelySerials(codes, expected, known))}
          onRead={(text, beside) => {
            setScanning(false);
            say(text.trim(), "scanned");
            setOthers(beside);
          }}
          onClose={() => setScanning(false)}
        />
      )}
      {others.map((other) => (
        <button
          type="button"
          class="wide"
          key={other}
          onClick={() => {
            say(other, "scanned");
            setOthers([...others.filter((one) => one !== other), read]);
          }}
        >
          {words("take_instead", { code: other })}
        </button>
      ))}
      {rest !== null && expected !== null && (
        <button type="button" class="wide" onClick={() => say(expected, "last_six")}>
          {words("rest_reads", { rest })}
        </button>
      )}
      {expected !== null && (
        <p class="expected">
          {words("on_sheet")} <b>{expected}</b> {read === "" ? isVin && rest === null && words("last_six") : words(isSameCode(read, expected) ? "as_on_sheet" : "not_as_on_sheet")}
        </p>
      )}
    </div>
  );
}

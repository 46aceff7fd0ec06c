// A phone becomes one of the crew's: by the square code that the desk shows, or by typing its letters.
import { useEffect, useState } from "preact/hooks";
import { enrolHere } from "../sync/enrol.ts";
import { Refused } from "../sync/server.ts";
import { Scanner } from "../parts/scanner.tsx";
import { Top } from "../parts/top.tsx";
import { useShared } from "./context.ts";
import { goTo } from "./place.ts";

/** The code itself, out of what was scanned or typed: an address ending in #enrol=CODE, or the code. */
export function codeIn(text: string): string {
  const marked = text.split("#enrol=")[1];
  return decodeURIComponent(marked ?? text).trim();
}

export function Enrol({ code: given, onEnrolled }: { code: string; onEnrolled: () => void }) {
  const { words, setLanguage } = useShared();
  const [code, setCode] = useState(given);
  const [label, setLabel] = useState("");
  const [scanning, setScanning] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  useEffect(() => setCode(given || code), [given]);
  const enrol = async (): Promise<void> => {
    setBusy(true);
    try {
      setLanguage((await enrolHere(codeIn(code), label.trim() || words("phone"))).language);
      onEnrolled();
      goTo({ name: "today" });
    } catch (problem) {
      setFault(problem instanceof Refused ? words("enrol_bad", { why: problem.message }) : words("enrol_no_line"));
    } finally {
      setBusy(false);
    }
  };
  return (
    <>
      <Top title={words("enrol_title")} />
      <main>
        <p class="say">{words("enrol_say")}</p>
        {scanning ? (
          <Scanner
            onRead={(text) => {
              setCode(codeIn(text));
              setScanning(false);
            }}
            onClose={() => setScanning(false)}
          />
        ) : (
          <button type="button" class="wide" onClick={() => setScanning(true)}>
            {words("enrol_scan")}
          </button>
        )}
        <form
          class="lines"
          onSubmit={(event) => {
            event.preventDefault();
            void enrol();
          }}
        >
          <label>
            {words("enrol_code")}
            <input value={code} autoCapitalize="characters" autoComplete="off" spellcheck={false} required onInput={(event) => setCode(event.currentTarget.value)} />
          </label>
          <label>
            {words("enrol_label")}
            <input value={label} autoComplete="off" onInput={(event) => setLabel(event.currentTarget.value)} />
          </label>
          {fault && (
            <p class="fault" role="alert">
              {fault}
            </p>
          )}
          <button type="submit" class="main wide" disabled={busy || code.trim() === ""}>
            {words("enrol_do")}
          </button>
        </form>
      </main>
    </>
  );
}

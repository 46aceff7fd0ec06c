// The unit's lights: all as its sheet states by one touch, or each by what was seen.
import { useEffect, useState } from "preact/hooks";
import { text } from "../core/standing.ts";
import { useKeeping, useShared } from "../page/context.ts";
import type { NewEntry, OpenJob } from "../page/use-job.ts";
import type { Light } from "../page/use-proof.ts";
import { Choice } from "./choice.tsx";

const DARK = "dark"; // as it stands in the journal

export function Lights({ lights, open }: { lights: readonly Light[]; open: OpenJob }) {
  const { words } = useShared();
  const keeping = useKeeping();
  const stated = lights.filter((one) => one.pattern !== null);
  if (stated.length === 0) return null;
  const unseen = stated.filter((one) => one.seen === null);
  const say = (seen: readonly (readonly [Light, string])[]): void => void keeping(() => open.write(seen.map(([light, pattern]) => lightEntry(open, light.light, pattern))));
  return (
    <section class="lights">
      <h2>{words("lights")}</h2>
      <ul>
        {stated.map((one) => (
          <li key={one.light}>
            <b>{[one.light, one.colour].filter(Boolean).join(", ")}</b>: {one.pattern}
            {one.means && ` (${one.means})`}
            {one.seen !== null && <b> – {one.seen === one.pattern ? words("as_stated") : words("seen_so", { pattern: one.seen === DARK ? words("light_dark") : one.seen })}</b>}
          </li>
        ))}
      </ul>
      {unseen.length > 0 && (
        <button type="button" class="wide" onClick={() => say(unseen.map((one) => [one, one.pattern ?? ""] as const))}>
          {words(unseen.length === 1 ? "light_as_stated" : "lights_as_stated")}
        </button>
      )}
      <details class="single">
        <summary>{words("light_by_light")}</summary>
        {stated.map((one) => (
          <OneLight key={one.light} light={one} onSay={(pattern) => say([[one, pattern]])} />
        ))}
      </details>
    </section>
  );
}

function OneLight({ light, onSay }: { light: Light; onSay: (pattern: string) => void }) {
  const { words } = useShared();
  const { pattern, seen } = light;
  const is = seen === null ? null : seen === pattern ? ("stated" as const) : seen === DARK ? ("dark" as const) : ("other" as const);
  const other = is === "other" ? (seen ?? "") : "";
  const [typed, setTyped] = useState(other); // what is being typed stays, whatever comes in meanwhile
  useEffect(() => setTyped(other), [other]);
  const options = [
    { value: "stated" as const, label: words("as_stated") },
    { value: "dark" as const, label: words("light_dark") },
  ];
  return (
    <>
      <Choice legend={light.light} kind="strip" options={options} value={is === "other" ? null : is} onChange={(chosen) => onSay(chosen === "dark" ? DARK : (pattern ?? ""))} />
      <label class="typed">
        {words("light_other", { light: light.light })}
        <input value={typed} autoComplete="off" onInput={(event) => setTyped(event.currentTarget.value)} onBlur={() => typed.trim() !== "" && typed.trim() !== other && onSay(typed.trim())} />
      </label>
    </>
  );
}

/** What was seen of a light, as a row of lights.csv says it; in place of what was seen of it before. */
function lightEntry({ said }: OpenJob, light: string, pattern: string): NewEntry {
  const body = { file: null, line: null, light, pattern, after_s: null };
  const before = said.filter((one) => one.kind === "light_seen" && text(one.body, "light") === light).map((one) => one.id);
  return before.length === 0 ? { kind: "light_seen", body } : { kind: "correction", body: { replaces: before, kind: "light_seen", body } };
}

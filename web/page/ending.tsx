// How the job ends: what the engine says is possible stands first and is one touch; anything else is folded beneath.
import { valueIn, valuesIn } from "../core/sheet.ts";
import { formWordsIn, isFormWord, type FormWords } from "../words/form-words.ts";
import { useShared } from "./context.ts";
import type { Around } from "./forms/offer.ts";
import { END, endsSo, LACKS, namesAll, OWED, owedOf, type Owed } from "./forms/hand-over.ts";
import type { Ends, Judgement, Lack } from "./judgement.ts";
import { Questions } from "./questions.tsx";
import type { OpenJob } from "./use-job.ts";
import type { Answer } from "./use-sheet.ts";

interface Props {
  readonly open: OpenJob;
  readonly judged: Judgement | null;
  readonly around: Around;
  readonly onAnswer: Answer;
}

export function Ending({ open, judged, around, onAnswer }: Props) {
  const { words, language } = useShared();
  const asked = formWordsIn(language);
  const { sheet } = around;
  const end = endIn(sheet);
  const owed = judged ? owedOf(judged.ends, sheet, { owed_by: yardOf(around) ?? asked("the_yard"), now: new Date() }) : [];
  const isSaid = judged !== null && end === judged.ends.can && (end !== "provisional" || namesAll(owed, sheet));
  return (
    <section class="ending">
      <h2>{asked("hand_over")}</h2>
      {end !== null && <p class="answered">{asked("ends_as", { end: endWord(end, asked) })}</p>}
      {judged === null && <p class="say">{words("judging")}</p>}
      {judged && end !== null && (judged.ends.hindered ?? []).length > 0 && <Hindered end={endWord(end, asked)} why={judged.ends.hindered ?? []} />}
      {judged && !isSaid && <Possible ends={judged.ends} owed={owed} wait={open.behind} onEnd={(so) => onAnswer(endsSo(so, owed, sheet))} />}
      {isSaid && end === "provisional" && <OwedList owed={owed} lacks={judged?.ends.lacks ?? []} />}
      <details class="single">
        <summary>{asked("another_end")}</summary>
        <Questions asks={END} which={null} sheet={sheet} onAnswer={onAnswer} />
        {end === "provisional" && <ByHand sheet={sheet} lacks={judged?.ends.lacks ?? []} onAnswer={onAnswer} />}
      </details>
    </section>
  );
}

/** What is possible now, on one button; where something fails there is none. */
function Possible({ ends, owed, wait, onEnd }: { ends: Ends; owed: readonly Owed[]; wait: boolean; onEnd: (end: "proven" | "provisional") => void }) {
  const { language } = useShared();
  const asked = formWordsIn(language);
  const { can } = ends;
  if (can === "abandoned") {
    return (
      <>
        <p>{asked(ends.fails.length > 0 ? "can_abandoned" : "nothing_looked_at")}</p>
        <Sentences said={ends.fails.length > 0 ? ends.fails : ends.not_proven} />
      </>
    );
  }
  return (
    <div class="at-once">
      <p>{asked(can === "proven" ? "can_proven" : "can_provisional")}</p>
      {can === "provisional" && <OwedList owed={owed} lacks={ends.lacks} />}
      <button type="button" class="wide" disabled={wait} onClick={() => onEnd(can)}>
        {asked(can === "proven" ? "end_proven" : "end_provisional")}
      </button>
      {can === "provisional" && (
        <details class="single">
          <summary>{asked("not_proven")}</summary>
          <Sentences said={ends.not_proven} />
        </details>
      )}
    </div>
  );
}

function OwedList({ owed, lacks }: { owed: readonly Owed[]; lacks: readonly Lack[] }) {
  const { language } = useShared();
  const asked = formWordsIn(language);
  return (
    <dl class="given owed">
      {owed.map((one) => (
        <div key={one.what}>
          <dt>{lackWord(one.what, asked, lacks)}</dt>
          <dd>{asked("owed_line", { who: one.owed_by, day: dayWord(one.until, language) })}</dd>
        </div>
      ))}
    </dl>
  );
}

function Hindered({ end, why }: { end: string; why: readonly string[] }) {
  const { language } = useShared();
  return (
    <div class="fault" role="alert">
      <p>{formWordsIn(language)("hindered", { end })}</p>
      <Sentences said={why} />
    </div>
  );
}

/** The engine's own sentences. */
function Sentences({ said }: { said: readonly string[] }) {
  return (
    <ul class="sentences">
      {said.map((one) => (
        <li key={one}>{one}</li>
      ))}
    </ul>
  );
}

/** Who owes each thing, and until when, one by one. */
function ByHand({ sheet, lacks, onAnswer }: { sheet: string; lacks: readonly Lack[]; onAnswer: Answer }) {
  const { language } = useShared();
  const asked = formWordsIn(language);
  const named = valuesIn(sheet, "hand_over.missing", "what");
  const all = [...named, ...Object.keys(LACKS).filter((what) => !named.includes(what))];
  return (
    <>
      {all.map((what) => (
        <fieldset key={what} class="owes">
          <legend>
            {asked("missing")}: {lackWord(what, asked, lacks)}
          </legend>
          <Questions asks={OWED} which={{ key: "what", value: what }} sheet={sheet} onAnswer={onAnswer} />
        </fieldset>
      ))}
    </>
  );
}

/** The end that the sheet states; null where it states none. */
export function endIn(sheet: string): string | null {
  const end = valueIn(sheet, { name: "hand_over" }, "end");
  return typeof end === "string" ? end : null;
}

/** An end in words. */
export const endWord = (end: string, asked: FormWords): string => (isFormWord(end) ? asked(end) : end);

function lackWord(what: string, asked: FormWords, lacks: readonly Lack[]): string {
  const word = (LACKS as Readonly<Record<string, string>>)[what];
  return word !== undefined && isFormWord(word) ? asked(word) : (lacks.find((lack) => lack.what === what)?.said ?? what);
}

function dayWord(day: string, language: string): string {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(day)?.slice(1).map(Number);
  if (!parts) return day;
  const [year, month, date] = parts as [number, number, number];
  return new Intl.DateTimeFormat(language, { weekday: "short", day: "numeric", month: "long" }).format(new Date(year, month - 1, date));
}

function yardOf({ jobSheet, job }: Around): string | null {
  const yard = valueIn(jobSheet, { name: "job" }, "yard");
  return typeof yard === "string" && yard !== "" ? yard : (job?.place?.name ?? null);
}

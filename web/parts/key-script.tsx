// The turns of the key: the one that is due as one large button, those that were done with what the unit reported, those to come.
import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { clockText, follow, left_s, type Step } from "../core/key-plan.ts";
import { text, type Said } from "../core/standing.ts";
import { useShared } from "../page/context.ts";
import type { ProvedTurn } from "../page/judgement.ts";
import { useEngine } from "../page/use-engine.ts";
import { useNow } from "../page/use-proof.ts";
import type { Word } from "../words/en.ts";
import { named } from "../words/words.ts";
import { VerdictShape } from "./verdict.tsx";

export const TURNS = ["off", "accessory", "on", "crank", "running", "unlock", "doors_open", "doors_shut"] as const;
export type Turn = (typeof TURNS)[number];

const STEADY_MS = 1_000; // after a turn, so that a second touch on the same spot stamps no other
const SHAPE_OF = { matched: "holds", missing: "fails", open: "open" } as const;

interface Props {
  readonly plan: readonly Step[] | null; // null while the engine has not said it
  readonly refused: string | null; // why it says none
  readonly turns: readonly Said[]; // in the order of time
  readonly proved: readonly ProvedTurn[]; // of the same turns, or none
  readonly onTurn: (key: Turn) => void;
  readonly onTakeBack: (turn: Said) => void;
  readonly children: ComponentChildren; // what the unit says, beneath the turn that is due
}

export function KeyScript({ plan, refused, turns, proved, onTurn, onTakeBack, children }: Props) {
  const { words } = useShared();
  const now = useNow();
  const state = useEngine();
  const why = state.name === "failed" ? words("engine_failed", { why: state.why }) : refused;
  const last = turns.at(-1);
  const since = last ? text(last.body, "t") : null;
  const followed = plan ? follow(plan, turns.map((turn) => text(turn.body, "key"))) : null;
  const left = followed?.hold_s && since ? left_s(followed.hold_s, since, now) : 0;
  const steady = since === null || now - Date.parse(since) >= STEADY_MS || now < Date.parse(since);
  const at = followed?.next ?? null;
  const due = plan !== null && at !== null ? (plan[at]?.key as Turn) : null;
  const isCranked = at !== null && plan?.[at - 1]?.key === "crank";
  return (
    <>
      <section class="next">
        {plan === null && <p class="key-turn say">{why ?? words("plan_coming")}</p>}
        {plan !== null && due === null && <p class="do">{left > 0 ? words("script_wait", { left: clockText(left) }) : words("script_done")}</p>}
        {due === "crank" && <p class="caution">{words("caution_crank")}</p>}
        {due && (
          <button type="button" class={left > 0 ? "key-turn" : "key-turn main"} disabled={!steady} onClick={() => onTurn(due)}>
            <span class="when">{left > 0 ? words("turn_in", { left: clockText(left) }) : words("turn_now")}</span>
            <b>{doing(words, due)}</b>
            {hintOf(plan ?? [], at ?? 0) && <span>{words(hintOf(plan ?? [], at ?? 0) as Word)}</span>}
          </button>
        )}
        {due === "running" && isCranked && (
          <button type="button" disabled={!steady} onClick={() => onTurn("on")}>
            {words("start_failed")}
          </button>
        )}
        <p class="unseen" role="status">{due && left === 0 ? `${words("turn_now")} ${doing(words, due)}` : ""}</p>
      </section>
      <details class="single" open={plan === null && why !== null}>
        <summary>{words("something_else")}</summary>
        <div class="turns">
          {TURNS.map((key) => (
            <button type="button" key={key} disabled={!steady} onClick={() => onTurn(key)}>
              {named(words, "turn", key)}
            </button>
          ))}
        </div>
      </details>
      {children}
      <Done turns={turns} proved={proved} onTakeBack={onTakeBack} />
      {plan !== null && at !== null && <ToCome steps={plan.slice(at + 1)} />}
    </>
  );
}

const doing = (words: ReturnType<typeof useShared>["words"], key: string): string => named(words, "do", key);

/** What the hand has to mind at a step; null where the word of the step says all. */
function hintOf(plan: readonly Step[], at: number): Word | null {
  const key = plan[at]?.key;
  if (key === "off") return plan[at + 1]?.key === "doors_shut" ? "hint_off_last" : null;
  if (key === "on") return "hint_on";
  return key === "accessory" ? "hint_accessory" : key === "doors_shut" ? "hint_doors_shut" : null;
}

interface DoneProps {
  readonly turns: readonly Said[];
  readonly proved: readonly ProvedTurn[];
  readonly onTakeBack: (turn: Said) => void;
}

/** The turns that were stamped, each with what came of it; the last can be taken back, any other after one touch more. */
function Done({ turns, proved, onTakeBack }: DoneProps) {
  const { words, language } = useShared();
  const [all, setAll] = useState(false);
  const clock = new Intl.DateTimeFormat(language, { hour: "2-digit", minute: "2-digit", second: "2-digit", hourCycle: "h23" });
  const isTold = proved.length === turns.length;
  const last = turns.at(-1);
  return (
    <>
      <ol class="stamped" aria-live="polite">
        {turns.map((turn, at) => (
          <li key={turn.id}>
            <time dateTime={text(turn.body, "t")}>{clock.format(new Date(text(turn.body, "t")))}</time>
            <b>{named(words, "turn", text(turn.body, "key"))}</b>
            {isTold && <State turn={proved[at]} />}
            {all && (
              <button type="button" class="plain" onClick={() => onTakeBack(turn)}>
                {words("take_back")}
              </button>
            )}
          </li>
        ))}
      </ol>
      {last && !all && (
        <div class="row">
          <button type="button" class="plain" onClick={() => onTakeBack(last)}>
            {words("take_back_turn", { turn: named(words, "turn", text(last.body, "key")) })}
          </button>
          {turns.length > 1 && (
            <button type="button" class="plain" onClick={() => setAll(true)}>
              {words("put_right")}
            </button>
          )}
        </div>
      )}
    </>
  );
}

function State({ turn }: { turn: ProvedTurn | undefined }) {
  const { words } = useShared();
  if (!turn || (turn.expected === "none" && turn.state === "matched")) return null;
  return (
    <span class="verdict">
      <VerdictShape verdict={SHAPE_OF[turn.state]} />
      {words(turn.state === "matched" ? `reported_${turn.expected === "on" ? "on" : "off"}` : `turn_${turn.state}`)}
    </span>
  );
}

function ToCome({ steps }: { steps: readonly Step[] }) {
  const { words } = useShared();
  if (steps.length === 0) return null;
  return (
    <p class="small">
      {words("then_turns")} {steps.map(({ key }) => named(words, "turn", key)).join(" → ")}
    </p>
  );
}

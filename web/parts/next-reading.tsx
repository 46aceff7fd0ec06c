// What to measure next, as the engine says it, in the words of whoever reads it.
import { useShared } from "../page/context.ts";
import type { Judgement } from "../page/judgement.ts";
import { useEngine } from "../page/use-engine.ts";
import type { OpenJob } from "../page/use-job.ts";
import { named, type Words } from "../words/words.ts";

export function NextReadingCard({ open: { judgement, behind } }: { open: OpenJob }) {
  const { words } = useShared();
  const state = useEngine();
  if (judgement?.ok) {
    const { sentence, why } = asked(judgement, words);
    return (
      <section class={behind ? "next behind" : "next"} aria-live="polite">
        <p class="do">{sentence}</p>
        {why && <p class="why">{why}</p>}
      </section>
    );
  }
  const text = judgement
    ? words("refused_job", { why: judgement.error })
    : state.name === "failed"
      ? words("engine_failed", { why: state.why })
      : state.name === "ready"
        ? words("judging")
        : words("engine_starting");
  return (
    <section class="next" aria-live="polite">
      <p class="say">{text}</p>
    </section>
  );
}

/** The next reading; where none is asked for, what else the wires want. */
function asked({ next_reading: next, findings }: Judgement, words: Words): { sentence: string; why: string | null } {
  if (next) {
    const at = words(`at_${next.key}`);
    const how = named(words, "capture", next.capture);
    const sentence = next.wire === null ? words("next_other", { at }) : words("next_probe", { wire: next.wire, at, how });
    return { sentence, why: next.why };
  }
  const owed = ["fails", "open"].flatMap((verdict) => findings.filter((one) => one.stage === "probe" && one.verdict === verdict && one.next));
  return { sentence: words("next_none"), why: owed[0]?.next ?? null };
}

// What to measure next, as the engine says it, in the words of whoever reads it; where the key must stand, large.
import { undoneOn } from "../core/onward.ts";
import { useShared } from "../page/context.ts";
import type { Judgement, NextReading } from "../page/judgement.ts";
import { addressOf } from "../page/place.ts";
import { useEngine } from "../page/use-engine.ts";
import type { OpenJob } from "../page/use-job.ts";
import { named, type Words } from "../words/words.ts";

const SHOWN = 2; // of what the wires still want

interface Props {
  readonly open: OpenJob;
  readonly lamp: string; // of whoever measures [A]; empty where it is not known
}

export function NextReadingCard({ open, lamp }: Props) {
  const { words } = useShared();
  const state = useEngine();
  const { judgement, behind } = open;
  if (judgement?.ok) {
    const next = judgement.next_reading;
    return (
      <section class={behind ? "next now behind" : "next now"} aria-live="polite">
        {next ? <Asked next={next} lamp={lamp} /> : <NothingMore judgement={judgement} open={open} />}
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

function Asked({ next, lamp }: { next: NextReading; lamp: string }) {
  const { words } = useShared();
  return (
    <>
      <p class="do">
        <span class="turn">{words(`turn_to_${next.key}`)}</span> {sentence(next, lamp, words)}
      </p>
      <p class="why">{next.why}</p>
    </>
  );
}

function sentence(next: NextReading, lamp: string, words: Words): string {
  if (next.wire === null) return words("next_other", { at: words(`at_${next.key}`) });
  if (next.loaded) return words("next_probe_how", { wire: next.wire, how: words("under_lamp", { lamp: lamp || "1–2" }) });
  if (next.capture === "display") return words("next_probe", { wire: next.wire });
  return words("next_probe_how", { wire: next.wire, how: named(words, "capture", next.capture) });
}

/** No reading leads further: on to the joints, unless something fails; what else the wires want is said. */
function NothingMore({ judgement: { findings }, open }: { judgement: Judgement; open: OpenJob }) {
  const { words } = useShared();
  const there = findings.filter((one) => one.stage === "probe");
  const wanted = ["fails", "open"].flatMap((verdict) => there.flatMap((one) => (one.verdict === verdict && one.next ? [one.next] : [])));
  const isStuck = there.some((one) => one.verdict === "fails");
  return (
    <>
      <p class="do">{words(undoneOn("probe", findings).length === 0 ? "wires_proven" : "next_none")}</p>
      {[...new Set(wanted)].slice(0, SHOWN).map((each) => (
        <p key={each} class="why">
          {each}
        </p>
      ))}
      {!isStuck && open.job && (
        <a class="button main wide" href={addressOf({ name: "stage", job: open.job.id, stage: "join" })}>
          {words("on_to", { stage: words("stage_join") })}
        </a>
      )}
    </>
  );
}

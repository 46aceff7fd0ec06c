// One job: the one next thing to do, and how each stage stands.
import { useState } from "preact/hooks";
import { stageNamed } from "../core/onward.ts";
import { Findings } from "../parts/findings.tsx";
import { Top, Troubles } from "../parts/top.tsx";
import { VerdictMark } from "../parts/verdict.tsx";
import { named } from "../words/words.ts";
import { useShared } from "./context.ts";
import { WORST_FIRST, type Finding, type Judgement } from "./judgement.ts";
import { addressOf, STAGE_NAMES } from "./place.ts";
import { vehicleName } from "./today.tsx";
import { useJob, type OpenJob } from "./use-job.ts";
import { useEngine } from "./use-engine.ts";

const LONG = 40; // letters, from which on what else is said is set small
const STAGES = ["walkround", "probe", "join", "mount", "prove", "hand over"];

export function JobPage({ id }: { id: string }) {
  const { words } = useShared();
  const open = useJob(id);
  const { job, judgement } = open;
  const due = judgement?.ok ? stageNamed(judgement.next_stage) : null;
  return (
    <>
      <Top title={job ? vehicleName(job) : words("loading")} back={{ name: "today" }} />
      <main>
        <Troubles />
        <section class="next">
          <h2>{words("next_title")}</h2>
          <NextThing open={open} />
          {due && (
            <a class="button main wide" href={addressOf({ name: "stage", job: id, stage: due })}>
              {words("on_to", { stage: named(words, "stage", due) })}
            </a>
          )}
        </section>
        <nav class="stages" aria-label={words("stages")}>
          {STAGE_NAMES.map((stage) => (
            <a key={stage} class="button" href={addressOf({ name: "stage", job: id, stage })}>
              {named(words, "stage", stage)}
            </a>
          ))}
        </nav>
        {judgement?.ok && <Stages open={open} judgement={judgement} />}
      </main>
    </>
  );
}

function NextThing({ open: { judgement, behind } }: { open: OpenJob }) {
  const { words } = useShared();
  const state = useEngine();
  if (judgement?.ok) {
    const [first, rest] = parted(judgement.next ?? words("next_none"));
    return (
      <p class={behind ? "do behind" : "do"} aria-live="polite">
        {first}
        {rest && <span class="rest">{rest}</span>}
      </p>
    );
  }
  if (judgement) return <p class="say">{words("refused_job", { why: judgement.error })}</p>;
  if (state.name === "failed") return <p class="fault">{words("engine_failed", { why: state.why })}</p>;
  return <p class="say">{words("engine_starting")}</p>;
}

/** The first thing that a sentence asks for, and what else it says: what to mind, and what comes of it. */
function parted(next: string): [string, string] {
  const end = next.search(/[;:] /u) + 1;
  return end > 0 && next.length - end > LONG ? [next.slice(0, end), next.slice(end)] : [next, ""];
}

function Stages({ open, judgement }: { open: OpenJob; judgement: Judgement }) {
  const { words } = useShared();
  const found = (stage: string): readonly Finding[] => judgement.findings.filter((finding) => finding.stage === stage);
  return (
    <section>
      <h2>{words("findings")}</h2>
      {STAGES.filter((stage) => found(stage).length > 0).map((stage) => (
        <StageFindings key={stage} stage={stage} findings={found(stage)} all={judgement.findings} open={open} />
      ))}
    </section>
  );
}

interface StageProps {
  readonly stage: string;
  readonly findings: readonly Finding[];
  readonly all: readonly Finding[];
  readonly open: OpenJob;
}

function StageFindings({ stage, findings, all, open }: StageProps) {
  const { words } = useShared();
  const [shown, setShown] = useState(false);
  const verdict = WORST_FIRST.find((one) => findings.some((finding) => finding.verdict === one)) ?? "open";
  return (
    <details class="stage" onToggle={(event) => setShown(event.currentTarget.open)}>
      <summary>
        <b>{named(words, "stage", stage)}</b> <VerdictMark verdict={verdict} />
      </summary>
      {shown && <Findings findings={findings} all={all} open={open} />}
    </details>
  );
}

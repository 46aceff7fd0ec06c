// One job: the one next thing to do, and how each stage stands.
import { useEffect, useState } from "preact/hooks";
import { Top, Troubles } from "../parts/top.tsx";
import { VerdictMark, VerdictShape } from "../parts/verdict.tsx";
import { named } from "../words/words.ts";
import { useShared } from "./context.ts";
import { engine } from "./engine.ts";
import type { Finding, Judgement, Verdict } from "./judgement.ts";
import { addressOf } from "./place.ts";
import { vehicleName } from "./today.tsx";
import { question, useJob, type OpenJob } from "./use-job.ts";
import { useEngine } from "./use-engine.ts";

const STAGES = ["walkround", "probe", "join", "mount", "prove", "hand over"];
const WORST_FIRST: readonly Verdict[] = ["fails", "open", "thin", "holds"];

export function JobPage({ id }: { id: string }) {
  const { words } = useShared();
  const open = useJob(id);
  const { job, judgement } = open;
  return (
    <>
      <Top title={job ? vehicleName(job) : words("loading")} back={{ name: "today" }} />
      <main>
        <Troubles />
        <section class="next">
          <h2>{words("next_title")}</h2>
          <NextThing open={open} />
          <a class="button main wide" href={addressOf({ name: "probe", job: id })}>
            {words("go_probe")}
          </a>
        </section>
        {judgement?.ok && <Stages open={open} judgement={judgement} />}
      </main>
    </>
  );
}

function NextThing({ open: { judgement, behind } }: { open: OpenJob }) {
  const { words } = useShared();
  const state = useEngine();
  if (judgement?.ok) {
    return (
      <p class={behind ? "do behind" : "do"} lang="en" aria-live="polite">
        {judgement.next ?? words("next_none")}
      </p>
    );
  }
  if (judgement) return <p class="say">{words("refused_job", { why: judgement.error })}</p>;
  if (state.name === "failed") return <p class="fault">{words("engine_failed", { why: state.why })}</p>;
  return <p class="say">{words("engine_starting")}</p>;
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
  const bars = useBars(open, shown);
  const verdict = WORST_FIRST.find((one) => findings.some((finding) => finding.verdict === one)) ?? "open";
  const worstFirst = [...findings].sort((a, b) => WORST_FIRST.indexOf(a.verdict) - WORST_FIRST.indexOf(b.verdict));
  return (
    <details class="stage" onToggle={(event) => setShown(event.currentTarget.open)}>
      <summary>
        <b>{named(words, "stage", stage)}</b> <VerdictMark verdict={verdict} />
      </summary>
      {shown && (
        <ul class="findings">
          {worstFirst.map((finding) => (
            <FindingLine key={all.indexOf(finding)} finding={finding} bar={bars[String(all.indexOf(finding))]} />
          ))}
        </ul>
      )}
    </details>
  );
}

function FindingLine({ finding, bar }: { finding: Finding; bar: string | undefined }) {
  const { words } = useShared();
  return (
    <li lang="en">
      <p class="what">
        <VerdictShape verdict={finding.verdict} /> <b>{finding.what}</b> <span class="word">{named(words, "verdict", finding.verdict)}</span>
      </p>
      {bar && <Bar svg={bar} />}
      <p>{finding.because}</p>
      {finding.next && <p class="then">→ {finding.next}</p>}
    </li>
  );
}

/** The engine's own picture; it stands on paper in the dark, too. */
function Bar({ svg }: { svg: string }) {
  return <div class="picture" dangerouslySetInnerHTML={{ __html: svg }} />;
}

/** The margin bars by the finding's place in the list; asked for only while somebody looks. */
function useBars({ entries, said }: OpenJob, wanted: boolean): Readonly<Record<string, string>> {
  const [bars, setBars] = useState<Readonly<Record<string, string>>>({});
  useEffect(() => {
    if (!wanted || !entries) return;
    void (async () => {
      const text = await engine().ask("margin_bars", await question(entries, said));
      const told = text === null ? null : (JSON.parse(text) as { ok: boolean; bars: Record<string, string> });
      if (told?.ok) setBars(told.bars);
    })();
  }, [wanted, entries]);
  return bars;
}

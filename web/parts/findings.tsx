// Findings as a list, worst first, each with the engine's own margin bar.
import { useEffect, useId, useState } from "preact/hooks";
import { isOther, shownIn, unitFor } from "../core/units.ts";
import { useShared } from "../page/context.ts";
import { engine } from "../page/engine.ts";
import { WORST_FIRST, type Finding } from "../page/judgement.ts";
import { question, type OpenJob } from "../page/use-job.ts";
import { named } from "../words/words.ts";
import { VerdictShape } from "./verdict.tsx";

interface Props {
  readonly findings: readonly Finding[]; // those that are shown
  readonly all: readonly Finding[]; // all of the job: bars go by the place in this list
  readonly open: OpenJob;
}

export function Findings({ findings, all, open }: Props) {
  const bars = useBars(open);
  const worstFirst = [...findings].sort((a, b) => WORST_FIRST.indexOf(a.verdict) - WORST_FIRST.indexOf(b.verdict));
  return (
    <ul class="findings">
      {worstFirst.map((finding) => (
        <FindingLine key={all.indexOf(finding)} finding={finding} bar={bars[String(all.indexOf(finding))]} />
      ))}
    </ul>
  );
}

function FindingLine({ finding, bar }: { finding: Finding; bar: string | undefined }) {
  const { words } = useShared();
  return (
    <li>
      <p class="what">
        <VerdictShape verdict={finding.verdict} /> <b>{finding.what}</b> <span class="word">{named(words, "verdict", finding.verdict)}</span>
      </p>
      {bar && <Bar svg={bar} />}
      <InOwnUnits finding={finding} />
      <p>{finding.because}</p>
      {finding.next && <p class="then">→ {finding.next}</p>}
    </li>
  );
}

/** The figures once more in the person's own unit, where the engine's is another; its sentences stay as it says them. */
function InOwnUnits({ finding: { value, low, high, unit, limit } }: { finding: Finding }) {
  const { words, language, units } = useShared();
  if (value === null || !isOther(unit, units)) return null;
  const shown = (figure: number): string => shownIn(figure, unit, units);
  const range = low !== null && high !== null && low !== high ? ` (${shown(low)} – ${shown(high)})` : "";
  const side = limit && ` · ${words(limit.side === "at least" ? "at_least" : "at_most")} ${shown(limit.value)}`;
  return (
    <p class="own" lang={language}>
      <b>
        {shown(value)} {unitFor(unit, units)}
      </b>
      {range}
      {side}
    </p>
  );
}

/** The engine's own picture; it stands on paper in the dark, too. */
function Bar({ svg }: { svg: string }) {
  return <div class="picture" dangerouslySetInnerHTML={{ __html: svg }} />;
}

/** The margin bars by the finding's place in the list of all; asked for only where findings are shown. */
function useBars({ entries, said, judgement }: OpenJob): Readonly<Record<string, string>> {
  const asker = useId();
  const [bars, setBars] = useState<Readonly<Record<string, string>>>({});
  useEffect(() => {
    let current = true;
    if (!entries) return undefined;
    void (async () => {
      const text = await engine().ask("margin_bars", await question(entries, said), asker);
      const told = text === null ? null : (JSON.parse(text) as { ok: boolean; bars: Record<string, string> });
      if (told?.ok && current) setBars(told.bars);
    })();
    return () => {
      current = false;
    };
  }, [judgement]);
  return bars;
}

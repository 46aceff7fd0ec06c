// What was found of one stage: what does not hold stands openly, what holds or was not told behind one touch.
import { useState } from "preact/hooks";
import { useShared } from "../page/context.ts";
import type { Finding, Verdict } from "../page/judgement.ts";
import type { OpenJob } from "../page/use-job.ts";
import { Findings } from "./findings.tsx";
import { VerdictShape } from "./verdict.tsx";

interface Props {
  readonly open: OpenJob;
  readonly stage: string;
  readonly also?: readonly string[]; // with findings of other stages whose names begin so, such as those on the place of the unit, which the joints judge
  readonly without?: readonly string[]; // and without its own whose names begin so: they stand at another stage
}

/** What nobody has told yet is one line: the page asks for it above. */
export function StageFindings({ open, stage, also = [], without = [] }: Props) {
  const { words } = useShared();
  const judged = open.judgement?.ok ? open.judgement : null;
  const isOf = (id: string, names: readonly string[]): boolean => names.some((name) => id.startsWith(name));
  const isHere = ({ id, stage: of }: Finding): boolean => (of === stage && !isOf(id, without)) || isOf(id, also);
  const found = judged?.findings.filter(isHere) ?? [];
  if (judged === null || found.length === 0) return <p class="say">{words("findings_none")}</p>;
  const held = found.filter(({ verdict }) => verdict === "holds");
  const untold = found.filter(({ id }) => id.endsWith("_told"));
  const due = found.filter((finding) => !held.includes(finding) && !untold.includes(finding));
  return (
    <>
      {due.length > 0 && <Findings findings={due} all={judged.findings} open={open} />}
      <Folded verdict="open" title={words(untold.length === 1 ? "untold_one" : "untold_many", { count: untold.length })} findings={untold} all={judged.findings} open={open} />
      <Folded verdict="holds" title={words(held.length === 1 ? "holds_one" : "holds_many", { count: held.length })} findings={held} all={judged.findings} open={open} />
    </>
  );
}

interface FoldedProps {
  readonly verdict: Verdict;
  readonly title: string;
  readonly findings: readonly Finding[];
  readonly all: readonly Finding[];
  readonly open: OpenJob;
}

function Folded({ verdict, title, findings, all, open }: FoldedProps) {
  const [shown, setShown] = useState(false);
  if (findings.length === 0) return null;
  return (
    <details class="single" onToggle={(event) => setShown(event.currentTarget.open)}>
      <summary>
        <span>
          <VerdictShape verdict={verdict} /> {title}
        </span>
      </summary>
      {shown && <Findings findings={findings} all={all} open={open} />}
    </details>
  );
}

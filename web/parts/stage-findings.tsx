// What was found of one stage: what does not hold stands openly, what holds behind one touch.
import { useState } from "preact/hooks";
import { useShared } from "../page/context.ts";
import type { Finding } from "../page/judgement.ts";
import type { OpenJob } from "../page/use-job.ts";
import { Findings } from "./findings.tsx";
import { VerdictShape } from "./verdict.tsx";

/** `also`: with findings of other stages whose names begin so, such as those on the place of the unit, which the joints judge. */
export function StageFindings({ open, stage, also }: { open: OpenJob; stage: string; also?: string }) {
  const { words } = useShared();
  const [shown, setShown] = useState(false);
  const judged = open.judgement?.ok ? open.judgement : null;
  const found = judged?.findings.filter((finding) => finding.stage === stage || (also !== undefined && finding.id.startsWith(also))) ?? [];
  if (judged === null || found.length === 0) return <p class="say">{words("findings_none")}</p>;
  const of = (holds: boolean): Finding[] => found.filter(({ verdict }) => (verdict === "holds") === holds);
  const [due, held] = [of(false), of(true)];
  return (
    <>
      {due.length > 0 && <Findings findings={due} all={judged.findings} open={open} />}
      {held.length > 0 && (
        <details class="single" onToggle={(event) => setShown(event.currentTarget.open)}>
          <summary>
            <span>
              <VerdictShape verdict="holds" /> {words(held.length === 1 ? "holds_one" : "holds_many", { count: held.length })}
            </span>
          </summary>
          {shown && <Findings findings={held} all={judged.findings} open={open} />}
        </details>
      )}
    </>
  );
}

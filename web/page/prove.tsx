// The proof: what the hand does with the key, each turn stamped when the button is touched, and what the unit reported.
import { follow } from "../core/key-plan.ts";
import { text } from "../core/standing.ts";
import { KeyScript, type Turn } from "../parts/key-script.tsx";
import { Lights } from "../parts/lights.tsx";
import { OpenFile } from "../parts/open-file.tsx";
import { Pictures } from "../parts/pictures.tsx";
import { StageFindings } from "../parts/stage-findings.tsx";
import { Top, Troubles } from "../parts/top.tsx";
import { UnitNow } from "../parts/unit-now.tsx";
import { useKeeping, useShared } from "./context.ts";
import { NextStage } from "./next-stage.tsx";
import { withdrawn } from "./probe-entries.ts";
import { vehicleName } from "./today.tsx";
import { useJob, type OpenJob } from "./use-job.ts";
import { useLookingOut, useProof } from "./use-proof.ts";

export function Prove({ id }: { id: string }) {
  const { words } = useShared();
  const open = useJob(id);
  const keeping = useKeeping();
  const proof = useProof(open);
  useLookingOut();
  const turns = open.said.filter((one) => one.kind === "key_turn").sort((one, other) => Date.parse(text(one.body, "t")) - Date.parse(text(other.body, "t")));
  const proved = open.judgement?.ok && !open.behind ? (open.judgement.prove?.turns ?? []) : [];
  const plan = proof?.plan ?? null;
  const underWay = turns.length > 0 && plan !== null && follow(plan, turns.map((turn) => text(turn.body, "key"))).next !== null;
  const refused = open.judgement?.ok === false ? words("refused_job", { why: open.judgement.error }) : null;
  const stamp = (key: Turn): void => {
    const t = `${new Date().toISOString().slice(0, 23)}Z`; // the moment of the touch, before anything else is done
    void keeping(() => open.write([{ kind: "key_turn", body: { t, key, file: null, line: null } }]));
  };
  return (
    <>
      <Top title={open.job ? `${vehicleName(open.job)} · ${words("stage_prove")}` : words("loading")} back={{ name: "job", job: id }} />
      <main>
        <Troubles />
        {open.entries !== null && (
          <KeyScript plan={plan} refused={refused} turns={turns} proved={proved} onTurn={stamp} onTakeBack={(turn) => void keeping(() => open.write([withdrawn([turn.id])]))}>
            <UnitNow heard={proof?.heard ?? null} />
          </KeyScript>
        )}
        <Lights lights={proof?.lights ?? []} open={open} />
        <Pictures open={open} names={["turns"]} />
        <Found open={open} underWay={underWay} />
        <details class="single">
          <summary>{words("reports_by_hand")}</summary>
          <OpenFile kind="reports" open={open} />
        </details>
        <NextStage open={open} id={id} stage="prove" />
      </main>
    </>
  );
}

/** While the key is being turned most of it is open for that reason alone: then it is folded. */
function Found({ open, underWay }: { open: OpenJob; underWay: boolean }) {
  const { words } = useShared();
  if (underWay) {
    return (
      <details class="single">
        <summary>{words("findings_so_far")}</summary>
        <StageFindings open={open} stage="prove" />
      </details>
    );
  }
  return (
    <>
      <h2>{words("findings")}</h2>
      <StageFindings open={open} stage="prove" />
    </>
  );
}

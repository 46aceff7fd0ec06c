// Handing over: the vehicle after the work, the driver, how the job ends, two signatures, and the record on paper.
import { Findings } from "../parts/findings.tsx";
import { MorePhotos } from "../parts/photos.tsx";
import { Pictures } from "../parts/pictures.tsx";
import { Top, Troubles } from "../parts/top.tsx";
import { formWordsIn } from "../words/form-words.ts";
import { useKeeping, useShared } from "./context.ts";
import { Ending } from "./ending.tsx";
import { FormSection } from "./form-section.tsx";
import { AFTER, DRIVER } from "./forms/hand-over.ts";
import type { Judgement } from "./judgement.ts";
import { NextStage } from "./next-stage.tsx";
import { Record } from "./record.tsx";
import { SignHere } from "./sign-here.tsx";
import { vehicleName } from "./today.tsx";
import { useAround } from "./use-around.ts";
import { useJob, type OpenJob } from "./use-job.ts";
import { useSheet, type Answer, type Sheet } from "./use-sheet.ts";

export function HandOver({ id }: { id: string }) {
  const { words, language } = useShared();
  const asked = formWordsIn(language);
  const open = useJob(id);
  const sheet = useSheet(id, "job", open);
  const walkround = useSheet(id, "walkround", open);
  const around = useAround(open, sheet.text);
  const keeping = useKeeping();
  const judged = open.judgement?.ok ? open.judgement : null;
  const into = ({ change }: Sheet): Answer => (changes, more) => void keeping(() => change(changes, more));
  const found = judged?.findings.filter((finding) => finding.stage === "hand over") ?? [];
  return (
    <>
      <Top title={open.job ? `${vehicleName(open.job)} · ${words("stage_hand_over")}` : words("loading")} back={{ name: "job", job: id }} />
      <main class="form">
        <Troubles />
        {around && walkround.text !== null && (
          <FormSection section={AFTER} open={open} around={{ ...around, sheet: walkround.text }} onAnswer={into(walkround)} />
        )}
        {around && <FormSection section={DRIVER} open={open} around={around} onAnswer={into(sheet)} />}
        {around && <Ending open={open} judged={judged} around={around} onAnswer={into(sheet)} />}
        {open.judgement?.ok === false && (
          <p class="fault">
            {words("refused_job", { why: open.judgement.error })}
          </p>
        )}
        <MorePhotos shows={["after", "other"]} open={open} />
        <SignHere id={id} open={open} judged={judged} />
        <Record id={id} open={open} />
        <button type="button" class="wide" disabled={judged === null} onClick={() => print()}>
          {asked("print")}
        </button>
        <h2>{words("findings")}</h2>
        {found.length > 0 && judged ? <Findings findings={found} all={judged.findings} open={open} /> : <p class="say">{words("findings_none")}</p>}
        <NextStage open={open} id={id} stage="hand_over" />
        {judged && <Printed open={open} judged={judged} />}
      </main>
    </>
  );
}

/** All that was found, on paper: the same findings and drawings as on the pages. */
function Printed({ open, judged }: { open: OpenJob; judged: Judgement }) {
  const { words, language } = useShared();
  const { job } = open;
  const day = new Intl.DateTimeFormat(language, { dateStyle: "long" }).format(new Date());
  const facts = [job?.vehicle.vin, job?.vehicle.type, job?.unit.serial, job?.id, day].filter(Boolean).join(" · ");
  return (
    <section class="printed" aria-hidden="true">
      <h2>{job ? vehicleName(job) : ""}</h2>
      <p>{facts}</p>
      <p>{words("next_title")}: {judged.next ?? words("next_none")}</p>
      <Findings findings={judged.findings} all={judged.findings} open={open} />
      <Pictures open={open} names={["wiring", "crank", "turns", "sky", "parked"]} />
    </section>
  );
}

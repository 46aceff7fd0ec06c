// Handing over: how the job ends, what the driver was told, a signature, and a page to be printed.
import { Findings } from "../parts/findings.tsx";
import { Pictures } from "../parts/pictures.tsx";
import { Signature } from "../parts/signature.tsx";
import { Top, Troubles } from "../parts/top.tsx";
import { valueIn } from "../core/sheet.ts";
import { formWordsIn } from "../words/form-words.ts";
import { useKeeping, useShared } from "./context.ts";
import { FORMS } from "./forms.ts";
import { LACKS, OWED } from "./forms/hand-over.ts";
import type { Judgement } from "./judgement.ts";
import { NextStage } from "./next-stage.tsx";
import { vehicleName } from "./today.tsx";
import { Questions } from "./questions.tsx";
import { useJob, type OpenJob } from "./use-job.ts";
import { useSheet, type Change } from "./use-sheet.ts";

export function HandOver({ id }: { id: string }) {
  const { words, language } = useShared();
  const asked = formWordsIn(language);
  const open = useJob(id);
  const sheet = useSheet(id, "job", open);
  const keeping = useKeeping();
  const judged = open.judgement?.ok ? open.judgement : null;
  const answer = (changes: readonly Change[]): void => void keeping(() => sheet.change(changes));
  const found = judged?.findings.filter((finding) => finding.stage === "hand over") ?? [];
  return (
    <>
      <Top title={open.job ? `${vehicleName(open.job)} · ${words("stage_hand_over")}` : words("loading")} back={{ name: "job", job: id }} />
      <main class="form">
        <Troubles />
        {sheet.text !== null && <Ending sheet={sheet.text} onAnswer={answer} />}
        <h2>{words("findings")}</h2>
        {found.length > 0 && judged ? <Findings findings={found} all={judged.findings} open={open} /> : <p class="say">{words("findings_none")}</p>}
        <Signature open={open} />
        <button type="button" class="wide" disabled={judged === null} onClick={() => print()}>
          {asked("print")}
        </button>
        {judged && <Printed open={open} judged={judged} />}
        <NextStage open={open} id={id} stage="hand_over" />
      </main>
    </>
  );
}

function Ending({ sheet, onAnswer }: { sheet: string; onAnswer: (changes: readonly Change[]) => void }) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const provisional = valueIn(sheet, { name: "hand_over" }, "end") === "provisional";
  const lacks = Object.entries(LACKS) as [keyof typeof LACKS, string][];
  return (
    <>
      {FORMS.hand_over.sections.map((section) => (
        <section key={section.title}>
          <h2>{words(section.title)}</h2>
          <Questions asks={section.asks} which={null} sheet={sheet} onAnswer={onAnswer} />
        </section>
      ))}
      {provisional &&
        lacks.map(([word, name]) => (
          <section key={word}>
            <h2>
              {words("missing")}: {words(word)}
            </h2>
            <Questions asks={OWED} which={{ key: "what", value: name }} sheet={sheet} onAnswer={onAnswer} />
          </section>
        ))}
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

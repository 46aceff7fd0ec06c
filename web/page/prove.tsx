// The proof: what the hand does with the key, each turn stamped when the button is touched, and what the unit reported.
import { text, type Said } from "../core/standing.ts";
import { Findings } from "../parts/findings.tsx";
import { OpenFile } from "../parts/open-file.tsx";
import { Pictures } from "../parts/pictures.tsx";
import { Top, Troubles } from "../parts/top.tsx";
import { named } from "../words/words.ts";
import { useKeeping, useShared } from "./context.ts";
import { withdrawn } from "./probe-entries.ts";
import { NextStage } from "./next-stage.tsx";
import { vehicleName } from "./today.tsx";
import { useJob } from "./use-job.ts";

const TURNS = ["off", "accessory", "on", "crank", "running", "unlock", "doors_open", "doors_shut"] as const;
type Turn = (typeof TURNS)[number];

export function Prove({ id }: { id: string }) {
  const { words } = useShared();
  const open = useJob(id);
  const keeping = useKeeping();
  const judged = open.judgement?.ok ? open.judgement : null;
  const found = judged?.findings.filter((finding) => finding.stage === "prove") ?? [];
  const turns = open.said.filter((one) => one.kind === "key_turn");
  const stamp = (key: Turn): void => {
    const t = `${new Date().toISOString().slice(0, 23)}Z`; // the moment of the touch, before anything else is done
    void keeping(() => open.write([{ kind: "key_turn", body: { t, key, file: null, line: null } }]));
  };
  return (
    <>
      <Top title={open.job ? `${vehicleName(open.job)} · ${words("stage_prove")}` : words("loading")} back={{ name: "job", job: id }} />
      <main>
        <Troubles />
        <p class="say">{words("prove_say")}</p>
        <p class="caution">{words("caution_crank")}</p>
        <div class="turns">
          {TURNS.map((key) => (
            <button type="button" key={key} onClick={() => stamp(key)}>
              {named(words, "turn", key)}
            </button>
          ))}
        </div>
        <Turns turns={turns} onTakeBack={(turn) => void keeping(() => open.write([withdrawn([turn.id])]))} />
        <OpenFile kind="reports" open={open} />
        <Pictures open={open} names={["turns"]} />
        <h2>{words("findings")}</h2>
        {found.length > 0 && judged ? <Findings findings={found} all={judged.findings} open={open} /> : <p class="say">{words("findings_none")}</p>}
        <NextStage open={open} id={id} stage="prove" />
      </main>
    </>
  );
}

function Turns({ turns, onTakeBack }: { turns: readonly Said[]; onTakeBack: (turn: Said) => void }) {
  const { words, language } = useShared();
  const clock = new Intl.DateTimeFormat(language, { hour: "2-digit", minute: "2-digit", second: "2-digit" });
  return (
    <ol class="stamped" aria-live="polite">
      {turns.map((turn) => (
        <li key={turn.id}>
          <time dateTime={text(turn.body, "t")}>{clock.format(new Date(text(turn.body, "t")))}</time> <b>{named(words, "turn", text(turn.body, "key"))}</b>
          <button type="button" class="plain" onClick={() => onTakeBack(turn)}>
            {words("take_back")}
          </button>
        </li>
      ))}
    </ol>
  );
}

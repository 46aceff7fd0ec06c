// One lead of the unit: to which wire, how, with what fuse; how it stands; its questions behind one touch.
import { valueIn, type Value } from "../core/sheet.ts";
import { useShared } from "../page/context.ts";
import { JOINT, type Asked, type JointKey } from "../page/forms/join.ts";
import type { Joining, Lead } from "../page/forms/join-offers.ts";
import { standingOf, unanswered } from "../page/forms/join-state.ts";
import type { Finding } from "../page/judgement.ts";
import { Questions } from "../page/questions.tsx";
import type { Change } from "../page/use-sheet.ts";
import { formWordsIn } from "../words/form-words.ts";
import { saidOf, withoutMark } from "./said.tsx";
import { VerdictMark } from "./verdict.tsx";

interface Props {
  readonly lead: Lead;
  readonly joining: Joining;
  readonly asked: Asked;
  readonly findings: readonly Finding[];
  readonly onAnswer: (changes: readonly Change[]) => void;
}

export function LeadCard({ lead, joining, asked, findings, onAnswer }: Props) {
  const { words, language } = useShared();
  const forms = formWordsIn(language);
  const { sheet } = joining;
  const which = { key: "lead", value: lead.name } as const;
  const lacking = unanswered(asked, sheet, lead, findings);
  const names = [...new Set(lacking.map((ask) => withoutMark(forms(ask.word)).replace(/:$/, "").toLocaleLowerCase(language)))];
  return (
    <li class="lead">
      <p class="what">
        <b>{lead.name}</b> {lead.colour && <span class="kind">{lead.colour}</span>} <VerdictMark verdict={standingOf(joining.leadsStand[lead.name], lacking)} />
      </p>
      <Where lead={lead} joining={joining} />
      <How lead={lead} sheet={sheet} />
      {names.length > 0 && <p class="answered">{forms("not_said", { what: names.join(", ") })}</p>}
      <details class="single">
        <summary aria-label={`${words("change")}: ${lead.name}`}>{words("change")}</summary>
        <Questions asks={asked.needed} which={which} sheet={sheet} onAnswer={onAnswer} />
        <details class="single">
          <summary aria-label={`${forms("more_asked")}: ${lead.name}`}>{forms("more_asked")}</summary>
          <Questions asks={asked.more} which={which} sheet={sheet} onAnswer={onAnswer} />
        </details>
      </details>
    </li>
  );
}

const jointOf = (sheet: string, { name }: Lead) => (key: string): Value | null => valueIn(sheet, { name: "joint", where: { key: "lead", value: name } }, key);

/** The wire with its place; for a ground the frame. */
function Where({ lead, joining: { sheet, taps } }: { lead: Lead; joining: Joining }) {
  const { language } = useShared();
  const forms = formWordsIn(language);
  const wire = jointOf(sheet, lead)("wire");
  const tap = taps[lead.purpose];
  if (wire !== null) {
    const isIn = tap?.wire === wire && tap.connector !== "" && !String(wire).includes(tap.connector);
    return <p>{`→ ${String(wire)}${isIn ? ` (${tap.connector} ${tap.cavity})` : ""}`}</p>;
  }
  if (lead.purpose === "ground") return <p>{`→ ${forms("to_frame")}`}</p>;
  if (lead.purpose === "supply" || lead.purpose === "ignition") return <p class="say">{`→ ${tap?.wire ?? forms("no_wire")}`}</p>;
  return <p class="say">{forms("not_used")}</p>;
}

/** Method, fuse, length and place in one line; nothing where nothing was said. */
function How({ lead, sheet }: { lead: Lead; sheet: string }) {
  const { language, units } = useShared();
  const forms = formWordsIn(language);
  const joint = jointOf(sheet, lead);
  const said = (key: JointKey): string => {
    const value = joint(key);
    return value === null ? "" : saidOf(JOINT[key], value, { words: forms, units });
  };
  const end = joint("wire") === null && joint("cut_mm") !== null ? `${forms("cut").replace(/^.*: /, "")} ${said("cut_mm")}` : "";
  const parts = [said("method"), said("fuse_A"), said("length_m"), said("place"), end].filter(Boolean);
  return parts.length > 0 ? <p>{parts.join(" · ")}</p> : null;
}

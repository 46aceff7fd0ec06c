// The joints of a unit: what one touch may answer of all of them, the drops, one card a lead, the tapped circuit, the battery.
import { useState } from "preact/hooks";
import { valueIn, valuesIn } from "../core/sheet.ts";
import { AllAtOnce, ShortLines } from "../parts/all-at-once.tsx";
import { DropQuestion } from "../parts/drop-question.tsx";
import { LeadCard } from "../parts/lead-card.tsx";
import { Photos } from "../parts/photos.tsx";
import { Pictures } from "../parts/pictures.tsx";
import { saidOf, type Saying } from "../parts/said.tsx";
import { formWordsIn, type FormWord, type FormWords } from "../words/form-words.ts";
import { AskGroup } from "./ask-group.tsx";
import { useShared } from "./context.ts";
import { CIRCUIT, GROUND_DROP, JOINT, STANDING, TAP_DROP, jointAsks } from "./forms/join.ts";
import { asBefore, asFirst, isSpliced, leftOver, seenOnAll, standingBefore, usualLoad, type Joining, type Lead } from "./forms/join-offers.ts";
import { changesOf, stillOpen, takenBack, type Around, type Given, type Offer } from "./forms/offer.ts";
import type { Finding } from "./judgement.ts";
import type { OpenJob } from "./use-job.ts";
import { keyOffOf, useJoining } from "./use-joining.ts";
import type { Answer, Change } from "./use-sheet.ts";

interface Props {
  readonly open: OpenJob;
  readonly around: Around;
  readonly onAnswer: Answer;
}

export function Joints({ open, around, onAnswer }: Props) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const joining = useJoining(open, around);
  const [taken, setTaken] = useState<readonly Offer[]>([]);
  const take = (offer: Offer): void => {
    setTaken((before) => [...before.filter(({ word }) => word !== offer.word), offer]);
    onAnswer(changesOf(offer));
  };
  const findings = open.judgement?.ok ? open.judgement.findings : [];
  if (joining === undefined) return null;
  const isOfCircuit = taken.some(({ given }) => given.some(({ ask }) => ask.key === CIRCUIT.fuse_A.key));
  const isTaken = isOfCircuit && valueIn(joining.sheet, { name: "join" }, CIRCUIT.fuse_A.key) !== null; // then its answers are folded
  return (
    <>
      <Pictures open={open} names={["wiring"]} />
      <AtOnceOnAll joining={joining} taken={taken} onTake={take} onAnswer={onAnswer} />
      <Drops joining={joining} onAnswer={onAnswer} />
      <section>
        <h2>{words("each_lead")}</h2>
        {joining.leads.length === 0 && <p class="say">{words("no_leads")}</p>}
        <ul class="leads">
          {joining.leads.map((lead) => (
            <OneLead key={lead.name} lead={lead} joining={joining} findings={findings} onAnswer={onAnswer} />
          ))}
        </ul>
      </section>
      <Circuit key={String(isTaken)} joining={joining} onAnswer={onAnswer} />
      <section>
        <Photos shows="bare_joint" open={open} />
        <Photos shows="ground" open={open} />
      </section>
      <Standing joining={joining} open={open} onAnswer={onAnswer} />
    </>
  );
}

/** What one touch answers of all leads: what was chosen, what was seen, what became of those that are not used. */
function AtOnceOnAll({ joining, taken, onTake, onAnswer }: { joining: Joining; taken: readonly Offer[]; onTake: (offer: Offer) => void; onAnswer: Answer }) {
  const { words: shared, language, units } = useShared();
  const words = formWordsIn(language);
  const open = (offer: Offer | null): Offer | null => (offer ? stillOpen(offer, joining.sheet) : null);
  const [chosen, seen, left] = [open(asBefore(joining) ?? asFirst(joining)), open(seenOnAll(joining)), open(leftOver(joining))];
  const { sheet } = joining;
  const slips = taken.map((offer) => ({ offer, back: takenBack(offer, sheet) })).filter(({ back }) => back.length > 0);
  return (
    <section>
      <h2>{words("all_joints")}</h2>
      <p class="caution">{words("join_caution")}</p>
      {chosen && <ShortLines offer={chosen} circuit={words("circuit")} />}
      {chosen && <AllAtOnce offer={chosen} lines={[]} sheet={sheet} onTake={() => onTake(chosen)} />}
      {seen && <AllAtOnce offer={seen} lines={[words("seen_on", { leads: namesIn(seen).join(", ") }), ...besides(seen, words)]} sheet={sheet} onTake={() => onTake(seen)} />}
      {left && <AllAtOnce offer={left} lines={cutLines(left, { words, units })} sheet={sheet} onTake={() => onTake(left)} />}
      {slips.length > 0 && (
        <details class="single">
          <summary>{shared("take_back")}</summary>
          {slips.map(({ offer, back }) => (
            <button type="button" key={offer.word} onClick={() => onAnswer(back)}>
              {`${shared("take_back")}: ${words(offer.word, { vehicle: offer.from ?? "" })}`}
            </button>
          ))}
        </details>
      )}
    </section>
  );
}

const namesIn = (offer: Offer): string[] => [...new Set(offer.given.flatMap(({ which }) => which?.value ?? []))];

/** What else a touch would say beside tugging, relief and dryness. */
function besides({ given }: Offer, words: FormWords): string[] {
  return given.flatMap(({ ask, value, which }) => {
    const lead = which?.value ?? "";
    if (ask.key === "pull_N") return [words("same_sample", { lead, pull: String(value) })];
    return ask.key === "right_way" ? [words("tap_way", { lead })] : [];
  });
}

function cutLines(offer: Offer, saying: Saying): string[] {
  const cut = (name: string): Given | undefined => offer.given.find(({ ask, which }) => ask.key === "cut_mm" && which?.value === name);
  const said = (given: Given): string => saidOf(given.ask, given.value, saying);
  return namesIn(offer).map((name) => {
    const given = cut(name);
    return given ? saying.words("cut_so", { lead: name, cut: said(given) }) : name;
  });
}

/** The two drops that a meter reads under the same lamp. */
function Drops({ joining, onAnswer }: { joining: Joining; onAnswer: Answer }) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const lamp = usualLoad(joining);
  return (
    <section>
      <h2>{words("drops")}</h2>
      <p class="say">{words("drops_say")}</p>
      {[GROUND_DROP, TAP_DROP].map((ask) => (
        <DropQuestion key={ask.drop.key} ask={ask} sheet={joining.sheet} usualLoad={lamp} onAnswer={onAnswer} />
      ))}
    </section>
  );
}

interface LeadProps {
  readonly lead: Lead;
  readonly joining: Joining;
  readonly findings: readonly Finding[];
  readonly onAnswer: Answer;
}

/** With the first answer on a lead stand the wire that was chosen and the fuse that the unit's sheet asks for. */
function OneLead({ lead, joining, findings, onAnswer }: LeadProps) {
  const { sheet, taps } = joining;
  const table = { name: "joint", where: { key: "lead", value: lead.name } };
  const isSplice = valueIn(sheet, table, "near_module") !== null || isSpliced(joining, lead);
  const begun = valuesIn(sheet, "joint", "lead").includes(lead.name);
  const wire = taps[lead.purpose]?.wire ?? null;
  const first: Change[] = [
    ...(wire !== null ? [{ table, key: "wire", value: wire, only: "unsaid" as const }] : []),
    ...(lead.fuse_A !== null && wire !== null ? [{ table, key: JOINT.fuse_A.key, value: lead.fuse_A, only: "unsaid" as const }] : []),
  ];
  return <LeadCard lead={lead} joining={joining} asked={jointAsks(lead.purpose, isSplice)} findings={findings} onAnswer={(changes) => onAnswer([...(begun ? [] : first), ...changes])} />;
}

/** The circuit that the supply is tapped from; why it was spliced only where it was. */
function Circuit({ joining, onAnswer }: { joining: Joining; onAnswer: Answer }) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const { sheet } = joining;
  const isSplice = valueIn(sheet, { name: "join" }, CIRCUIT.why_spliced.key) !== null || joining.leads.some((lead) => isSpliced(joining, lead));
  const asks = [CIRCUIT.fuse_A, CIRCUIT.load_A, ...(isSplice ? [CIRCUIT.why_spliced] : [])];
  return (
    <section>
      <h2>{words("circuit")}</h2>
      <AskGroup asks={asks} offers={[]} sheet={sheet} onAnswer={onAnswer} />
    </section>
  );
}

/** How long it can stand: asked of nobody who does not want to know. */
function Standing({ joining, open, onAnswer }: { joining: Joining; open: OpenJob; onAnswer: Answer }) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const title: FormWord = "standing";
  return (
    <details class="single apart">
      <summary>{words(title)}</summary>
      <AskGroup asks={Object.values(STANDING)} offers={standingBefore(joining, keyOffOf(open.said, joining.taps))} sheet={joining.sheet} onAnswer={onAnswer} />
      <Pictures open={open} names={["parked"]} />
    </details>
  );
}

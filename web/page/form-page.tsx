// A stage that is written down: its questions in order, what the engine finds of the answers beneath.
import { useEffect, useState } from "preact/hooks";
import { valueIn, valuesIn, type Value } from "../core/sheet.ts";
import { text } from "../core/standing.ts";
import { probeTable } from "../core/probe-table.ts";
import { Findings } from "../parts/findings.tsx";
import { Question } from "../parts/form.tsx";
import { Photos } from "../parts/photos.tsx";
import { Pictures, type PictureName } from "../parts/pictures.tsx";
import { Top, Troubles } from "../parts/top.tsx";
import { textOf } from "../store/blobs.ts";
import { setting, type Settings } from "../store/settings.ts";
import { onSync } from "../sync/sync.ts";
import { formWordsIn } from "../words/form-words.ts";
import { named } from "../words/words.ts";
import { useKeeping, useShared } from "./context.ts";
import { FORMS, isDue, jointAsks, tableOf, type Ask, type FormName, type Section, type Which } from "./forms.ts";
import { claimEntry } from "./probe-entries.ts";
import { vehicleName } from "./today.tsx";
import { useJob, type NewEntry, type OpenJob } from "./use-job.ts";
import { useSheet, type Change } from "./use-sheet.ts";

const PICTURES_OF: Readonly<Record<FormName, readonly PictureName[]>> = { walkround: [], join: ["wiring"], mount: ["sky"], hand_over: [] };

export function FormPage({ id, name }: { id: string; name: FormName }) {
  const { words } = useShared();
  const form = FORMS[name];
  const open = useJob(id);
  const sheet = useSheet(id, form.sheet, open);
  const keeping = useKeeping();
  const leads = useLeads(open);
  const judged = open.judgement?.ok ? open.judgement : null;
  const found = judged?.findings.filter((finding) => finding.stage === form.stage) ?? [];
  const answer = (changes: readonly Change[], more: readonly NewEntry[] = []): void => void keeping(() => sheet.change(changes, more));
  return (
    <>
      <Top title={open.job ? `${vehicleName(open.job)} · ${named(words, "stage", form.stage)}` : words("loading")} back={{ name: "job", job: id }} />
      <main class="form">
        <Troubles />
        <Elsewhere id={id} sheet={sheet.text ?? ""} />
        {sheet.text !== null && name === "join" && leads.map((lead) => <JointSection key={lead.name} lead={lead} open={open} sheet={sheet.text ?? ""} onAnswer={answer} />)}
        {sheet.text !== null && form.sections.map((section) => <FormSection key={section.title} section={section} open={open} sheet={sheet.text ?? ""} onAnswer={answer} />)}
        <Pictures open={open} names={PICTURES_OF[name]} />
        <h2>{words("findings")}</h2>
        {open.judgement?.ok === false && (
          <p class="fault" lang="en">
            {words("refused_job", { why: open.judgement.error })}
          </p>
        )}
        {found.length > 0 && judged ? <Findings findings={found} all={judged.findings} open={open} /> : <p class="say">{words("findings_none")}</p>}
      </main>
    </>
  );
}

type Answer = (changes: readonly Change[], more?: readonly NewEntry[]) => void;

interface SectionProps {
  readonly section: Section;
  readonly open: OpenJob;
  readonly sheet: string;
  readonly onAnswer: Answer;
}

function FormSection({ section, open, sheet, onAnswer }: SectionProps) {
  const { language } = useShared();
  const words = formWordsIn(language);
  return (
    <section>
      <h2>{words(section.title)}</h2>
      {section.caution && <p class="caution">{words(section.caution)}</p>}
      <Questions asks={section.asks} which={null} sheet={sheet} onAnswer={(changes) => onAnswer(changes, claimed(changes, open))} />
      {section.photos?.map((shows) => (
        <Photos key={shows} shows={shows} open={open} />
      ))}
    </section>
  );
}

interface QuestionsProps {
  readonly asks: readonly Ask[];
  readonly which: Which | null;
  readonly sheet: string;
  readonly onAnswer: (changes: readonly Change[]) => void;
}

export function Questions({ asks, which, sheet, onAnswer }: QuestionsProps) {
  const value = (ask: { table: string; key: string }): Value | null => valueIn(sheet, tableOf(ask as Ask, which), ask.key);
  const asked = asks.filter((ask) => !ask.when || isDue(ask.when, value({ table: ask.when.table ?? ask.table, key: ask.when.key })));
  return (
    <>
      {asked.map((ask) => (
        <Question key={`${ask.table}.${ask.key}`} ask={ask} value={value(ask)} onAnswer={(given) => onAnswer([{ table: tableOf(ask, which), key: ask.key, value: given }])} />
      ))}
    </>
  );
}

/** VIN and serial are claimed for the job, too, where its sheet does not name any: then they are checked as its own. */
function claimed(changes: readonly Change[], open: OpenJob): NewEntry[] {
  const table = probeTable(open.said);
  const job = open.said.findLast((one) => one.kind === "job");
  return changes.flatMap(({ table: { name }, key, value }) => {
    const slot = `${name}.${key}` === "vehicle.vin" ? "vin" : `${name}.${key}` === "unit.serial" ? "serial" : null;
    if (slot === null || typeof value !== "string" || !job || text(job.body, slot) !== "") return [];
    return table.claims.get(slot)?.values.includes(value) ? [] : [claimEntry(slot, value, table.claims.get(slot))];
  });
}

interface Lead {
  readonly name: string;
  readonly purpose: string;
  readonly fuse_A: number | null;
}

/** The leads of the unit, by its sheet. */
function useLeads(open: OpenJob): readonly Lead[] {
  const [leads, setLeads] = useState<readonly Lead[]>([]);
  useEffect(() => {
    const unit = open.said.findLast((one) => one.kind === "unit_sheet");
    if (unit) void textOf(text(unit.body, "sha256")).then((sheet) => sheet !== null && setLeads(leadsIn(sheet)));
  }, [open.said]);
  return leads;
}

function leadsIn(sheet: string): Lead[] {
  return valuesIn(sheet, "lead", "name").map((name) => {
    const table = { name: "lead", where: { key: "name", value: name } };
    const fuse = valueIn(sheet, table, "fuse_A");
    return { name, purpose: String(valueIn(sheet, table, "purpose") ?? ""), fuse_A: typeof fuse === "number" ? fuse : null };
  });
}

interface JointProps {
  readonly lead: Lead;
  readonly open: OpenJob;
  readonly sheet: string;
  readonly onAnswer: Answer;
}

/** The joint of one lead; with the first answer stand the wire that was chosen and the fuse that the unit's sheet asks for. */
function JointSection({ lead, open, sheet, onAnswer }: JointProps) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const table = { name: "joint", where: { key: "lead", value: lead.name } };
  const begun = valuesIn(sheet, "joint", "lead").includes(lead.name);
  const wire = probeTable(open.said).claims.get(`tap_${lead.purpose}`)?.values[0] ?? null;
  const first: Change[] = [
    ...(wire !== null ? [{ table, key: "wire", value: wire }] : []),
    ...(lead.fuse_A !== null && wire !== null ? [{ table, key: "fuse_A", value: lead.fuse_A }] : []),
  ];
  return (
    <section>
      <h2>{words("joint_of", { lead: lead.name })}</h2>
      <Questions asks={jointAsks(lead.purpose)} which={{ key: "lead", value: lead.name }} sheet={sheet} onAnswer={(changes) => onAnswer([...(begun ? [] : first), ...changes])} />
    </section>
  );
}

/** As the server compares serial numbers: without spaces, in capitals. */
const plainSerial = (typed: Value | null): string => String(typed ?? "").replace(/\s/g, "").toUpperCase();

/** Whether the unit is in another vehicle already, by the day's list: said at once, with no line too. */
function Elsewhere({ id, sheet }: { id: string; sheet: string }) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const [serials, setSerials] = useState<Settings["serials"]>([]);
  useEffect(() => {
    const read = async (): Promise<void> => setSerials((await setting("serials")) ?? []);
    void read();
    return onSync((_, changed) => changed && void read());
  }, []);
  const serial = plainSerial(valueIn(sheet, { name: "unit" }, "serial"));
  const held = serials.find((one) => plainSerial(one.serial) === serial && one.job !== id);
  if (!held) return null;
  return (
    <p class="fault" role="alert">
      {words("serial_elsewhere", { vehicle: held.vehicle ?? held.job })}
    </p>
  );
}

// The joints of a unit, one lead after the other.
import { useEffect, useState } from "preact/hooks";
import { probeTable } from "../core/probe-table.ts";
import { valueIn, valuesIn } from "../core/sheet.ts";
import { text } from "../core/standing.ts";
import { textOf } from "../store/blobs.ts";
import { formWordsIn } from "../words/form-words.ts";
import { useShared } from "./context.ts";
import { jointAsks } from "./forms/join.ts";
import { Questions } from "./questions.tsx";
import type { OpenJob } from "./use-job.ts";
import type { Answer, Change } from "./use-sheet.ts";

/** The joint of every lead that the unit has. */
export function Joints({ open, sheet, onAnswer }: { open: OpenJob; sheet: string; onAnswer: Answer }) {
  const leads = useLeads(open);
  return (
    <>
      {leads.map((lead) => (
        <JointSection key={lead.name} lead={lead} open={open} sheet={sheet} onAnswer={onAnswer} />
      ))}
    </>
  );
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

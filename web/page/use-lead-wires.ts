// The wires for the unit's leads: those of this job, else those of the last vehicle of the type, to be taken by one touch.
import { useEffect, useState } from "preact/hooks";
import { leadWiresIn, leadWiresOf, type LeadWire } from "../core/lead-wires.ts";
import { LEADS, type ProbeTable } from "../core/probe-table.ts";
import { sheetText } from "../store/usual.ts";
import { circuitEntry, claimEntry, slotOf, wireEntry } from "./probe-entries.ts";
import type { NewEntry, OpenJob } from "./use-job.ts";
import { useUsual } from "./use-usual.ts";

export interface LeadWires {
  readonly own: readonly LeadWire[]; // that this job means already
  readonly offered: { readonly from: string; readonly wires: readonly LeadWire[] } | null;
  readonly isKnown: boolean; // whether each of the leads has its wire
}

export function useLeadWires(open: OpenJob, table: ProbeTable): LeadWires | null {
  const usual = useUsual(open);
  const [sheet, setSheet] = useState<string | null>(null);
  useEffect(() => {
    if (open.entries !== null) void sheetText(open.said, "job").then(setSheet);
  }, [open.said, open.entries === null]);
  if (sheet === null) return null;
  const own = leadWiresOf(table, sheet);
  const missing = LEADS.filter((lead) => !own.some((one) => one.lead === lead) && (table.claims.get(slotOf(lead))?.values.length ?? 0) === 0);
  const wires = usual ? leadWiresIn(usual.job).filter(({ lead, connector, cavity }) => missing.includes(lead) && (connector || cavity)) : [];
  return { own, offered: usual && wires.length > 0 ? { from: usual.from, wires } : null, isKnown: own.length === LEADS.length };
}

/** What is written when the wires are taken over: where they are, what they feed, what they are meant for. */
export function taking(wires: readonly LeadWire[], table: ProbeTable): NewEntry[] {
  return wires.flatMap(({ lead, name, connector, cavity, colour, circuit }) => [
    ...(table.wires.some((one) => one.name === name) ? [] : [wireEntry({ wire: name, connector, cavity, colour })]),
    ...(circuit ? [circuitEntry(name, circuit)] : []),
    claimEntry(slotOf(lead), name, table.claims.get(slotOf(lead))),
  ]);
}

// How a lead stands, by what was answered of it and by what the engine found.
import { valueIn } from "../../core/sheet.ts";
import { WORST_FIRST, type Finding, type Verdict } from "../judgement.ts";
import { tableOf, type Ask } from "./ask.ts";
import { dueOf } from "./offer.ts";
import { GROUND_DROP, TAP_DROP, type Asked } from "./join.ts";
import type { Lead } from "./join-offers.ts";

// findings that name no lead, by what the lead is for; as src/backprobe/job/lead_verdicts.py has them
const OF_PURPOSE: Readonly<Record<string, readonly string[]>> = {
  supply: ["join_unit_volts", "join_unit_reset", "join_path_budget", "join_idle_transmit", "join_vehicle_fuse", "join_selectivity"],
  ground: ["join_ground_drop", "join_ground_place", "join_ground_screw"],
};

// drops that are asked once for the job, with the finding that stays open without them: the engine may know one by other readings
const READ_FOR: Readonly<Record<string, { readonly drop: Ask; readonly without: string }>> = {
  supply: { drop: TAP_DROP.drop, without: "join_fuse_told" },
  ground: { drop: GROUND_DROP.drop, without: "join_ground_told" },
};

/** The questions on a lead that are due and have no answer. */
export function unanswered({ needed }: Asked, sheet: string, lead: Lead, findings: readonly Finding[]): Ask[] {
  const which = { key: "lead", value: lead.name } as const;
  const read = READ_FOR[lead.purpose];
  const isMissed = read !== undefined && (findings.length === 0 || findings.some(({ id }) => id === read.without));
  const isUnread = isMissed && valueIn(sheet, tableOf(read.drop, null), read.drop.key) === null;
  return [...dueOf(needed, sheet, which).filter((ask) => valueIn(sheet, tableOf(ask, which), ask.key) === null), ...(isUnread ? [read.drop] : [])];
}

/** The worst that was found of a lead; open while something is not said of it, or nothing was found yet. */
export function standingOf(lead: Lead, findings: readonly Finding[], lacking: readonly Ask[]): Verdict {
  const starts = [`join_${lead.name}_`, `join_${lead.purpose}_`];
  const own = findings.filter(({ id }) => OF_PURPOSE[lead.purpose]?.includes(id) || starts.some((start) => id.startsWith(start) && !id.endsWith("_told")));
  const worst = WORST_FIRST.find((verdict) => own.some((finding) => finding.verdict === verdict)) ?? "open";
  return lacking.length > 0 && worst !== "fails" ? "open" : worst;
}

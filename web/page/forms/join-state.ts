// How a lead stands, by what was answered of it and by what the engine found.
import { valueIn } from "../../core/sheet.ts";
import type { Finding, Verdict } from "../judgement.ts";
import { tableOf, type Ask } from "./ask.ts";
import { dueOf } from "./offer.ts";
import { GROUND_DROP, TAP_DROP, type Asked } from "./join.ts";
import type { Lead } from "./join-offers.ts";

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

/** How a lead stands by the engine; open while something is not said of it, or the engine has not spoken. */
export function standingOf(found: Verdict | undefined, lacking: readonly Ask[]): Verdict {
  const verdict = found ?? "open";
  return lacking.length > 0 && verdict !== "fails" ? "open" : verdict;
}

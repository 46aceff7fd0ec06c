// Walkrounds of other vehicles from which answers may be taken over: of the same yard today, with the same kind of unit.
import { valueIn } from "../core/sheet.ts";
import { standing, text } from "../core/standing.ts";
import { entriesOf, type Kept } from "./journal.ts";
import { allJobs, type Job } from "./jobs.ts";
import { setting } from "./settings.ts";
import { nameOf, sheetText } from "./usual.ts";

/** The walkround of another vehicle, from which answers may be taken over. */
export interface Earlier {
  readonly from: string; // what people call that vehicle
  readonly walkround: string; // TOML
}

/** Whose walkrounds a job may take answers from; null where there is none. */
export interface EarlierOnes {
  readonly yard: Earlier | null; // of the same yard, begun on this phone today, with somebody who allowed the work
  readonly unit: Earlier | null; // with a unit of the same sheet, its firmware written down
}

/** What tells which walkrounds are alike: the yard by its name, the unit by the digest of its sheet. */
export interface Alike {
  readonly yard: string | null;
  readonly unitSheet: string | null;
}

/** Of the other jobs on this phone the walkrounds that were begun last. */
export async function earlierFor(job: Job, { yard, unitSheet }: Alike): Promise<EarlierOnes> {
  const device = (await setting("enrolment"))?.device ?? null;
  const last: Record<keyof EarlierOnes, { at: string; one: Earlier } | null> = { yard: null, unit: null };
  const note = (which: keyof EarlierOnes, at: string, one: Earlier): void => {
    if ((last[which]?.at ?? "") < at) last[which] = { at, one };
  };
  for (const other of (await allJobs()).filter((one) => one.id !== job.id)) {
    const rows = await entriesOf(other.id);
    const begun = begunOn(rows);
    if (begun === null) continue;
    const said = standing(rows.map((entry) => entry.raw));
    const one = { from: nameOf(other), walkround: await sheetText(said, "walkround") };
    const isHere = yard !== null && yardOf(await sheetText(said, "job")) === yard && begun.device === device && isToday(begun.at);
    if (isHere && says(one.walkround, "authority", "work_by")) note("yard", begun.at, one);
    const isAlike = unitSheet !== null && said.some((each) => each.kind === "unit_sheet" && text(each.body, "sha256") === unitSheet);
    if (isAlike && says(one.walkround, "unit", "firmware_wanted")) note("unit", begun.at, one);
  }
  return { yard: last.yard?.one ?? null, unit: last.unit?.one ?? null };
}

/** The yard that a job sheet names, without the bay; null where it names none. */
export function yardOf(jobSheet: string): string | null {
  const yard = valueIn(jobSheet, { name: "job" }, "yard");
  return typeof yard === "string" ? (yard.split(",")[0] ?? "").trim().toLowerCase() || null : null;
}

const says = (sheet: string, table: string, key: string): boolean => valueIn(sheet, { name: table }, key) !== null;
const isToday = (at: string): boolean => new Date(at).toDateString() === new Date().toDateString();

/** When and where a walkround was begun; its later answers stand in place of the first entry. */
function begunOn(rows: readonly Kept[]): { at: string; device: string } | null {
  const first = rows.map(({ raw }) => JSON.parse(raw) as { kind: string; at: string | null; device: string }).find(({ kind }) => kind === "walkround");
  return first?.at ? { at: first.at, device: first.device } : null;
}

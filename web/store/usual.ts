// What was done in the last vehicle of the same type, to be taken over where it fits: from this phone's jobs, else from the day.
import { probeTable } from "../core/probe-table.ts";
import { withValue } from "../core/sheet.ts";
import { standing, text, type Said } from "../core/standing.ts";
import { textOf } from "./blobs.ts";
import { entriesOf } from "./journal.ts";
import { allJobs, type Job } from "./jobs.ts";
import { setting } from "./settings.ts";

/** Sheets of another vehicle of the same type; empty where there is none. */
export interface Usual {
  readonly type: string; // of the vehicle, as the day names it
  readonly from: string; // what people call that vehicle
  readonly job: string; // TOML; its [[wire]] tables hold the wires that were chosen, with their places
  readonly walkround: string; // TOML
  readonly mount?: string; // TOML: where the unit could sit in this type
}

/** Of the vehicles of this job's type the one that was worked on last; null where there was none. */
export async function usualFor(job: Job): Promise<Usual | null> {
  const { type } = job.vehicle;
  if (type === null) return null;
  return (await here(job, type)) ?? ((await setting("usual")) ?? []).find((one) => one.type === type && one.from !== nameOf(job)) ?? null;
}

/** Of whatever type: the vehicle whose joints this phone wrote down last, for the habits of the hand; null where there is none. */
export async function lastFor(job: Job): Promise<Usual | null> {
  return here(job, null);
}

/** Among the jobs on this phone, of one type or of any: the one whose joints were written down last, none in which something fails. */
async function here(job: Job, type: string | null): Promise<Usual | null> {
  const alike = (await allJobs()).filter((one) => one.id !== job.id && (type === null || one.vehicle.type === type) && isNoWarning(one));
  let last: { at: string; usual: Usual } | null = null;
  for (const one of alike) {
    const said = standing((await entriesOf(one.id)).map((entry) => entry.raw));
    const at = said.map((each) => each.at ?? "").reduce((before, after) => (before > after ? before : after), "");
    const sheet = await sheetText(said, "job");
    if (!/^\s*\[\[joint\]\]/m.test(sheet) || (last !== null && last.at >= at)) continue;
    last = { at, usual: { type: one.vehicle.type ?? "", from: nameOf(one), job: withWires(sheet, said), walkround: await sheetText(said, "walkround"), mount: await sheetText(said, "mount") } };
  }
  return last?.usual ?? null;
}

/** Whether nothing fails in a job, as far as it was judged: what went wrong is no pattern for the next vehicle. */
const isNoWarning = ({ said }: Job): boolean => (said?.fails ?? 0) === 0;

/** The text of the sheet that stands; empty where there is none. */
export async function sheetText(said: readonly Said[], kind: string): Promise<string> {
  const last = said.findLast((one) => one.kind === kind);
  return last ? ((await textOf(text(last.body, "sha256"))) ?? "") : "";
}

/** The job's sheet with the wires that its journal chose, each with its lead and its place. */
function withWires(sheet: string, said: readonly Said[]): string {
  const { wires, claims } = probeTable(said);
  let written = sheet;
  for (const lead of ["supply", "ignition"]) {
    const name = claims.get(`tap_${lead}`)?.values.at(-1);
    const wire = wires.find((one) => one.name === name);
    if (!name) continue;
    const table = { name: "wire", where: { key: "name", value: name } };
    written = withValue(written, table, "lead", lead);
    for (const place of ["connector", "cavity", "colour"] as const) {
      if (wire?.[place]) written = withValue(written, table, place, wire[place]);
    }
    if (wire?.circuits[0]) written = withValue(written, table, "circuit", wire.circuits[0]);
  }
  return written;
}

/** What people call a vehicle. */
export const nameOf = ({ vehicle, name, id }: Job): string => vehicle.plate ?? vehicle.fleet_number ?? vehicle.vin ?? name ?? id;

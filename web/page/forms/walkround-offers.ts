// What one touch may answer on the walkround. An observation is named thing by thing on its button's list; what is taken
// over from another vehicle says from which.
import { valueIn, valuesIn, type Value } from "../../core/sheet.ts";
import { figure, flag, line, list, type Ask } from "./ask.ts";
import type { Around, Given, Offer } from "./offer.ts";

/** Whether a sheet says anything under a key. */
export const isWritten = (sheet: string, table: string, key: string): boolean => valueIn(sheet, { name: table }, key) !== null;

/** What the day's sheet says under a key, to be shown beside what is read. */
export function sheetVehicle(jobSheet: string, key: string, table = "vehicle"): Record<string, string> {
  const said = valueIn(jobSheet, { name: table }, key);
  return typeof said === "string" && said !== "" ? { [key]: said } : {};
}

/** Whoever allowed the work in the same yard today allows it here, too: the names stand above the button. */
export function yardAllowed({ earlier: { yard } }: Around): Offer[] {
  if (yard === null) return [];
  return offered("allowed_as_in", yard.from, [line("authority", "work_by"), line("authority", "crank_by")].flatMap((ask) => as(ask, said(yard.walkround, ask))));
}

/** Plate and fleet number as the day's sheet has them, the key with whoever holds the phone. */
export function atVehicle({ jobSheet, person }: Around): Offer[] {
  const read = [line("vehicle", "plate"), line("vehicle", "fleet_number")].flatMap((ask) => as(ask, said(jobSheet, ask)));
  return offered(read.length > 0 ? "read_so" : "key_so", null, [...read, ...as(line("vehicle", "key_with"), person)]);
}

/** The unit as it has to be: activated, its firmware the one that is wanted, its lights as its sheet says. */
export function atUnit({ unitSheet, usual, jobSheet, earlier }: Around): Offer[] {
  const last = earlier.unit ?? (usual && isSameUnit(usual.job, jobSheet) ? usual : null);
  const known = last?.walkround ?? "";
  const wanted = valueIn(known, UNIT, "firmware_wanted");
  const own = valueIn(known, UNIT, "backup") ?? (valueIn(known, UNIT, "backup_least_V") === null ? null : true);
  const lights = lightsOf(unitSheet);
  return offered(wanted === null ? "unit_so" : "unit_as_in", wanted === null ? null : (last?.from ?? null), [
    ...as(flag("unit", "activated"), true),
    ...as(line("unit", "firmware"), wanted),
    ...as(line("unit", "firmware_wanted"), wanted),
    ...as({ kind: "flag", table: "unit", key: "backup", word: "has_backup" }, own),
    ...as(figure("unit", "backup_least_V", "backup_least", "V"), own === true ? valueIn(known, UNIT, "backup_least_V") : null),
    ...as(list("unit", "lights"), lights.length > 0 ? lights : null),
  ]);
}

const UNIT = { name: "unit" } as const;
const isSameUnit = (one: string, other: string): boolean => fileOf(one) !== "" && fileOf(one) === fileOf(other);
const fileOf = (jobSheet: string): string => String(valueIn(jobSheet, UNIT, "sheet") ?? "").split("/").at(-1) ?? "";

/** The lights of a unit with what they show when all is well, as its sheet names them. */
export function lightsOf(unitSheet: string): string[] {
  return valuesIn(unitSheet, "light", "name").map((name) => `${name}: ${String(valueIn(unitSheet, { name: "light", where: { key: "name", value: name } }, "pattern") ?? "")}`);
}

/** No warning lamp, no fault code. */
export function nothingBurns(): Offer[] {
  return offered("nothing_burns", null, [...as(list("before", "lamps"), "none"), ...as(list("before", "codes"), "none")]);
}

const OF_THE_TYPE = ["high_voltage", "dual_batteries", "battery_switch", "system_48V"] as const; // what is built in
const OF_THE_DAY = ["restraint_near_work", "dangerous_goods", "trailer"] as const;

/** All seven hazards, each named: what is built into the last vehicle of the type stands as it was there, the rest is not there. */
export function noHazards({ usual, jobSheet }: Around): Offer[] {
  const known = usual?.walkround ?? "";
  const builtIn = OF_THE_TYPE.flatMap((key) => {
    const bySheet = key === "battery_switch" ? valueIn(jobSheet, { name: "vehicle" }, key) : null;
    return as(flag("hazards", key), (bySheet ?? valueIn(known, HAZARDS, key)) === true);
  });
  const isSwitched = builtIn.some(({ ask, value }) => ask.key === "battery_switch" && value === true);
  const ofSwitch = isSwitched ? [...as(SIDE, valueIn(known, HAZARDS, SIDE.key)), ...as(AFTER_RUN, valueIn(known, HAZARDS, AFTER_RUN.key))] : [];
  const seen = OF_THE_DAY.flatMap((key) => as(flag("hazards", key), false));
  const isAny = builtIn.some(({ value }) => value === true);
  return offered(!isAny ? "none_of_these" : usual ? "hazards_as_in" : "hazards_so", isAny ? (usual?.from ?? null) : null, [...builtIn, ...ofSwitch, ...seen]);
}

const HAZARDS = { name: "hazards" } as const;
const SIDE: Ask = { kind: "choice", table: "hazards", key: "battery_switch_side", word: "battery_switch_side", values: ["positive", "negative"] };
const AFTER_RUN: Ask = { kind: "figure", table: "hazards", key: "after_run_min", word: "after_run", unit: "min" };

/** Somebody looked for a tracker or an alarm of before, and found none. */
export const noDevices = ({ sheet }: Around): Offer[] => (isAnyFound(sheet) ? [] : offered("none_found", null, as(flag("devices", "looked_for"), true)));

/** Whether a device of before is named. */
export const isAnyFound = (sheet: string): boolean => valuesIn(sheet, "devices.found", "what").length > 0;

const said = (sheet: string, { table, key }: Ask): Value | null => valueIn(sheet, { name: table }, key);
const as = (ask: Ask, value: Value | null): Given[] => (value === null || value === "" ? [] : [{ ask, value }]);
const offered = (word: Offer["word"], from: string | null, given: readonly Given[]): Offer[] => (given.length > 0 ? [{ word, from, given }] : []);

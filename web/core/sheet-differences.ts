// What differs between two sheets, key by key.
import { HEADER, read, type Value } from "./sheet.ts";

export interface Difference {
  readonly table: string; // 'hazards', or of several tables the one that is meant: 'joint power'
  readonly key: string;
  readonly here: Value | null;
  readonly there: Value | null;
}

/** The keys that one of two sheets says otherwise or alone, in the order of the first, then of the second. */
export function differences(here: string, there: string): Difference[] {
  const [one, other] = [saidIn(here), saidIn(there)];
  const places = [...new Set([...one.keys(), ...other.keys()])];
  return places.flatMap((place) => {
    const [mine, theirs] = [one.get(place) ?? null, other.get(place) ?? null];
    if (JSON.stringify(mine) === JSON.stringify(theirs)) return [];
    const at = place.lastIndexOf(".");
    return [{ table: place.slice(0, at), key: place.slice(at + 1), here: mine, there: theirs }];
  });
}

/** Everything that a sheet says, by table and key; of several tables of one name each is told by its first value. */
function saidIn(sheet: string): Map<string, Value> {
  const said = new Map<string, Value>();
  let table = "";
  let isOfSeveral = false;
  for (const line of sheet.split("\n")) {
    const head = HEADER.exec(line);
    const key = /^\s*([A-Za-z0-9_]+)\s*=/.exec(line)?.[1];
    if (head) [table, isOfSeveral] = [head[1] as string, /^\s*\[\[/.test(line)];
    else if (key !== undefined) {
      const value = read(line);
      if (isOfSeveral && !table.includes(" ")) table = `${table} ${String(value)}`;
      if (value !== null) said.set(`${table}.${key}`, value);
    }
  }
  return said;
}

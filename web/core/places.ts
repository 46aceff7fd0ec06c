// The places of a mount sheet: which there are, which was taken, and the sheet with one added, renamed or taken out.
import { valueIn, valuesIn, withoutTable, withValue, type Table } from "./sheet.ts";

const TOP: Table = { name: "" };

export interface Place {
  readonly name: string;
  readonly sits: string | null; // null where it was measured part by part
}

export const placeTable = (name: string): Table => ({ name: "place", where: { key: "name", value: name } });

export function placesIn(sheet: string): Place[] {
  return valuesIn(sheet, "place", "name").map((name) => {
    const sits = valueIn(sheet, placeTable(name), "sits");
    return { name, sits: typeof sits === "string" ? sits : null };
  });
}

/** The place that was taken: the one that is named as such, or the only one. */
export function takenIn(sheet: string): Place | null {
  const places = placesIn(sheet);
  const chosen = valueIn(sheet, TOP, "chosen");
  return places.find(({ name }) => name === chosen) ?? (places.length === 1 ? (places[0] ?? null) : null);
}

export const withTaken = (sheet: string, name: string): string => withValue(sheet, TOP, "chosen", name);

/** A name that no place has yet: places must differ by their names, capitals not counted. */
export function freeName(sheet: string, wanted: string): string {
  const known = new Set(placesIn(sheet).map(({ name }) => name.toLowerCase()));
  for (let at = 1; ; at += 1) {
    const name = at === 1 ? wanted : `${wanted} ${at}`;
    if (!known.has(name.toLowerCase())) return name;
  }
}

/** With one more place; the first is taken as the unit's until somebody takes another. */
export function withPlace(sheet: string, { name, sits }: { readonly name: string; readonly sits: string }): string {
  const added = withValue(sheet, placeTable(name), "sits", sits);
  return placesIn(sheet).length === 0 ? withTaken(added, name) : added;
}

export function renamedPlace(sheet: string, name: string, to: string): string {
  const renamed = withValue(sheet, placeTable(name), "name", to);
  return valueIn(sheet, TOP, "chosen") === name ? withTaken(renamed, to) : renamed;
}

/** Without a place; a sheet must keep one, so the last stays. */
export function withoutPlace(sheet: string, name: string): string {
  if (placesIn(sheet).length < 2) return sheet;
  const left = withoutTable(sheet, placeTable(name));
  return valueIn(sheet, TOP, "chosen") === name ? withValue(left, TOP, "chosen", null) : left;
}

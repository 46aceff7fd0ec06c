// Figures in the units of whoever holds the phone; sheets and findings are metric. Factors: NIST SP 811 (2008), appendix B.8.

export type Units = "metric" | "us";

interface Twin {
  readonly unit: string;
  readonly factor: number; // of the metric unit in one of these; exact by definition
  readonly zero: number; // what this scale shows where the metric one shows nothing
}

const TWINS: Readonly<Record<string, Twin>> = {
  km: { unit: "mi", factor: 1.609344, zero: 0 },
  m: { unit: "ft", factor: 0.3048, zero: 0 },
  mm: { unit: "in", factor: 25.4, zero: 0 },
  N: { unit: "lbf", factor: 4.4482216152605, zero: 0 },
  "°C": { unit: "°F", factor: 1 / 1.8, zero: 32 },
  "km/h": { unit: "mph", factor: 1.609344, zero: 0 },
};
const KEPT_MORE = 3; // decimals of the sheet's figure beyond those that were typed, so that the same figure is shown again
const MOST = 9; // decimals that are tried for what was typed
const SHOWN = 4; // digits that count, of a figure that nobody typed in this unit

/** The unit in which a figure is asked and shown. */
export function unitFor(unit: string, units: Units): string {
  return units === "us" ? (TWINS[unit]?.unit ?? unit) : unit;
}

/** What is written into a sheet for a figure as typed, sign and all, in the person's unit. */
export function toSheet(typed: string, unit: string, units: Units): number {
  const twin = units === "us" ? TWINS[unit] : undefined;
  if (!twin) return Number(typed);
  const decimals = typed.split(".")[1]?.length ?? 0;
  return tidy((Number(typed) - twin.zero) * twin.factor, decimals + KEPT_MORE);
}

/** A sheet's figure in the person's unit: as it was typed, where it was typed in that unit; else to four digits that count. */
export function fromSheet(value: number, unit: string, units: Units): string {
  const twin = units === "us" ? TWINS[unit] : undefined;
  if (!twin) return String(value);
  const exact = value / twin.factor + twin.zero;
  for (let decimals = 0; decimals <= MOST - KEPT_MORE; decimals += 1) {
    const typed = tidy(exact, decimals).toFixed(decimals);
    if (toSheet(typed, unit, units) === value) return typed;
  }
  return rounded(exact);
}

/** A figure that the engine found, in the person's unit, to four digits that count. */
export function shownIn(value: number, unit: string, units: Units): string {
  const twin = units === "us" ? TWINS[unit] : undefined;
  return twin ? rounded(value / twin.factor + twin.zero) : String(value);
}

/** Whether the person's unit for it is another. */
export const isOther = (unit: string, units: Units): boolean => unitFor(unit, units) !== unit;

const tidy = (value: number, decimals: number): number => Number(value.toFixed(decimals)) + 0;
const rounded = (value: number): string => String(Number(value.toPrecision(SHOWN)) + 0);

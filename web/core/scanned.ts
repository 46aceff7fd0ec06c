// What a code on a label says, and how far a VIN that was typed in part goes.

const LAST = 6; // of a VIN: its serial number's end, by which the vehicles of one fleet differ

/** The VIN in what a code says; null where there is none. Labels carry other codes, and some put a letter I before it (from memory). */
export function vinIn(said: string): string | null {
  return /(?<![A-Z0-9])I?([A-HJ-NPR-Z0-9]{17})(?![A-Z0-9])/.exec(said.trim().toUpperCase())?.[1] ?? null;
}

/** What stands before the last six characters of the sheet's VIN where just those were typed; null else. */
export function restOf(typed: string, expected: string | null): string | null {
  const [end, whole] = [plainCode(typed), plainCode(expected ?? "")];
  return end.length === LAST && whole.length > LAST && whole.endsWith(end) ? whole.slice(0, -LAST) : null;
}

/** Whether two numbers of a plate or a label are the same, spaces, hyphens and capitals aside. */
export const isSameCode = (one: string, other: string): boolean => plainCode(one) === plainCode(other);

const plainCode = (said: string): string => said.replace(/[\s.*-]/g, "").toUpperCase();

// What a code on a label says, and how far a VIN that was typed in part goes.

const LAST = 6; // of a VIN: its serial number's end, by which the vehicles of one fleet differ

/** The VIN in what a code says; null where there is none. Labels carry other codes, and some put a letter I before it (from memory). */
export function vinIn(said: string): string | null {
  return /(?<![A-Z0-9])I?([A-HJ-NPR-Z0-9]{17})(?![A-Z0-9])/.exec(said.trim().toUpperCase())?.[1] ?? null;
}

// 49 CFR 565.15: what each character counts in a VIN, by its place in this row, and how much each of the 17 places weighs
const COUNTS = "0123456789.ABCDEFGH..JKLMN.P.R..STUVWXYZ";
const WEIGHTS = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];
const CHECK_AT = 8;

/** Whether position 9 of a VIN is what the other characters ask for; only North American ones need it so. */
export function hasRightCheckDigit(vin: string): boolean {
  const sum = WEIGHTS.reduce((whole, weight, at) => whole + weight * (COUNTS.indexOf(vin[at] as string) % 10), 0);
  return vin[CHECK_AT] === (sum % 11 === 10 ? "X" : String(sum % 11));
}

/** The VINs in the codes of one picture, the likeliest first: the sheet's own, else one with the right check digit. */
export function likelyVins(codes: readonly string[], expected: string | null): string[] {
  const found = codes.map(vinIn).filter((vin) => vin !== null);
  return ranked(found, (vin) => (expected !== null && isSameCode(vin, expected) ? 2 : hasRightCheckDigit(vin) ? 1 : 0));
}

/** The codes of one picture as serial numbers, the likeliest first: the sheet's own, else one that the day's list knows; a VIN last. */
export function likelySerials(codes: readonly string[], expected: string | null, known: readonly string[]): string[] {
  const rank = (code: string): number => {
    if (expected !== null && isSameCode(code, expected)) return 3;
    if (known.some((serial) => isSameCode(code, serial))) return 2;
    return vinIn(code) === null ? 1 : 0;
  };
  return ranked(codes.map((code) => code.trim()).filter((code) => code !== ""), rank);
}

/** Each once, the highest rank first; equals stay in the order in which they were read. */
function ranked(codes: readonly string[], rank: (code: string) => number): string[] {
  return [...new Set(codes)].sort((one, other) => rank(other) - rank(one));
}

/** What stands before the last six characters of the sheet's VIN where just those were typed; null else. */
export function restOf(typed: string, expected: string | null): string | null {
  const [end, whole] = [plainCode(typed), plainCode(expected ?? "")];
  return end.length === LAST && whole.length > LAST && whole.endsWith(end) ? whole.slice(0, -LAST) : null;
}

/** Whether two numbers of a plate or a label are the same, spaces, hyphens and capitals aside. */
export const isSameCode = (one: string, other: string): boolean => plainCode(one) === plainCode(other);

const plainCode = (said: string): string => said.replace(/[\s.*-]/g, "").toUpperCase();

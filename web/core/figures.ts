// Figures as a technician types them: the text itself is kept, '12.30' is not '12.3'.

const FIGURE = /^\d{1,3}([.,]\d{0,3})?$/;
export const LONGEST = 7;
const POINTED_FROM = 3; // digits: before that a hand may still put the point itself

/** What the display shows after one more key; null where that key has no place there.
 *
 * Where three digits without a point come to more than `most`, which no meter shows there, the point stands by itself
 * where they come to the most that is possible: 1, 2, 6 is 12.6 in a 12 V system.
 */
export function typed(shown: string, key: string, most = Infinity): string | null {
  if (key === ".") return shown.includes(".") ? null : `${shown === "" ? "0" : shown}.`;
  const next = shown === "0" ? key : shown + key;
  if (next.length > LONGEST || !FIGURE.test(next)) return null;
  return next.includes(".") || next.length < POINTED_FROM || Number(next) <= most ? next : pointed(next, most);
}

/** The digits with a point as far to the right as `most` allows. */
function pointed(digits: string, most: number): string {
  for (let at = digits.length - 1; at > 0; at -= 1) {
    const parted = `${digits.slice(0, at)}.${digits.slice(at)}`;
    if (Number(parted) <= most) return parted;
  }
  return digits;
}

/** The figure as it is kept: without a point at its end; null where nothing was typed. */
export function finished(shown: string): string | null {
  const plain = shown.replace(",", ".").replace(/\.$/, "");
  return /^\d+(\.\d+)?$/.test(plain) ? plain : null;
}

const AS_METERS = new Intl.NumberFormat("en", { minimumFractionDigits: 1, useGrouping: false }); // the engine writes points, too, in any language

/** A figure as a meter shows it: with a point, whatever the language around it. */
export const asMeters = (value: number): string => AS_METERS.format(value);

// Figures as a technician types them: the text itself is kept, '12.30' is not '12.3'.

const FIGURE = /^\d{1,3}([.,]\d{0,3})?$/;
export const LONGEST = 7;

/** What the display shows after one more key; null where that key has no place there. */
export function typed(shown: string, key: string): string | null {
  if (key === ".") return shown.includes(".") ? null : `${shown === "" ? "0" : shown}.`;
  const next = shown === "0" ? key : shown + key;
  return next.length <= LONGEST && FIGURE.test(next) ? next : null;
}

/** The figure as it is kept: without a point at its end; null where nothing was typed. */
export function finished(shown: string): string | null {
  const plain = shown.replace(",", ".").replace(/\.$/, "");
  return /^\d+(\.\d+)?$/.test(plain) ? plain : null;
}

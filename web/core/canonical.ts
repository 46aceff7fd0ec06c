// The one way to write an entry's values as text, the same as backprobe/job/canonical.py writes them.

export type Json = boolean | number | string | null | readonly Json[] | { readonly [key: string]: Json };
export type Body = { readonly [key: string]: Json };

const DEEPEST = 8; // levels of lists and tables in one another
const KEY = /^[A-Za-z][A-Za-z0-9_]*$/;
const HALF_CHARACTER = /\p{Surrogate}/u;

/** Said of a value that two languages could write differently; names the place. */
export class NotCanonical extends Error {}

/** `value` as JSON with sorted keys and no spaces. Throws NotCanonical, naming the place. */
export function canonical(value: Json): string {
  return written(value, "entry", 0);
}

function written(value: Json, where: string, depth: number): string {
  if (depth > DEEPEST) throw new NotCanonical(`${where}: nested deeper than ${DEEPEST} levels`);
  if (Array.isArray(value)) {
    return `[${value.map((item: Json, index) => written(item, `${where}[${index}]`, depth + 1)).join(",")}]`;
  }
  if (value !== null && typeof value === "object") return table(value as Body, where, depth);
  return scalar(value as boolean | number | string | null, where);
}

function table(value: Body, where: string, depth: number): string {
  const pairs = Object.keys(value)
    .sort()
    .map((key) => {
      if (!KEY.test(key)) throw new NotCanonical(`${where}: the key ${key} is not made of ASCII letters, digits and _`);
      return `${JSON.stringify(key)}:${written(value[key] as Json, `${where}.${key}`, depth + 1)}`;
    });
  return `{${pairs.join(",")}}`;
}

function scalar(value: boolean | number | string | null, where: string): string {
  if (typeof value === "number" && !Number.isSafeInteger(value)) {
    throw new NotCanonical(`${where}: ${value} is no whole number; figures are text as typed`);
  }
  if (typeof value === "string" && HALF_CHARACTER.test(value)) {
    throw new NotCanonical(`${where}: holds half a character; UTF-8 has no such`);
  }
  if (value === undefined) throw new NotCanonical(`${where}: nothing stands here; null says so`);
  return JSON.stringify(value);
}

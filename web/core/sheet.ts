// A sheet in TOML, changed one key at a time: every line that is not touched stays as it was written, remarks too.

export type Value = string | number | boolean | readonly string[];

/** A table of a sheet: `[name]`, or of several `[[name]]` the one in which `key` has that value; `name` is empty for what stands above all headers. */
export interface Table {
  readonly name: string;
  readonly where?: { readonly key: string; readonly value: string };
}

interface Span {
  readonly name: string;
  readonly start: number; // the line after the header
  readonly end: number; // the line of the next header, or the end
}

export const HEADER = /^\s*\[{1,2}\s*([A-Za-z0-9_.]+)\s*\]{1,2}\s*(#.*)?$/;

/** Said of a value that is none that is written here, such as a text over several lines: it is not changed. */
export class NotOneLine extends Error {}

/** The value of a key; null where the sheet does not say it or says it in a way that is not read here. */
export function valueIn(sheet: string, table: Table, key: string): Value | null {
  const lines = sheet.split("\n");
  const span = spanOf(lines, table);
  const at = span ? lineOf(lines, span, key) : -1;
  return at < 0 ? null : read(whole(lines, at).line);
}

/** The sheet with a key changed, added, or taken out (null); the table is added where there is none. */
export function withValue(sheet: string, table: Table, key: string, value: Value | null): string {
  const lines = sheet === "" ? [] : sheet.replace(/\n+$/, "").split("\n");
  const span = spanOf(lines, table);
  const at = span ? lineOf(lines, span, key) : -1;
  const before = at < 0 ? null : whole(lines, at);
  if (before && read(before.line) === null) throw new NotOneLine(key);
  if (value === null) return ended(span && before ? withoutLine(lines, { table, span, at, count: before.count }) : lines);
  const line = `${key} = ${written(value)}`;
  if (before) return ended(lines.toSpliced(at, before.count, line));
  if (span) return ended(withLine(lines, endOfText(lines, span), line));
  return ended([...lines, ...(lines.length > 0 ? [""] : []), ...header(table), line]);
}

/** With a line put in; a blank one behind it where a header follows at once. */
function withLine(lines: readonly string[], at: number, line: string): string[] {
  return lines.toSpliced(at, 0, ...(HEADER.test(lines[at] ?? "") ? [line, ""] : [line]));
}

/** The sheet without a table and the tables within it, such as a place and its parts. */
export function withoutTable(sheet: string, table: Table): string {
  const lines = sheet.replace(/\n+$/, "").split("\n");
  const spans = spans_(lines);
  const first = spans.findIndex((span) => span === spanIn(spans, lines, table));
  if (first < 0) return sheet;
  const after = spans.slice(first + 1).find((span) => !span.name.startsWith(`${table.name}.`));
  const left = lines.toSpliced((spans[first] as Span).start - 1, (after ? after.start - 1 : lines.length) - (spans[first] as Span).start + 1);
  while (left.length > 0 && left.at(-1)?.trim() === "") left.pop();
  return ended(left);
}

/** Without a line; of several tables one that says nothing more than which it is goes with its last line. */
function withoutLine(lines: readonly string[], { table, span, at, count }: { table: Table; span: Span; at: number; count: number }): string[] {
  const said = lines.slice(span.start, span.end).filter((line) => /^\s*[A-Za-z0-9_]+\s*=/.test(line)).length;
  if (table.where && said <= 2) return lines.toSpliced(span.start - 1, endOfText(lines, span) - span.start + 1);
  return lines.toSpliced(at, count);
}

/** The values of `key` in all tables `[[name]]`, in their order. */
export function valuesIn(sheet: string, name: string, key: string): string[] {
  const lines = sheet.split("\n");
  const spans = spans_(lines).filter((span) => span.name === name);
  const found = spans.map((span) => lineOf(lines, span, key)).map((at) => (at < 0 ? null : read(lines[at] as string)));
  return found.filter((value): value is string => typeof value === "string");
}

function header({ name, where }: Table): string[] {
  return where ? [`[[${name}]]`, `${where.key} = ${written(where.value)}`] : [`[${name}]`];
}

const ended = (lines: readonly string[]): string => (lines.length === 0 ? "" : `${lines.join("\n")}\n`);

function spans_(lines: readonly string[]): Span[] {
  const heads = lines.flatMap((line, at) => {
    const found = HEADER.exec(line);
    return found ? [{ name: found[1] as string, at }] : [];
  });
  const top = { name: "", start: 0, end: heads[0]?.at ?? lines.length };
  return [top, ...heads.map(({ name, at }, index) => ({ name, start: at + 1, end: heads[index + 1]?.at ?? lines.length }))];
}

const spanOf = (lines: readonly string[], table: Table): Span | undefined => spanIn(spans_(lines), lines, table);

function spanIn(spans: readonly Span[], lines: readonly string[], { name, where }: Table): Span | undefined {
  const named = spans.filter((span) => span.name === name);
  if (!where) return named[0];
  return named.find((span) => {
    const at = lineOf(lines, span, where.key);
    return at >= 0 && read(lines[at] as string) === where.value;
  });
}

function lineOf(lines: readonly string[], span: Span, key: string): number {
  for (let at = span.start; at < span.end; at += 1) if (lines[at]?.match(/^\s*([A-Za-z0-9_]+)\s*=/)?.[1] === key) return at;
  return -1;
}

/** After the last line of a table that says something: blank lines and remarks before the next header belong to that. */
function endOfText(lines: readonly string[], span: Span): number {
  let at = span.end;
  while (at > span.start && /^\s*(#.*)?$/.test(lines[at - 1] as string)) at -= 1;
  return at;
}

/** The line of a key, with a list that goes on over the next lines put into one; and how many lines that is. */
function whole(lines: readonly string[], at: number): { line: string; count: number } {
  let line = lines[at] as string;
  let count = 1;
  if (!/=\s*\[/.test(line)) return { line, count };
  for (; at + count < lines.length && !/\]\s*(#.*)?$/.test(line) && !HEADER.test(lines[at + count] as string); count += 1) line += (lines[at + count] as string).trim();
  return { line: line.replace(/,\s*\]/, "]"), count };
}

/** The value on a line; null where it is none that this module writes. */
export function read(line: string): Value | null {
  const text = line.slice(line.indexOf("=") + 1).trim();
  const found = /^("(?:[^"\\]|\\.)*"|\[(?:"(?:[^"\\]|\\.)*"|[^\]"])*\]|[^#\s]+)\s*(#.*)?$/.exec(text)?.[1];
  if (found === undefined) return null;
  try {
    return JSON.parse(found) as Value;
  } catch {
    return /^[A-Za-z0-9_.:+-]+$/.test(found) ? found : null; // a day stands there without quotation marks
  }
}

/** A value as TOML has it; what JSON writes of texts, numbers, flags and lists of texts is TOML, too. */
function written(value: Value): string {
  return JSON.stringify(value).replaceAll("\u007f", "\\u007f");
}

// What stands of a job's entries, for showing it before the engine has spoken; the engine judges by its own fold.
import type { Body, Json } from "./canonical.ts";

export interface Said {
  readonly id: string;
  readonly kind: string;
  readonly body: Body;
  readonly at: string | null;
  readonly device: string;
  readonly disputed: boolean;
}

interface Parsed {
  readonly id: string;
  readonly kind: string;
  readonly body: Body;
  readonly at: string | null;
  readonly device: string;
  readonly replaces: readonly string[];
}

/** What is neither corrected nor withdrawn, in the order of `raws`; what two entries put in place of one is disputed. */
export function standing(raws: readonly string[]): Said[] {
  const all = raws.map(parsed);
  const replaced = new Map<string, number>();
  for (const one of all) for (const id of one.replaces) replaced.set(id, (replaced.get(id) ?? 0) + 1);
  const contested = (one: Parsed): boolean => one.replaces.some((id) => (replaced.get(id) ?? 0) > 1);
  return all
    .filter((one) => !replaced.has(one.id) && one.kind !== "withdrawn")
    .map(({ replaces, ...one }) => ({ ...one, disputed: contested({ replaces, ...one }) }));
}

function parsed(raw: string): Parsed {
  const { id, kind, body, at, device } = JSON.parse(raw) as Omit<Parsed, "replaces">;
  if (kind === "withdrawn") return { id, kind, body, at, device, replaces: names(body["entry"]) };
  if (kind !== "correction") return { id, kind, body, at, device, replaces: [] };
  return { id, kind: text(body, "kind"), body: (body["body"] ?? {}) as Body, at, device, replaces: names(body["replaces"]) };
}

function names(value: Json | undefined): string[] {
  const items: readonly (Json | undefined)[] = Array.isArray(value) ? value : [value];
  return items.filter((item): item is string => typeof item === "string");
}

/** The text under a name; empty where there is none. */
export function text(body: Body, name: string): string {
  const value = body[name];
  return typeof value === "string" ? value : "";
}

// Where the work goes on from a stage, and what is still open on it.

export const ORDER = ["walkround", "probe", "join", "mount", "prove", "hand_over"] as const;
export type Worked = (typeof ORDER)[number];

/** What the engine found, as far as the way is told by it. */
export interface Found {
  readonly stage: string; // as the engine names it, in words
  readonly what: string;
  readonly verdict: string;
}

const UNDONE: ReadonlySet<string> = new Set(["fails", "open"]);

/** The stage of the phone that the engine's name of one stands for; null for those that are not done there. */
export function stageNamed(name: string | null): Worked | null {
  return ORDER.find((one) => one === name?.replace(" ", "_")) ?? null;
}

/** The next stage after this one in which something is to be done; the last where nothing is; null after the last.
 *
 * It never leads back: what is open before this stage may be owed by somebody who is not there.
 */
export function onwardFrom(stage: Worked, found: readonly Found[] | null): Worked | null {
  const later = ORDER.slice(ORDER.indexOf(stage) + 1);
  if (found === null) return later[0] ?? null;
  const isDue = (one: Worked): boolean => {
    const there = found.filter((each) => stageNamed(each.stage) === one);
    return there.length === 0 || there.some(({ verdict }) => UNDONE.has(verdict));
  };
  return later.find(isDue) ?? later.at(-1) ?? null;
}

/** What is still open or fails on a stage, each thing once. */
export function undoneOn(stage: Worked, found: readonly Found[]): string[] {
  return [...new Set(found.filter((each) => stageNamed(each.stage) === stage && UNDONE.has(each.verdict)).map(({ what }) => what))];
}

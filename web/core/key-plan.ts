// How far the turns of the key have come in the engine's plan. The plan is followed as far as it goes; whatever else happened waits beside it.

export interface Step {
  readonly key: string;
  readonly hold_s: number;
}

export interface Followed {
  readonly next: number | null; // the step that is due; null where all are done
  readonly turns: readonly (number | null)[]; // for each step the turn that did it
  readonly hold_s: number | null; // how long the last turn's state is to be left; null where the plan does not say
}

/** `turns` in the order of time. A failed start falls back to on: then the crank is due again. Key off after the end begins anew. */
export function follow(plan: readonly Step[], turns: readonly string[]): Followed {
  let done: (number | null)[] = plan.map(() => null);
  let next = 0;
  let hold_s: number | null = null;
  for (const [at, key] of turns.entries()) {
    if (next === plan.length && key === plan[0]?.key) [done, next] = [plan.map(() => null), 0];
    hold_s = null;
    if (plan[next]?.key === key) {
      done[next] = at;
      hold_s = plan[next]?.hold_s ?? null;
      next += 1;
    } else if (key === "on" && plan[next - 1]?.key === "crank") {
      next -= 1;
      done[next] = null;
    }
  }
  return { next: next < plan.length ? next : null, turns: done, hold_s };
}

/** Whole seconds that are left of a hold, by the stamp of the turn that began it; 0 where it is over. */
export function left_s(hold_s: number, since: string, now_ms: number): number {
  return Math.max(0, Math.ceil(hold_s - (now_ms - Date.parse(since)) / 1000));
}

/** Minutes and seconds: 3:05. */
export function clockText(seconds: number): string {
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}

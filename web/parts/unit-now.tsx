// What the unit says now, in large words: heard when, ignition, supply, how old its position is.
import { asMeters } from "../core/figures.ts";
import { clockText } from "../core/key-plan.ts";
import { useShared } from "../page/context.ts";
import { useNow, type Heard } from "../page/use-proof.ts";
import type { Words } from "../words/words.ts";

const MINUTE_S = 60;
const HOUR_S = 3600;
const DAY_S = 24 * HOUR_S;
const IN_DAYS_FROM_S = 2 * DAY_S;

export function UnitNow({ heard }: { heard: Heard | null }) {
  const { words, language } = useShared();
  const now_s = useNow() / 1000;
  if (heard === null || heard.count === 0) {
    return (
      <section class="unit-now">
        <h2>{words("unit_says")}</h2>
        <p class="say">{words("heard_nothing")}</p>
        {heard !== null && heard.others > 0 && <p class="notice">{words("heard_others", { count: heard.others })}</p>}
      </section>
    );
  }
  const came_s = heard.received_s ?? heard.last_s ?? 0;
  const time = { hour: "2-digit", minute: "2-digit", second: "2-digit", hourCycle: "h23" } as const;
  const clock = new Intl.DateTimeFormat(language, now_s - came_s < DAY_S ? time : { ...time, day: "numeric", month: "short" });
  const supply = heard.supply_V === null ? "–" : `${asMeters(heard.supply_V)} V`;
  return (
    <section class="unit-now">
      <h2>{words("unit_says")}</h2>
      <dl>
        <Fact name={words("heard_ignition")} value={heard.ignition === null ? "–" : words(heard.ignition ? "ignition_on" : "ignition_off")} />
        <Fact name={words("heard_supply")} value={supply} />
        <Fact name={words("heard_fix")} value={heard.fix_s === null ? words("no_fix") : words("old", { age: age(now_s - heard.fix_s, words) })} />
      </dl>
      <p class="say">{words(heard.count === 1 ? "heard_one" : "heard_many", { count: heard.count, at: clock.format(new Date(came_s * 1000)), age: age(now_s - came_s, words) })}</p>
    </section>
  );
}

function Fact({ name, value }: { name: string; value: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{value}</dd>
    </div>
  );
}

/** Seconds up to a minute, minutes and seconds up to an hour, then hours, from the third day days; what lies ahead, by a clock that is out, counts as now. */
function age(seconds: number, words: Words): string {
  const whole = Math.max(0, Math.floor(seconds));
  if (whole < MINUTE_S) return `${whole} s`;
  if (whole < HOUR_S) return `${clockText(whole)} min`;
  return whole < IN_DAYS_FROM_S ? words("hours", { hours: Math.floor(whole / HOUR_S) }) : words("days", { days: Math.floor(whole / DAY_S) });
}

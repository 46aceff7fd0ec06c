// What is asked when the vehicle is given back.
import { dayAfter } from "../../core/sign-off.ts";
import { valueIn, valuesIn } from "../../core/sheet.ts";
import type { Ends } from "../judgement.ts";
import type { Change } from "../use-sheet.ts";
import { line, list, type Ask, type Condition, type Form, type Section } from "./ask.ts";
import { condition } from "./condition.ts";
import type { Around, Given, Offer } from "./offer.ts";

const ENDED = (end: string): Condition => ({ key: "end", is: end });
const MISSING = "hand_over.missing";
const TOLD: Ask = list("hand_over", "told_driver");


/** The vehicle after the work, as the walkround's sheet has it. */
export const AFTER: Section = { title: "after", asks: condition("after"), photos: ["after"], offers: asBefore };

/** What the driver was told, as the job's sheet has it. */
export const DRIVER: Section = { title: "driver", asks: [TOLD], offers: toldAsUsual };

/** The end by hand: any of the three, and what belongs to it. */
export const END: readonly Ask[] = [
  { kind: "choice", table: "hand_over", key: "end", word: "end", values: ["proven", "provisional", "abandoned"] },
  line("hand_over", "why", ENDED("abandoned")),
  { kind: "list", table: "hand_over", key: "undone", word: "undone", when: ENDED("abandoned") },
  { kind: "list", table: "hand_over", key: "restored", word: "restored", when: ENDED("abandoned") },
];

export const HAND_OVER: Form = { stage: "hand over", sheet: "job", sections: [DRIVER] };

/** Who owes what is missing, and until when. */
export const OWED: readonly Ask[] = [
  { kind: "text", table: MISSING, key: "owed_by", word: "owed_by" },
  { kind: "day", table: MISSING, key: "until", word: "until" },
];

/** What a provisional job may lack, by the names that the engine knows. */
export const LACKS = { "parked night": "parked_night", "no coverage": "no_coverage", "indoor yard": "indoor_yard" } as const;

/** All of the condition before the work that was written down, said of the time after it. */
function asBefore({ sheet }: Around): Offer[] {
  const given = condition("after").flatMap((ask): Given[] => {
    const value = valueIn(sheet, { name: "before" }, ask.key);
    return value === null ? [] : [{ ask, value }];
  });
  return given.length > 0 ? [{ word: "as_before", from: null, given }] : [];
}

function toldAsUsual({ usual }: Around): Offer[] {
  const told = usual ? valueIn(usual.job, { name: "hand_over" }, "told_driver") : null;
  return usual && told !== null ? [{ word: "as_usual", from: usual.from, given: [{ ask: TOLD, value: told }] }] : [];
}

/** What is owed, by whom and until when, as one touch would write it; what the sheet says already stays. */
export interface Owed {
  readonly what: string;
  readonly owed_by: string;
  readonly until: string;
}

export function owedOf({ lacks }: Ends, sheet: string, usually: { owed_by: string; now: Date }): Owed[] {
  return lacks.map(({ what }) => {
    const said = (key: string): string | null => {
      const value = valueIn(sheet, { name: MISSING, where: { key: "what", value: what } }, key);
      return typeof value === "string" ? value : null;
    };
    return { what, owed_by: said("owed_by") ?? usually.owed_by, until: said("until") ?? dayAfter(usually.now) };
  });
}

/** The changes of the job's sheet that make it end so: what is no longer missing goes. */
export function endsSo(end: "proven" | "provisional", owed: readonly Owed[], sheet: string): Change[] {
  const at = (what: string): Change["table"] => ({ name: MISSING, where: { key: "what", value: what } });
  const gone = valuesIn(sheet, MISSING, "what").filter((what) => !owed.some((one) => one.what === what));
  return [
    { table: { name: "hand_over" }, key: "end", value: end },
    ...gone.flatMap((what) => ["owed_by", "until"].map((key) => ({ table: at(what), key, value: null }))),
    ...owed.flatMap(({ what, owed_by, until }) => [
      { table: at(what), key: "owed_by", value: owed_by },
      { table: at(what), key: "until", value: until },
    ]),
  ];
}

/** Whether the sheet names just what is owed, each with who owes it and until when. */
export function namesAll(owed: readonly Owed[], sheet: string): boolean {
  const named = valuesIn(sheet, MISSING, "what");
  const whole = owed.every(({ what }) => OWED.every(({ key }) => valueIn(sheet, { name: MISSING, where: { key: "what", value: what } }, key) !== null));
  return whole && named.length === owed.length;
}

// What is asked when the vehicle is given back.
import { line, list, type Ask, type Condition, type Form } from "./ask.ts";

const ENDED = (end: string): Condition => ({ key: "end", is: end });

export const HAND_OVER: Form = {
  stage: "hand over",
  sheet: "job",
  sections: [
    {
      title: "hand_over",
      asks: [
        { kind: "choice", table: "hand_over", key: "end", word: "end", values: ["proven", "provisional", "abandoned"] },
        line("hand_over", "why", ENDED("abandoned")),
        { kind: "list", table: "hand_over", key: "undone", word: "undone", when: ENDED("abandoned") },
        { kind: "list", table: "hand_over", key: "restored", word: "restored", when: ENDED("abandoned") },
        list("hand_over", "told_driver"),
      ],
    },
  ],
};

/** What a provisional job may lack, by the names that the engine knows. */
export const LACKS = { parked_night: "parked night", no_coverage: "no coverage", indoor_yard: "indoor yard" } as const;

/** Who owes what is missing, and until when. */
export const OWED: readonly Ask[] = [
  { kind: "text", table: "hand_over.missing", key: "owed_by", word: "owed_by" },
  { kind: "day", table: "hand_over.missing", key: "until", word: "until" },
];

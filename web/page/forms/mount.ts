// What is asked of the way in which the unit sits, and of the way of its leads.
import { flag, type Ask, type Form } from "./ask.ts";
import type { Around, Offer } from "./offer.ts";

const HELD = [flag("mount", "solid"), flag("mount", "reachable"), flag("mount", "dry"), flag("mount", "cool"), flag("mount", "quiet"), flag("mount", "tied"), flag("mount", "clear")];
const ROUTE = [
  flag("route", "grommets"),
  flag("route", "sheathed"),
  flag("route", "held"),
  flag("route", "drip_loop"),
  flag("route", "clear_of_heat"),
  flag("route", "clear_of_fuel"),
  flag("route", "clear_of_moving"),
];

/** The place in words, and what the rule asks of one on the windscreen; a place that is described answers the first two itself. */
export const PLACE_ASKS: readonly Ask[] = [
  { kind: "text", table: "mount", key: "place", word: "mount_place" },
  flag("mount", "windscreen"),
  { kind: "figure", table: "mount", key: "top_mm", word: "top", unit: "mm", when: { key: "windscreen", is: true } },
  { kind: "figure", table: "mount", key: "bottom_mm", word: "bottom", unit: "mm", when: { key: "windscreen", is: true } },
  flag("mount", "in_sight", { key: "windscreen", is: true }),
  flag("mount", "safety_technology", { key: "windscreen", is: true }),
];

/** Seven things that somebody looked at, each named above the button: an observation, so it is from no other vehicle. */
const allSeen =
  (asks: readonly Ask[]) =>
  (_: Around): readonly Offer[] => [{ word: "yes_to_each", from: null, given: asks.map((ask) => ({ ask, value: true })) }];

export const MOUNT: Form = {
  stage: "mount",
  sheet: "job",
  sections: [
    { title: "mount_held", asks: HELD, offers: allSeen(HELD), photos: ["mount"] },
    { title: "route", asks: ROUTE, offers: allSeen(ROUTE) },
  ],
};

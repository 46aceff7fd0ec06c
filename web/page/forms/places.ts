// A place for the unit, described by a few choices; src/backprobe/limits/cab.py says what figures they stand for.
import { shownIn, unitFor, type Units } from "../../core/units.ts";
import type { FormWord } from "../../words/form-words.ts";
import { figure, type Ask } from "./ask.ts";

export const SEATS = ["shelf", "lining", "dash", "behind_dash", "screen", "other"] as const satisfies readonly FormWord[];
export type Seat = (typeof SEATS)[number];
type Side = "above" | "ahead" | "behind" | "left" | "right";

const MATERIALS: readonly FormWord[] = ["plastic", "glass", "coated_glass", "fibreglass", "metal"];
const NEAR: readonly FormWord[] = ["hand", "forearm", "arm"];
// shown before the engine is there: src/backprobe/limits/cab.py has them, tests/web/test_places.py holds them together
const NEAR_MM: Readonly<Record<string, readonly [number, number]>> = { hand: [80, 220], forearm: [220, 500], arm: [500, 900] };
const MM_IN_CM = 10;
const ALL_SIDES: readonly Side[] = ["above", "ahead", "left", "right", "behind"];
const RAKE: Ask = { kind: "choice", table: "place", key: "rake", word: "rake", values: ["car", "steep", "upright"] };

const made = (side: Side, word: FormWord = `side_${side}`): Ask => ({ kind: "choice", table: "place", key: side, word, values: MATERIALS });
const near = (side: Side, word: FormWord = `near_${side}`): Ask => ({ kind: "choice", table: "place", key: `${side}_near`, word, values: NEAR });

const ASKS: Readonly<Record<Seat, readonly Ask[]>> = {
  shelf: [made("above"), near("above"), made("ahead"), made("left"), made("right"), made("behind")],
  lining: [made("above"), near("above")],
  dash: [made("ahead", "windscreen_is"), near("ahead", "near_windscreen"), RAKE, made("left", "left_window"), made("right", "right_window")],
  behind_dash: [made("above", "panel_is"), near("above", "near_panel"), made("ahead", "windscreen_is"), RAKE],
  screen: [made("ahead", "windscreen_is"), RAKE, made("left", "left_window"), made("right", "right_window")],
  other: [{ kind: "text", table: "place", key: "name", word: "place_name" }, ...ALL_SIDES.flatMap((side) => [made(side), near(side)])],
};

export const isSeat = (value: unknown): value is Seat => SEATS.some((seat) => seat === value);

/** What is asked of a place, by where it is. */
export const placeAsks = (seat: Seat): readonly Ask[] => ASKS[seat];

/** What a tape can say instead of the choices. */
export function measuredAsks(seat: Seat): readonly Ask[] {
  const sides = ASKS[seat].flatMap((ask) => (ask.key.endsWith("_near") ? [ask.key.replace("_near", "") as Side] : []));
  const distances = sides.map((side) => figure("place", `${side}_away_mm`, `away_${side}`, "mm"));
  return ASKS[seat].includes(RAKE) ? [...distances, figure("place", "rake_deg", "rake_measured", "°")] : distances;
}

/** The distance that 'a hand', 'a forearm', 'an arm' stands for, in the person's units; empty for any other choice. */
export function spanOf(choice: string, units: Units): string {
  const span = NEAR_MM[choice];
  if (span === undefined) return "";
  const isMetric = units === "metric";
  const [low, high] = span.map((mm) => (isMetric ? mm / MM_IN_CM : Math.round(Number(shownIn(mm, "mm", units)))));
  return `${low}–${high} ${isMetric ? "cm" : unitFor("mm", units)}`;
}

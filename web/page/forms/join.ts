// What is asked of each lead, of the ground, of the tapped circuit, of the battery and of the vehicle at rest.
//
// Asked openly is what some finding stays open without; docs/join.md has the table of it. The rest stands behind 'more'.
import type { FormWord } from "../../words/form-words.ts";
import { figure, flag, line, list, type Ask, type Condition, type Form } from "./ask.ts";

const METHODS: readonly FormWord[] = ["wrapped_splice", "crimped_butt", "soldered_sleeve", "tap_connector", "fuse_tap"];
const among = (...methods: readonly string[]): Condition[] => methods.map((is) => ({ key: "method", is }));
const when = (ask: Ask, due: Condition): Ask => ({ ...ask, when: due });

/** A question that is asked with several methods: one of them is due at most. */
const each = (ask: Ask, due: readonly Condition[]): Ask[] => due.map((one) => when(ask, one));

const PARTED = among("wrapped_splice", "crimped_butt", "soldered_sleeve");
const STRIPPED = [...PARTED, ...among("ring_terminal")];
const COVERED = among("wrapped_splice", "soldered_sleeve");
const CRIMPED = among("crimped_butt", "ring_terminal");
const TAPPED = among("fuse_tap");
const USED: Condition = { table: "joint", key: "wire", isSet: true };
const UNUSED: Condition = { table: "joint", key: "wire", isSet: false };

const method = (values: readonly FormWord[]): Ask => ({ kind: "choice", table: "joint", key: "method", word: "method", values });

/** The questions on a joint by their keys; offers answer the same ones. */
export const JOINT = {
  wire: line("joint", "wire"),
  method: method(METHODS),
  fuse_A: figure("joint", "fuse_A", "fuse", "A"),
  fuse_type: { kind: "text", table: "joint", key: "fuse_type", word: "fuse_type" },
  right_way: flag("joint", "right_way"),
  tap_most_A: figure("joint", "tap_most_A", "tap_most", "A"),
  near_module: flag("joint", "near_module"),
  place: { kind: "text", table: "joint", key: "place", word: "joint_place" },
  length_m: figure("joint", "length_m", "length", "m"),
  strip_mm: figure("joint", "strip_mm", "strip", "mm"),
  overlap_mm: figure("joint", "overlap_mm", "overlap", "mm"),
  strain_relief: flag("joint", "strain_relief"),
  damp: flag("joint", "damp"),
  drip_loop: flag("joint", "drip_loop", { key: "damp", is: true }),
  pull_N: figure("joint", "pull_N", "pull", "N"),
  tugged: flag("joint", "tugged"),
  undo: line("joint", "undo"),
  end: line("joint", "end"),
  cut_mm: figure("joint", "cut_mm", "cut", "mm"),
  capped: flag("joint", "capped"),
  tied_back: flag("joint", "tied_back"),
} as const satisfies Readonly<Record<string, Ask>>;

export type JointKey = keyof typeof JOINT;

/** What some finding needs of a joint that is made. */
const MADE: readonly Ask[] = [
  ...each(JOINT.right_way, TAPPED),
  ...each(JOINT.tap_most_A, TAPPED),
  JOINT.length_m,
  ...each(JOINT.strip_mm, STRIPPED),
  ...each(JOINT.overlap_mm, COVERED),
  JOINT.strain_relief,
  JOINT.damp,
  JOINT.drip_loop,
  ...each(JOINT.pull_N, CRIMPED),
  ...each(JOINT.tugged, CRIMPED),
];

export interface Asked {
  readonly needed: readonly Ask[]; // some finding stays open without it
  readonly more: readonly Ask[];
}

/** The questions on the joint of one lead: joined to a wire, grounded, or not used. */
export function jointAsks(purpose: string, isSplice: boolean): Asked {
  if (purpose === "ground") return { needed: [method(["ring_terminal"]), JOINT.place, ...MADE], more: [JOINT.undo] };
  const splice = isSplice ? each(JOINT.near_module, PARTED) : [];
  if (purpose === "supply" || purpose === "ignition") return { needed: [JOINT.wire, JOINT.method, JOINT.fuse_A, ...splice, ...MADE], more: [JOINT.place, JOINT.undo] };
  const [left, used] = [[JOINT.capped, JOINT.tied_back], [JOINT.method, ...MADE, ...(purpose === "input" ? LEVELS : [])]];
  const dueIf = (asks: readonly Ask[], due: Condition): Ask[] => asks.map((ask) => (ask.when ? ask : when(ask, due)));
  const rest = [...dueIf([JOINT.cut_mm], UNUSED), ...dueIf([JOINT.place, JOINT.undo, ...(purpose === "input" ? DRIVEN : [])], USED)];
  return { needed: [...dueIf(left, UNUSED), ...dueIf(used, USED)], more: [JOINT.wire, ...rest] };
}

/** What an input is judged by. */
const LEVELS: readonly Ask[] = [
  figure("input", "on_V", "on_volts", "V"),
  flag("input", "floats_off"),
  { kind: "figure", table: "input", key: "off_V", word: "off_volts", unit: "V", when: { key: "floats_off", is: false } },
  line("input", "reported_on"),
  line("input", "reported_off"),
];

/** What else may drive it. */
const DRIVEN: readonly Ask[] = [
  list("input", "sources"),
  { kind: "choice", table: "input", key: "isolation", word: "isolation", values: ["diode", "relay", "none"], when: { key: "sources", isSet: true } },
  flag("input", "coil"),
  { kind: "flag", table: "input", key: "diode", word: "flyback" },
  { kind: "choice", table: "input", key: "pulled", word: "pulled", values: ["up", "down"], when: { key: "floats_off", is: true } },
  { kind: "choice", table: "input", key: "active", word: "active", values: ["high", "low"] },
];

/** The circuit that the supply is tapped from. */
export const CIRCUIT = {
  fuse_A: figure("join", "vehicle_fuse_A", "vehicle_fuse", "A"),
  fuse_type: { kind: "text", table: "join", key: "vehicle_fuse_type", word: "vehicle_fuse_type" },
  load_A: figure("join", "vehicle_load_A", "vehicle_load", "A"),
  why_spliced: line("join", "why_spliced"),
} as const satisfies Readonly<Record<string, Ask>>;

/** A drop under a known load: neither says anything without the other. */
export interface DropAsk {
  readonly drop: Ask;
  readonly load: Ask;
}

export const GROUND_DROP: DropAsk = { drop: figure("ground", "drop_mV", "ground_drop", "mV"), load: figure("ground", "load_A", "tap_load", "A") };
export const TAP_DROP: DropAsk = { drop: figure("join", "tap_drop_mV", "tap_drop", "mV"), load: figure("join", "tap_load_A", "tap_load", "A") };

export const STANDING = {
  kind: { kind: "choice", table: "battery", key: "kind", word: "battery_kind", values: ["flooded", "agm", "unknown"] },
  capacity_Ah: figure("battery", "capacity_Ah", "capacity", "Ah"),
  age_years: { kind: "figure", table: "battery", key: "age_years", word: "age" },
  // as text, so that the last zero that the meter showed is kept
  rest_V: { kind: "text", table: "battery", key: "rest_V", word: "rest", unit: "V" },
  hours: figure("battery", "hours_since_charge", "since_charge", "h"),
  temperature_C: figure("battery", "temperature_C", "battery_temperature", "°C"),
  drain: { kind: "text", table: "parked", key: "vehicle_drain_mA", word: "vehicle_drain", unit: "mA" },
  after_lock: figure("parked", "minutes_after_lock", "after_lock", "min"),
  coldest_C: figure("parked", "coldest_C", "coldest", "°C"),
  starts_to_C: figure("parked", "starts_to_C", "starts_to", "°C"),
  wanted_days: figure("parked", "wanted_days", "wanted", "d"),
} as const satisfies Readonly<Record<string, Ask>>;

/** Asked on a page of its own kind: joints.tsx lays it out. */
export const JOIN: Form = { stage: "join", sheet: "job", sections: [] };

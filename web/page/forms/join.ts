// What is asked of each lead, of the ground, of the battery and of the vehicle at rest.
import type { FormWord } from "../../words/form-words.ts";
import { figure, flag, line, list, type Ask, type Condition, type Form } from "./ask.ts";

const METHODS: readonly FormWord[] = ["wrapped_splice", "crimped_butt", "soldered_sleeve", "tap_connector", "fuse_tap"];
const TAPPED: Condition = { key: "method", is: "fuse_tap" };
const SPLICED: readonly Condition[] = ["wrapped_splice", "crimped_butt", "soldered_sleeve"].map((is) => ({ key: "method", is }));
const SOLDERED: Condition = { key: "method", is: "soldered_sleeve" };

/** The questions on the joint of one lead: one that is joined to a wire, the ground, or one that is not used. */
export function jointAsks(purpose: string): readonly Ask[] {
  if (purpose === "ground") return [{ kind: "choice", table: "joint", key: "method", word: "method", values: ["ring_terminal"] }, ...ENDS];
  if (purpose !== "supply" && purpose !== "ignition") {
    const unused = [figure("joint", "cut_mm", "cut", "mm"), flag("joint", "capped"), flag("joint", "tied_back")];
    const used = purpose === "input" ? [...INPUT_JOINT, ...INPUT] : INPUT_JOINT;
    return [line("joint", "wire"), ...unused.map((ask) => ({ ...ask, when: UNUSED })), ...used.map((ask) => (ask.when ? ask : { ...ask, when: USED }))];
  }
  return [
    line("joint", "wire"),
    { kind: "choice", table: "joint", key: "method", word: "method", values: METHODS },
    figure("joint", "fuse_A", "fuse", "A"),
    flag("joint", "right_way", TAPPED),
    { kind: "figure", table: "joint", key: "tap_most_A", word: "tap_most", unit: "A", when: TAPPED },
    ...SPLICED.map((when) => flag("joint", "near_module", when)),
    ...ENDS,
    { kind: "figure", table: "joint", key: "overlap_mm", word: "overlap", unit: "mm", when: SOLDERED },
  ];
}

const USED: Condition = { table: "joint", key: "wire", isSet: true };
const UNUSED: Condition = { key: "wire", isSet: false };

const ENDS: readonly Ask[] = [
  { kind: "text", table: "joint", key: "place", word: "joint_place" },
  figure("joint", "length_m", "length", "m"),
  figure("joint", "strip_mm", "strip", "mm"),
  flag("joint", "strain_relief"),
  flag("joint", "damp"),
  flag("joint", "drip_loop", { key: "damp", is: true }),
  figure("joint", "pull_N", "pull", "N"),
  flag("joint", "tugged"),
  line("joint", "undo"),
];

const INPUT_JOINT: readonly Ask[] = [{ kind: "choice", table: "joint", key: "method", word: "method", values: METHODS }, ...ENDS];

/** What drives an input, its levels, and the report that proves it. */
const INPUT: readonly Ask[] = [
  figure("input", "on_V", "on_volts", "V"),
  flag("input", "floats_off"),
  { kind: "figure", table: "input", key: "off_V", word: "off_volts", unit: "V", when: { key: "floats_off", is: false } },
  list("input", "sources"),
  { kind: "choice", table: "input", key: "isolation", word: "isolation", values: ["diode", "relay", "none"], when: { key: "sources", isSet: true } },
  flag("input", "coil"),
  { kind: "flag", table: "input", key: "diode", word: "flyback" },
  { kind: "choice", table: "input", key: "pulled", word: "pulled", values: ["up", "down"], when: { key: "floats_off", is: true } },
  { kind: "choice", table: "input", key: "active", word: "active", values: ["high", "low"] },
  line("input", "reported_on"),
  line("input", "reported_off"),
];

export const JOIN: Form = {
  stage: "join",
  sheet: "job",
  sections: [
    {
      title: "around_joints",
      caution: "join_caution",
      asks: [
        figure("join", "tap_drop_mV", "tap_drop", "mV"),
        figure("join", "tap_load_A", "tap_load", "A"),
        figure("join", "vehicle_fuse_A", "vehicle_fuse", "A"),
        figure("join", "vehicle_load_A", "vehicle_load", "A"),
        line("join", "why_spliced"),
      ],
    },
    {
      title: "ground",
      asks: [figure("ground", "drop_mV", "ground_drop", "mV"), figure("ground", "load_A", "tap_load", "A")],
      photos: ["bare_joint", "ground"],
    },
    {
      title: "battery",
      asks: [
        { kind: "choice", table: "battery", key: "kind", word: "battery_kind", values: ["flooded", "agm", "unknown"] },
        figure("battery", "capacity_Ah", "capacity", "Ah"),
        { kind: "figure", table: "battery", key: "age_years", word: "age" },
        // as text, so that the last zero that the meter showed is kept
        { kind: "text", table: "battery", key: "rest_V", word: "rest", unit: "V" },
        figure("battery", "hours_since_charge", "since_charge", "h"),
        figure("battery", "temperature_C", "battery_temperature", "°C"),
      ],
    },
    {
      title: "parked",
      asks: [
        { kind: "text", table: "parked", key: "vehicle_drain_mA", word: "vehicle_drain", unit: "mA" },
        figure("parked", "minutes_after_lock", "after_lock", "min"),
        figure("parked", "coldest_C", "coldest", "°C"),
        figure("parked", "wanted_days", "wanted", "d"),
      ],
    },
  ],
};

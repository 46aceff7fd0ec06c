// What is asked at each stage, and where in the sheets the answer stands.
import type { Table } from "../core/sheet.ts";
import type { FormWord } from "../words/form-words.ts";
import type { SheetKind } from "./use-sheet.ts";

export type Ask =
  | { readonly kind: "flag" | "text" | "figure" | "list" | "day"; readonly table: string; readonly key: string; readonly word: FormWord; readonly unit?: string; readonly scan?: "vin" | "serial"; readonly when?: Condition }
  | { readonly kind: "choice"; readonly table: string; readonly key: string; readonly word: FormWord; readonly values: readonly FormWord[]; readonly when?: Condition };

/** A question that is asked only where another one, perhaps of another table, was answered so, or answered at all. */
export interface Condition {
  readonly table?: string;
  readonly key: string;
  readonly is?: boolean | string;
  readonly isSet?: boolean;
}

/** Whether a question is asked, by the answer to the one that it hangs on. */
export function isDue(when: Condition, given: unknown): boolean {
  const isSet = given !== null && given !== "";
  return when.isSet === undefined ? given === when.is : isSet === when.isSet;
}

export interface Section {
  readonly title: FormWord;
  readonly caution?: FormWord;
  readonly asks: readonly Ask[];
  readonly photos?: readonly string[];
}

export interface Form {
  readonly stage: string; // as findings name it
  readonly sheet: SheetKind;
  readonly sections: readonly Section[];
}

const flag = (table: string, key: FormWord, when?: Condition): Ask => ({ kind: "flag", table, key, word: key, ...(when ? { when } : {}) });
const line = (table: string, key: FormWord, when?: Condition): Ask => ({ kind: "text", table, key, word: key, ...(when ? { when } : {}) });
const figure = (table: string, key: string, word: FormWord, unit: string): Ask => ({ kind: "figure", table, key, word, unit });
const list = (table: string, key: FormWord): Ask => ({ kind: "list", table, key, word: key });

const condition = (table: "before" | "after"): Ask[] => [
  figure(table, "odometer_km", "odometer", "km"),
  figure(table, "engine_h", "engine_h", "h"),
  list(table, "lamps"),
  list(table, "codes"),
];

const WALKROUND: Form = {
  stage: "walkround",
  sheet: "walkround",
  sections: [
    { title: "authority", asks: [line("authority", "work_by"), line("authority", "crank_by")] },
    {
      title: "vehicle",
      asks: [
        { kind: "text", table: "vehicle", key: "vin", word: "vin", scan: "vin" },
        line("vehicle", "plate"),
        line("vehicle", "fleet_number"),
        line("vehicle", "key_with"),
      ],
      photos: ["before"],
    },
    {
      title: "unit",
      asks: [
        { kind: "text", table: "unit", key: "serial", word: "serial", scan: "serial" },
        flag("unit", "activated"),
        line("unit", "firmware"),
        line("unit", "firmware_wanted"),
        figure("unit", "backup_V", "backup", "V"),
        figure("unit", "backup_least_V", "backup_least", "V"),
        list("unit", "lights"),
      ],
      photos: ["serial_with_vin"],
    },
    { title: "before", asks: condition("before"), photos: ["dash_lamps"] },
    {
      title: "hazards",
      caution: "hazards_caution",
      asks: [
        flag("hazards", "high_voltage"),
        line("hazards", "high_voltage_by", { key: "high_voltage", is: true }),
        flag("hazards", "restraint_near_work"),
        line("hazards", "restraint_procedure", { key: "restraint_near_work", is: true }),
        flag("hazards", "dual_batteries"),
        flag("hazards", "battery_switch"),
        { kind: "choice", table: "hazards", key: "battery_switch_side", word: "battery_switch_side", values: ["positive", "negative"], when: { key: "battery_switch", is: true } },
        { kind: "figure", table: "hazards", key: "after_run_min", word: "after_run", unit: "min", when: { key: "battery_switch", is: true } },
        flag("hazards", "dangerous_goods"),
        line("hazards", "dangerous_goods_consent", { key: "dangerous_goods", is: true }),
        flag("hazards", "trailer"),
        flag("hazards", "system_48V"),
      ],
    },
    { title: "devices", asks: [flag("devices", "looked_for")] },
    { title: "after", asks: condition("after"), photos: ["after"] },
  ],
};

const MOUNT: Form = {
  stage: "mount",
  sheet: "job",
  sections: [
    {
      title: "mount",
      caution: "mount_caution",
      asks: [
        { kind: "text", table: "mount", key: "place", word: "mount_place" },
        flag("mount", "solid"),
        flag("mount", "reachable"),
        flag("mount", "dry"),
        flag("mount", "cool"),
        flag("mount", "quiet"),
        flag("mount", "tied"),
        flag("mount", "clear"),
        flag("mount", "windscreen"),
        { kind: "figure", table: "mount", key: "top_mm", word: "top", unit: "mm", when: { key: "windscreen", is: true } },
        { kind: "figure", table: "mount", key: "bottom_mm", word: "bottom", unit: "mm", when: { key: "windscreen", is: true } },
        flag("mount", "in_sight", { key: "windscreen", is: true }),
        flag("mount", "safety_technology", { key: "windscreen", is: true }),
      ],
      photos: ["mount"],
    },
    {
      title: "route",
      asks: [
        flag("route", "grommets"),
        flag("route", "sheathed"),
        flag("route", "held"),
        flag("route", "drip_loop"),
        flag("route", "clear_of_heat"),
        flag("route", "clear_of_fuel"),
        flag("route", "clear_of_moving"),
      ],
    },
  ],
};

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

const JOIN: Form = {
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

const ENDED = (end: string): Condition => ({ key: "end", is: end });

const HAND_OVER: Form = {
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

export const FORMS = { walkround: WALKROUND, join: JOIN, mount: MOUNT, hand_over: HAND_OVER } as const satisfies Readonly<Record<string, Form>>;
export type FormName = keyof typeof FORMS;

/** Of several tables the one that is meant: the joint of a lead, what is missing by its name. */
export interface Which {
  readonly key: "lead" | "what";
  readonly value: string;
}

/** The table in which an ask's answer stands. */
export function tableOf(ask: Ask, which: Which | null): Table {
  return which === null ? { name: ask.table } : { name: ask.table, where: which };
}

// What is asked before anything is touched; the time after the work is asked for at the hand-over.
import { flag, line, list, type Form } from "./ask.ts";
import { condition } from "./condition.ts";
import { atUnit, atVehicle, isAnyFound, isWritten, noDevices, noHazards, nothingBurns, sheetVehicle, yardAllowed } from "./walkround-offers.ts";

const OWN_BATTERY = { key: "backup", is: true } as const;
const SWITCH = { key: "battery_switch", is: true } as const;

export const WALKROUND: Form = {
  stage: "walkround",
  sheet: "walkround",
  sections: [
    { title: "authority", asks: [line("authority", "work_by"), line("authority", "crank_by")], offers: yardAllowed },
    {
      title: "vehicle",
      asks: [
        { kind: "text", table: "vehicle", key: "vin", word: "vin", scan: "vin" },
        line("vehicle", "plate"),
        line("vehicle", "fleet_number"),
        line("vehicle", "key_with"),
      ],
      expected: ({ jobSheet }) => sheetVehicle(jobSheet, "vin"),
      rare: ({ jobSheet }) => ["plate", "fleet_number"].filter((key) => !isWritten(jobSheet, "vehicle", key)),
      offers: atVehicle,
      photos: ["before"],
    },
    {
      title: "unit",
      asks: [
        { kind: "text", table: "unit", key: "serial", word: "serial", scan: "serial" },
        flag("unit", "activated"),
        line("unit", "firmware"),
        line("unit", "firmware_wanted"),
        { kind: "flag", table: "unit", key: "backup", word: "has_backup" },
        { kind: "figure", table: "unit", key: "backup_V", word: "backup", unit: "V", when: OWN_BATTERY },
        { kind: "figure", table: "unit", key: "backup_least_V", word: "backup_least", unit: "V", when: OWN_BATTERY },
        list("unit", "lights"),
      ],
      expected: ({ jobSheet }) => sheetVehicle(jobSheet, "serial", "unit"),
      offers: atUnit,
      photos: ["serial_with_vin"],
    },
    {
      title: "before",
      asks: condition("before"),
      rare: ({ usual }) => (isWritten(usual?.walkround ?? "", "before", "engine_h") ? [] : ["engine_h"]),
      offers: nothingBurns,
      photos: ["dash_lamps"],
    },
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
        { kind: "choice", table: "hazards", key: "battery_switch_side", word: "battery_switch_side", values: ["positive", "negative"], when: SWITCH },
        { kind: "figure", table: "hazards", key: "after_run_min", word: "after_run", unit: "min", when: SWITCH },
        flag("hazards", "dangerous_goods"),
        line("hazards", "dangerous_goods_consent", { key: "dangerous_goods", is: true }),
        flag("hazards", "trailer"),
        flag("hazards", "system_48V"),
      ],
      offers: noHazards,
    },
    { title: "devices", asks: [flag("devices", "looked_for")], rare: ({ sheet }) => (isAnyFound(sheet) ? ["looked_for"] : []), offers: noDevices },
  ],
};

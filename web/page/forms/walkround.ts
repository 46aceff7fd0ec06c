// What is asked before anything is touched, and after the work.
import { figure, flag, line, list, type Ask, type Form } from "./ask.ts";

const condition = (table: "before" | "after"): Ask[] => [
  figure(table, "odometer_km", "odometer", "km"),
  figure(table, "engine_h", "engine_h", "h"),
  list(table, "lamps"),
  list(table, "codes"),
];

export const WALKROUND: Form = {
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

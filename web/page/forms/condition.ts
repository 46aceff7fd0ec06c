// The vehicle's condition: asked before anything is touched, and again when it is given back.
import { figure, list, type Ask } from "./ask.ts";

export const condition = (table: "before" | "after"): Ask[] => [
  { kind: "figure", table, key: "odometer_km", word: "odometer", unit: "km", twin: { key: "odometer_mi", unit: "mi", as: "before" } },
  figure(table, "engine_h", "engine_h", "h"),
  list(table, "lamps"),
  list(table, "codes"),
];

// The vehicle's condition: asked before anything is touched, and again when it is given back.
import { figure, list, type Ask } from "./ask.ts";

export const condition = (table: "before" | "after"): Ask[] => [
  figure(table, "odometer_km", "odometer", "km"),
  figure(table, "engine_h", "engine_h", "h"),
  list(table, "lamps"),
  list(table, "codes"),
];

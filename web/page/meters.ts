// The classes of meters that src/backprobe/limits/meters.py knows.
export const METERS = ["basic", "service", "precise"] as const;
export type MeterName = (typeof METERS)[number];

// What is sent together.
import type { Written } from "./entry.ts";

export const MOST_ENTRIES = 500;
export const MOST_BATCH_BYTES = 4_000_000;

/** The first of `waiting` that go into one batch: at most 500 and at most 4 MB, but always one. */
export function firstBatch<T extends Pick<Written, "raw">>(waiting: readonly T[]): T[] {
  const batch: T[] = [];
  let bytes = 0;
  for (const entry of waiting.slice(0, MOST_ENTRIES)) {
    bytes += entry.raw.length * 3; // UTF-8 needs at most three bytes for each of a text's units
    if (batch.length > 0 && bytes > MOST_BATCH_BYTES) break;
    batch.push(entry);
  }
  return batch;
}

/** How long to wait before the next try [ms]: doubled after each that failed in a row, at most two minutes. */
export function wait_ms(failures: number): number {
  return Math.min(120_000, 2_000 * 2 ** Math.min(failures, 10));
}

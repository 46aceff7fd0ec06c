// Ids of entries that are written as things happen: UUID version 7, RFC 9562 section 5.7.
import { hex } from "./digest.ts";

/** The id of milliseconds since 1970 and ten random bytes; the same as backprobe/job/ids.py makes. */
export function timedId(time_ms: number, random: Uint8Array): string {
  const bytes = new Uint8Array(16);
  let rest = time_ms;
  for (let at = 5; at >= 0; at -= 1) {
    bytes[at] = rest % 256;
    rest = Math.floor(rest / 256);
  }
  bytes.set(random.subarray(0, 10), 6);
  bytes[6] = 0x70 | ((bytes[6] as number) & 0x0f);
  bytes[8] = 0x80 | ((bytes[8] as number) & 0x3f);
  const text = hex(bytes);
  return [text.slice(0, 8), text.slice(8, 12), text.slice(12, 16), text.slice(16, 20), text.slice(20)].join("-");
}

/** A new id, of now. */
export function newId(): string {
  return timedId(Date.now(), crypto.getRandomValues(new Uint8Array(10)));
}

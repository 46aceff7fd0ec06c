// Which of a journal's signatures hold: checked by the browser, each once; the engine is told, as it cannot check one.
import type { Written } from "../core/entry.ts";
import { signatureHolds, signedIn } from "../core/sign-off.ts";

const checked = new Map<string, boolean>(); // by an entry's exact text

/** By the id of a sign-off whether its signature holds; of those that cannot be checked here nothing is said. */
export async function signaturesOf(entries: readonly Pick<Written, "id" | "kind" | "raw">[]): Promise<Readonly<Record<string, boolean>>> {
  const found: Record<string, boolean> = {};
  for (const { id, kind, raw } of entries) {
    if (kind !== "sign_off") continue;
    const signed = signedIn(raw);
    const holds = checked.get(raw) ?? (signed ? await signatureHolds(signed) : false);
    if (holds === null) continue;
    checked.set(raw, holds);
    found[id] = holds;
  }
  return found;
}

// Digests, as the journal names them.

/** The sha256 of text (in UTF-8) or bytes, in lower-case hex. */
export async function sha256(content: string | Uint8Array<ArrayBuffer>): Promise<string> {
  const bytes = typeof content === "string" ? new TextEncoder().encode(content) : content;
  return hex(new Uint8Array(await crypto.subtle.digest("SHA-256", bytes)));
}

/** Bytes as lower-case hex. */
export function hex(bytes: Uint8Array): string {
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

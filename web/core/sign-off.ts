// Signing: the engine says which bytes, a key that never leaves this browser signs them. See docs/hand-over.md.
import { canonical, type Body, type Json } from "./canonical.ts";
import { hex } from "./digest.ts";

const ED25519 = "Ed25519";
const UNSIGNED = "";

/** A sign-off's public key and signature, and the bytes that were signed, as text. */
export interface Signed {
  readonly key: string;
  readonly signature: string;
  readonly text: string;
}

/** A fresh pair of keys, the private one not to be taken out; null where this browser has no Ed25519. */
export async function newKeys(): Promise<CryptoKeyPair | null> {
  try {
    return (await crypto.subtle.generateKey(ED25519, false, ["sign", "verify"])) as CryptoKeyPair;
  } catch (fault) {
    if (fault instanceof DOMException && fault.name === "NotSupportedError") return null;
    throw fault;
  }
}

/** The public key, 64 hex digits. */
export async function publicKeyOf({ publicKey }: CryptoKeyPair): Promise<string> {
  return hex(new Uint8Array(await crypto.subtle.exportKey("raw", publicKey)));
}

/** The signature over a text's bytes, 128 hex digits. */
export async function signatureOf({ privateKey }: CryptoKeyPair, text: string): Promise<string> {
  return hex(new Uint8Array(await crypto.subtle.sign(ED25519, privateKey, new TextEncoder().encode(text))));
}

/** Whether a signature is that of a key over a text; null where this browser cannot tell. */
export async function signatureHolds({ key, signature, text }: Signed): Promise<boolean | null> {
  try {
    const known = await crypto.subtle.importKey("raw", bytesOf(key), ED25519, false, ["verify"]);
    return await crypto.subtle.verify(ED25519, known, bytesOf(signature), new TextEncoder().encode(text));
  } catch (fault) {
    if (fault instanceof DOMException && fault.name === "NotSupportedError") return null;
    return false; // no key, or none that anybody can sign with
  }
}

/** What was signed in a sign-off's text; null where it holds no signature. */
export function signedIn(raw: string): Signed | null {
  const entry = JSON.parse(raw) as { readonly [key: string]: Json; readonly body: Body };
  const { key, signature } = entry.body;
  if (typeof key !== "string" || typeof signature !== "string") return null;
  return { key, signature, text: canonical({ ...entry, body: { ...entry.body, signature: UNSIGNED } }) };
}

/** The entry with its signature in it. Throws where the text is not that of an entry that waits for one. */
export function withSignature(unsigned: string, signature: string): string {
  const entry = JSON.parse(unsigned) as { readonly [key: string]: Json; readonly body: Body };
  if (entry.body["signature"] !== UNSIGNED || canonical(entry) !== unsigned) throw new Error("this is no sign-off that waits for its signature");
  return canonical({ ...entry, body: { ...entry.body, signature } });
}

/** A key's fingerprint, or the like, in groups of four, to be read out and compared. */
export function grouped(digits: string): string {
  return digits.match(/.{1,4}/g)?.join(" ") ?? "";
}

/** The day after that of a moment, by the phone's own calendar, as YYYY-MM-DD. */
export function dayAfter(moment: Date): string {
  const next = new Date(moment.getFullYear(), moment.getMonth(), moment.getDate() + 1);
  return [next.getFullYear(), next.getMonth() + 1, next.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
}

function bytesOf(digits: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(digits.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));
}

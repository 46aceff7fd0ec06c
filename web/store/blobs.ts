// Files on the phone, each under its sha256.
import { sha256 } from "../core/digest.ts";
import { answered, kept, reading, writing } from "./database.ts";

export interface NewBlob {
  readonly sha256: string;
  readonly type: string;
  readonly bytes: ArrayBuffer;
}

export interface KeptBlob extends NewBlob {
  readonly waiting?: 1;
}

/** A text as a file. */
export async function textBlob(text: string): Promise<NewBlob> {
  const bytes = new TextEncoder().encode(text);
  return { sha256: await sha256(bytes), type: "text/plain", bytes: bytes.buffer };
}

/** Keeps a file that came from the server, or that it has already. */
export async function keepKnown(blob: NewBlob): Promise<void> {
  const transaction = await writing("blobs");
  const done = kept(transaction);
  const store = transaction.objectStore("blobs");
  if ((await answered(store.getKey(blob.sha256))) === undefined) store.put(blob);
  await done;
}

/** The file of that digest; null where this phone has none. */
export async function blobOf(digest: string): Promise<KeptBlob | null> {
  return ((await answered((await reading("blobs")).get(digest))) as KeptBlob | undefined) ?? null;
}

/** Its text; null where this phone has no such file or it is no text. */
export async function textOf(digest: string): Promise<string | null> {
  const found = await blobOf(digest);
  return found?.type.startsWith("text/") ? decoded(found.bytes) : null;
}

/** As the engine elsewhere reads a file: by its byte order mark, else as UTF-8, else by Windows' western code page. */
function decoded(bytes: ArrayBuffer): string {
  const [first, second] = new Uint8Array(bytes.slice(0, 2));
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) return new TextDecoder(first === 0xff ? "utf-16le" : "utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

/** The digests of files that wait to be sent. */
export async function waitingBlobs(): Promise<string[]> {
  return answered((await reading("blobs")).index("waiting").getAllKeys()) as Promise<string[]>;
}

/** Notes that the server has the file. */
export async function blobSent(digest: string): Promise<void> {
  const transaction = await writing("blobs");
  const done = kept(transaction);
  const store = transaction.objectStore("blobs");
  const { waiting: _, ...rest } = (await answered(store.get(digest))) as KeptBlob;
  store.put(rest);
  await done;
}

// The pair of keys that this phone signs with: made once, kept in this browser's database, the private one for signing only.
import { newKeys } from "../core/sign-off.ts";
import { answered, kept, reading, writing } from "./database.ts";

const PAIR = "signing keys"; // among the settings, under names that no setting has
const GIVEN = "signing key given";
const LOCK = "backprobe-keys"; // two windows of one phone make one pair

/** The phone's keys, made where there are none; null where this browser cannot have any. */
export async function keysHere(): Promise<CryptoKeyPair | null> {
  return navigator.locks.request(LOCK, async () => {
    const known = (await answered((await reading("settings")).get(PAIR))) as CryptoKeyPair | undefined;
    if (known) return known;
    const fresh = await newKeys();
    if (fresh) await put(PAIR, fresh);
    return fresh;
  });
}

/** The token with which the public key was given to the server; null where it was not. */
export async function keyGivenWith(): Promise<string | null> {
  return ((await answered((await reading("settings")).get(GIVEN))) as string | undefined) ?? null;
}

/** Notes that the server knows the key, by the token with which it was told. */
export async function keyGiven(token: string): Promise<void> {
  await put(GIVEN, token);
}

async function put(name: string, value: unknown): Promise<void> {
  const transaction = await writing("settings");
  const done = kept(transaction);
  transaction.objectStore("settings").put(value, name);
  await done;
}

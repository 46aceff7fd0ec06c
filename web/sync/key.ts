// The server is told which key this phone signs with: after enrolling, and once by phones that were enrolled before.
import { publicKeyOf, signatureOf } from "../core/sign-off.ts";
import { keyGiven, keyGivenWith, keysHere } from "../store/keys.ts";
import type { Enrolment } from "../store/settings.ts";
import { giveKey, Refused } from "./server.ts";

const PROOF = "backprobe: the key of "; // with the phone's name after it: what shows that the phone has the private key

/** Gives the public key unless the server has it; a server that does not take it is asked again at the next round. */
export async function makeKeyKnown({ device, token }: Enrolment): Promise<void> {
  if ((await keyGivenWith()) === token) return;
  const pair = await keysHere().catch(() => null); // a database that keeps no keys: the page says so where one is to be used
  if (!pair) return;
  try {
    await giveKey(await publicKeyOf(pair), await signatureOf(pair, PROOF + device), token);
    await keyGiven(token);
  } catch (fault) {
    if (!(fault instanceof Refused) || fault.code === "phone_withdrawn" || fault.code === "not_enrolled") throw fault;
  }
}

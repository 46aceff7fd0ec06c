// Enrolling this phone.
import { keepSetting, setting, type Person } from "../store/settings.ts";
import { hex } from "../core/digest.ts";
import { enrol } from "./server.ts";
import { syncNow } from "./sync.ts";

const RANDOM_BYTES = 8;

/** The name of this phone's chain: chosen once, so that enrolling again goes on with the same chain. */
async function deviceName(): Promise<string> {
  const known = await setting("device");
  if (known) return known;
  const fresh = `phone-${hex(crypto.getRandomValues(new Uint8Array(RANDOM_BYTES)))}`;
  await keepSetting("device", fresh);
  return fresh;
}

/** Enrols with a code and fetches the day; returns the person whose phone this is now. Throws Refused. */
export async function enrolHere(code: string, label: string): Promise<Person> {
  const { token, device, organisation, person } = await enrol(code, await deviceName(), label);
  await keepSetting("enrolment", { device, token, organisation: organisation.name, person });
  await navigator.storage?.persist?.();
  await syncNow();
  return person;
}

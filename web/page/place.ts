// Where in the app one is: the part of the address behind '#'.
import { useEffect, useState } from "preact/hooks";
import { ORDER, type Worked } from "../core/onward.ts";

export const STAGE_NAMES = ORDER;
export type StageName = Worked;

export type Place =
  | { readonly name: "today" }
  | { readonly name: "enrol"; readonly code: string }
  | { readonly name: "settings" }
  | { readonly name: "job"; readonly job: string }
  | { readonly name: "stage"; readonly job: string; readonly stage: StageName };

/** The place that an address names; today's list where it names none. */
export function placeIn(hash: string): Place {
  if (hash.startsWith("#enrol=")) return { name: "enrol", code: decodeURIComponent(hash.slice("#enrol=".length)) };
  const [name, job, stage] = hash.replace(/^#\/?/, "").split("/").map(decodeURIComponent);
  if (name === "enrol") return { name, code: "" };
  if (name === "settings") return { name };
  const known = STAGE_NAMES.find((one) => one === stage);
  if (name === "job" && job) return known ? { name: "stage", job, stage: known } : { name: "job", job };
  return { name: "today" };
}

/** The address of a place. */
export function addressOf(place: Place): string {
  if (place.name === "job") return `#/job/${encodeURIComponent(place.job)}`;
  if (place.name === "stage") return `#/job/${encodeURIComponent(place.job)}/${place.stage}`;
  return place.name === "today" ? "#/" : `#/${place.name}`;
}

/** Goes somewhere. */
export function goTo(place: Place): void {
  location.hash = addressOf(place);
}

/** Where one is now. */
export function usePlace(): Place {
  const [place, setPlace] = useState(() => placeIn(location.hash));
  useEffect(() => {
    const moved = (): void => setPlace(placeIn(location.hash));
    addEventListener("hashchange", moved);
    return () => removeEventListener("hashchange", moved);
  }, []);
  return place;
}

// Where on the desk one is: the part of the address behind '#'.
import { useEffect, useState } from "preact/hooks";

export const PAGES = ["jobs", "roster", "people", "feeds", "aside"] as const;
export type Place = { readonly name: (typeof PAGES)[number] | "new" } | { readonly name: "job"; readonly job: string };

/** The place that an address names; the list of jobs where it names none. */
export function placeIn(hash: string): Place {
  const [name, job] = hash.replace(/^#\/?/, "").split("/").map(decodeURIComponent);
  if (name === "job" && job) return { name, job };
  if (name === "new") return { name };
  return { name: PAGES.find((page) => page === name) ?? "jobs" };
}

/** The address of a place. */
export function addressOf(place: Place): string {
  return place.name === "job" ? `#/job/${encodeURIComponent(place.job)}` : `#/${place.name}`;
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

// What is asked of the place of the unit and of the way of its leads.
import { flag, type Form } from "./ask.ts";

export const MOUNT: Form = {
  stage: "mount",
  sheet: "job",
  sections: [
    {
      title: "mount",
      caution: "mount_caution",
      asks: [
        { kind: "text", table: "mount", key: "place", word: "mount_place" },
        flag("mount", "solid"),
        flag("mount", "reachable"),
        flag("mount", "dry"),
        flag("mount", "cool"),
        flag("mount", "quiet"),
        flag("mount", "tied"),
        flag("mount", "clear"),
        flag("mount", "windscreen"),
        { kind: "figure", table: "mount", key: "top_mm", word: "top", unit: "mm", when: { key: "windscreen", is: true } },
        { kind: "figure", table: "mount", key: "bottom_mm", word: "bottom", unit: "mm", when: { key: "windscreen", is: true } },
        flag("mount", "in_sight", { key: "windscreen", is: true }),
        flag("mount", "safety_technology", { key: "windscreen", is: true }),
      ],
      photos: ["mount"],
    },
    {
      title: "route",
      asks: [
        flag("route", "grommets"),
        flag("route", "sheathed"),
        flag("route", "held"),
        flag("route", "drip_loop"),
        flag("route", "clear_of_heat"),
        flag("route", "clear_of_fuel"),
        flag("route", "clear_of_moving"),
      ],
    },
  ],
};

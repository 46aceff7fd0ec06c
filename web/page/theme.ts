// Light, dark, or as the phone has it.
import type { Settings } from "../store/settings.ts";

/** Shows the page in that theme. */
export function showTheme(theme: Settings["theme"]): void {
  if (theme === "auto") delete document.documentElement.dataset["theme"];
  else document.documentElement.dataset["theme"] = theme;
}

// Opening files. In English and in Spanish side by side.
import type { Pairs } from "../words.ts";

export const FILES = {
  open_recording: ["Open a recording (CSV)", "Abrir una grabación (CSV)"],
  open_reports: ["Open the unit's reports (CSV)", "Abrir los informes de la unidad (CSV)"],
  paste_reports: ["or paste them, headings first", "o pegarlos, con los títulos primero"],
  keep_pasted: ["Keep what was pasted", "Guardar lo pegado"],
  file_too_large: ["This file is larger than 20 MB: give it to the desk.", "Este archivo supera 20 MB: entréguelo en la oficina."],
} as const satisfies Pairs;

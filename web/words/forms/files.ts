// Opening files. In English and in Spanish side by side.
import type { Pairs } from "../words.ts";

export const FILES = {
  open_file: ["Open a file", "Abrir un archivo"],
  open_file_say: ["A recording (CSV), a receiver's log (NMEA), a bus log, the unit's reports or what its lights showed.", "Una grabación (CSV), un registro del receptor (NMEA), un registro del bus, los informes de la unidad o lo que mostraron sus luces."],
  file_listening: ["Reading {name} …", "Leyendo {name} …"],
  file_taken: ["{name}: {what}", "{name}: {what}"],
  file_is_recording: ["taken for a recording", "se toma por una grabación"],
  file_is_reception: ["taken for a receiver's log", "se toma por un registro del receptor"],
  file_is_bus_log: ["taken for a bus log", "se toma por un registro del bus"],
  file_is_reports: ["taken for the unit's reports", "se toma por los informes de la unidad"],
  file_is_lights_file: ["taken for what the lights showed", "se toma por lo que mostraron las luces"],
  file_refused: ["Not kept: {why}", "No se guardó: {why}"],
  file_unread: ["Not kept: this phone cannot read {name} now. Give it to the desk.", "No se guardó: este teléfono no puede leer {name} ahora. Entréguelo en la oficina."],
  paste_reports: ["or paste the reports, headings first", "o pegar los informes de la unidad, con los títulos primero"],
  keep_pasted: ["Keep what was pasted", "Guardar lo pegado"],
  file_too_large: ["This file is larger than 20 MB: give it to the desk.", "Este archivo supera 20 MB: entréguelo en la oficina."],
} as const satisfies Pairs;

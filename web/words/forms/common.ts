// What every form says. In English and in Spanish side by side.
import type { Pairs } from "../words.ts";

export const COMMON = {
  yes: ["yes", "sí"],
  no: ["no", "no"],
  none: ["none", "ninguno"],
  something: ["there are", "hay"],
  as_usual: ["As in {vehicle}", "Como en {vehicle}"],
  one_by_one: ["One by one", "Una por una"],
  take_back_touch: ["Take back what the touch said", "Retirar lo que dijo el toque"],
  scan: ["Scan", "Escanear"],
  take_photo: ["Take a photo", "Tomar una foto"],
  another_photo: ["Another photo", "Otra foto"],
  separated: ["Several: with a comma between", "Varios: con una coma en medio"],
  photo_bad: ["This picture cannot be read", "No se puede leer esta imagen"],
  serial_elsewhere: ["This unit is in {vehicle} already. Look at the label again; if it is right, tell the lead.", "Esta unidad ya está en {vehicle}. Mire la etiqueta otra vez; si es correcta, avise al encargado."],
  other_sheet: ["Another phone wrote this sheet, too: the lead decides which of them holds. Here stands the newest. What differs:", "Otro teléfono también escribió esta hoja: el encargado decide cuál vale. Aquí está la más nueva. Lo que difiere:"],
  here_there: ["here {here}, there {there}", "aquí {here}, allí {there}"],
  sheet_shut: ["This value stands over several lines of the sheet and is changed at the desk only.", "Este valor ocupa varias líneas de la hoja y solo se cambia en la oficina."],
} as const satisfies Pairs;

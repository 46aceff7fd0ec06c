// What is asked at the hand-over. In English and in Spanish side by side.
import type { Pairs } from "../words.ts";

export const HAND_OVER = {
  hand_over: ["How the job ends", "Cómo termina el trabajo"],
  end: ["It ends", "Termina"],
  proven: ["proven", "comprobado"],
  provisional: ["provisional", "provisional"],
  abandoned: ["abandoned", "abandonado"],
  why: ["Why", "Por qué"],
  undone: ["What was taken out again", "Lo que se quitó otra vez"],
  restored: ["What was put back and tested", "Lo que se repuso y probó"],
  told_driver: ["What the driver was told", "Lo que se dijo al conductor"],
  missing: ["What is missing", "Lo que falta"],
  parked_night: ["a night parked", "una noche aparcado"],
  no_coverage: ["no coverage here", "aquí no hay cobertura"],
  indoor_yard: ["an indoor yard", "un patio cubierto"],
  owed_by: ["Who owes it", "Quién lo debe"],
  until: ["Until when", "Hasta cuándo"],
  signature: ["Signature of whoever takes the vehicle back", "Firma de quien recibe el vehículo"],
  signature_say: ["Sign with a finger. What is drawn is kept as a picture, not as a name.", "Firme con un dedo. Lo dibujado se guarda como imagen, no como nombre."],
  signature_clear: ["Clear", "Borrar"],
  signature_keep: ["Keep the signature", "Guardar la firma"],
  signature_another: ["Sign again", "Firmar otra vez"],
  print: ["Print or save what was found", "Imprimir o guardar lo encontrado"],
} as const satisfies Pairs;

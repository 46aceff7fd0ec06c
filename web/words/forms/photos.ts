// What a photo shows and protects from. In English and in Spanish side by side.
import type { Pairs } from "../words.ts";

export const PHOTOS = {
  photo_signature: ["Signature", "Firma"],
  photo_serial_with_vin: ["Serial with VIN: shows that this unit is in this vehicle.", "Serie con VIN: muestra que esta unidad está en este vehículo."],
  photo_bare_joint: ["The joint before it is covered: shows that it was made well.", "La unión antes de cubrirla: muestra que se hizo bien."],
  photo_ground: ["The ground point: shows bare metal.", "El punto de masa: muestra metal limpio."],
  photo_dash_lamps: ["The lamps of the dash: show what burned before you began.", "Los testigos: muestran lo que ya estaba encendido."],
  photo_mount: ["Where the unit is fixed.", "Dónde está fijada la unidad."],
  photo_before: ["The vehicle before the work: shows what was damaged already.", "El vehículo antes: muestra lo que ya estaba dañado."],
  photo_after: ["The vehicle after the work.", "El vehículo después del trabajo."],
} as const satisfies Pairs;

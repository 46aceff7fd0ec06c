// What a photo shows and protects from. In English and in Spanish side by side.
import type { Pairs } from "../words.ts";

export const PHOTOS = {
  photo_signature: ["Signature", "Firma"],
  photo_serial_with_vin: ["Serial with VIN, both in one picture: protects you when it is said that this unit is in another vehicle.", "Serie con VIN, ambos en una foto: le protege si se dice que esta unidad está en otro vehículo."],
  photo_bare_joint: ["The joint before it is covered: protects you when it is said that it was made badly.", "La unión antes de cubrirla: le protege si se dice que se hizo mal."],
  photo_ground: ["The ground point, bare metal: protects you when a bad ground is laid at your door.", "El punto de masa, metal limpio: le protege si le achacan una mala masa."],
  photo_dash_lamps: ["The lamps of the dash with the key on: protects you when it is said that one came on through your work.", "Los testigos con el contacto puesto: le protege si se dice que uno se encendió por su trabajo."],
  photo_mount: ["Where the unit is fixed.", "Dónde está fijada la unidad."],
  photo_before: ["The vehicle before the work: shows what was damaged already.", "El vehículo antes: muestra lo que ya estaba dañado."],
  photo_after: ["The vehicle after the work.", "El vehículo después del trabajo."],
  photo_other: ["Anything else.", "Cualquier otra cosa."],
  more_photos: ["Another photo", "Otra foto"],
} as const satisfies Pairs;

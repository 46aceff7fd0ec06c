// What is asked of mount and routing. In English and in Spanish side by side.
import type { Pairs } from "../words.ts";

export const MOUNT = {
  mount: ["Where the unit sits", "Dónde va la unidad"],
  mount_caution: ["Never where an airbag opens, near the steering column, the pedals or a hot duct.", "Nunca donde se abre un airbag, ni junto a la columna, los pedales o un conducto caliente."],
  mount_place: ["Place", "Lugar"],
  solid: ["Held firmly?", "¿Bien sujeta?"],
  reachable: ["Can it be reached again?", "¿Se puede volver a alcanzar?"],
  dry: ["Dry?", "¿Seca?"],
  cool: ["Away from heat?", "¿Lejos del calor?"],
  quiet: ["Free of rattle and shaking?", "¿Sin golpes ni vibración?"],
  tied: ["Leads tied?", "¿Cables atados?"],
  clear: ["Clear of airbags, column, pedals, ducts?", "¿Lejos de airbags, columna, pedales, conductos?"],
  windscreen: ["On the windscreen?", "¿En el parabrisas?"],
  top: ["Below the upper edge of the swept area", "Bajo el borde superior del barrido"],
  bottom: ["Above its lower edge", "Sobre su borde inferior"],
  in_sight: ["In the driver's line of sight?", "¿A la vista del conductor?"],
  safety_technology: ["Looked up that the rule (49 CFR 393.5) counts it?", "¿Comprobó que la norma (49 CFR 393.5) la incluye?"],
  route: ["How the leads run", "Por dónde van los cables"],
  grommets: ["A grommet in every hole in sheet metal?", "¿Pasacables en cada agujero de chapa?"],
  sheathed: ["Covered all round?", "¿Cubiertos por completo?"],
  held: ["Tied along the way?", "¿Atados por el camino?"],
  drip_loop: ["A low point, so that water drips off before it?", "¿Un punto bajo, para que el agua gotee antes?"],
  clear_of_heat: ["Clear of exhaust, heater, engine?", "¿Lejos de escape, calefactor, motor?"],
  clear_of_fuel: ["Clear of fuel lines and tanks?", "¿Lejos de conductos y depósitos de combustible?"],
  clear_of_moving: ["Clear of what moves?", "¿Lejos de lo que se mueve?"],
} as const satisfies Pairs;

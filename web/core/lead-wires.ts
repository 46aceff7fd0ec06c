// The wires that a sheet means for the unit's leads, with the places where they are to be found.
import { valueIn, valuesIn } from "./sheet.ts";
import { LEADS, type Lead, type ProbeTable } from "./probe-table.ts";

export interface LeadWire {
  readonly lead: Lead;
  readonly name: string;
  readonly connector: string;
  readonly cavity: string;
  readonly colour: string;
  readonly circuit: string;
}

/** By a sheet's [[wire]] tables: the first that names a lead is that lead's. */
export function leadWiresIn(sheet: string): LeadWire[] {
  const named = valuesIn(sheet, "wire", "name").map((name) => wireIn(sheet, name));
  return LEADS.flatMap((lead) => {
    const found = named.find((one) => one.lead === lead);
    return found ? [{ ...found, lead }] : [];
  });
}

type Written = Omit<LeadWire, "lead"> & { readonly lead: string };

function wireIn(sheet: string, name: string): Written {
  const said = (key: string): string => {
    const value = valueIn(sheet, { name: "wire", where: { key: "name", value: name } }, key);
    return typeof value === "string" ? value : "";
  };
  return { name, lead: said("lead"), connector: said("connector"), cavity: said("cavity"), colour: said("colour"), circuit: said("circuit") };
}

/** Of this job: what its journal means, else its sheet; each with what either says of its place. */
export function leadWiresOf(table: ProbeTable, sheet: string): LeadWire[] {
  const written = leadWiresIn(sheet);
  return LEADS.flatMap((lead) => {
    const claimed = table.claims.get(`tap_${lead}`)?.values ?? [];
    if (claimed.length > 1) return []; // two mean two: it is decided elsewhere
    const name = claimed[0] ?? written.find((one) => one.lead === lead)?.name;
    if (name === undefined) return [];
    const said = wireIn(sheet, name);
    const known = table.wires.find((one) => one.name === name);
    return {
      lead,
      name,
      connector: known?.connector || said.connector,
      cavity: known?.cavity || said.cavity,
      colour: known?.colour || said.colour,
      circuit: known?.circuits[0] ?? said.circuit,
    };
  });
}

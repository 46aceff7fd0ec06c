// What the joints of a job go by: the unit's leads, this vehicle's own wires, what was joined before.
import { useEffect, useMemo, useState } from "preact/hooks";
import { probeTable, type ProbeTable } from "../core/probe-table.ts";
import { valueIn, valuesIn } from "../core/sheet.ts";
import type { Said } from "../core/standing.ts";
import { setting, type Settings } from "../store/settings.ts";
import { lastFor, type Usual } from "../store/usual.ts";
import { leadsIn, type Joining, type KeyOff, type Tap } from "./forms/join-offers.ts";
import type { Around } from "./forms/offer.ts";
import type { OpenJob } from "./use-job.ts";

const TAPPED = ["supply", "ignition"];

/** What this phone knows of itself: what it joined last, and the lamp of whoever holds it. */
interface Known {
  readonly last: Usual | null;
  readonly lamp: Settings["lamp"] | null;
}

/** Undefined until it is known what this phone joined last. */
export function useJoining({ said, job, judgement }: OpenJob, around: Around): Joining | undefined {
  const [known, setKnown] = useState<Known | undefined>(undefined);
  useEffect(() => {
    void Promise.all([job === null ? null : lastFor(job), setting("lamp")]).then(([last, lamp]) => setKnown({ last, lamp }));
  }, [job?.id]);
  return useMemo(() => {
    if (known === undefined) return undefined;
    const found = judgement?.ok ? { atBody: judgement.body_builder, leadsStand: judgement.leads } : { atBody: null, leadsStand: {} };
    return { ...found, sheet: around.sheet, leads: leadsIn(around.unitSheet), taps: tapsOf(said, around.sheet), usual: around.usual, ...known };
  }, [said, around, known, judgement]);
}

/** The wires of this vehicle that were chosen; none while two are claimed for one lead. */
function tapsOf(said: readonly Said[], sheet: string): Record<string, Tap> {
  const table = probeTable(said);
  const found: Record<string, Tap> = {};
  for (const purpose of TAPPED) {
    const wire = chosenFor(purpose, table, sheet);
    if (wire === null) continue;
    const known = table.wires.find((one) => one.name === wire);
    const written = (key: string): string => String(valueIn(sheet, { name: "wire", where: { key: "name", value: wire } }, key) ?? "");
    found[purpose] = { wire, connector: known?.connector || written("connector"), cavity: known?.cavity || written("cavity") };
  }
  return found;
}

function chosenFor(purpose: string, { claims }: ProbeTable, sheet: string): string | null {
  const claimed = claims.get(`tap_${purpose}`)?.values ?? [];
  if (claimed.length > 0) return claimed.length === 1 ? (claimed[0] ?? null) : null;
  const isFor = (name: string): boolean => valueIn(sheet, { name: "wire", where: { key: "name", value: name } }, "lead") === purpose;
  return valuesIn(sheet, "wire", "name").find(isFor) ?? null;
}

/** The volts that the supply's wire showed with the key off and nothing on it, as they were last read; null where nobody read them. */
export function keyOffOf(said: readonly Said[], taps: Readonly<Record<string, Tap>>): KeyOff | null {
  const wire = taps["supply"]?.wire;
  const alike = probeTable(said).readings.filter((one) => one.wire === wire && one.capture === "display" && one.load === "" && !one.disputed);
  const read = alike.findLast((one) => one.key === "after") ?? alike.findLast((one) => one.key === "off");
  return read && wire !== undefined ? { wire, volts: read.volts } : null;
}

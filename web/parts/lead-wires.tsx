// Where to look before the trim comes off: connector, cavity and colour of the unit's wires, and who says so.
import type { LeadWire } from "../core/lead-wires.ts";
import { useShared } from "../page/context.ts";

interface Props {
  readonly wires: readonly LeadWire[];
  readonly from: string | null; // the vehicle they are taken over from; null where this job says it itself
  readonly onTake?: () => void;
}

export function LeadWires({ wires, from, onTake }: Props) {
  const { words } = useShared();
  return (
    <section class={from === null ? "lead-wires short" : "lead-wires"} aria-label={words("look_for")}>
      {from !== null && <h2>{words("look_for")}</h2>}
      <dl>
        {wires.map(({ lead, name, connector, cavity, colour, circuit }) => (
          <div key={lead}>
            <dt>{words(`wire_meant_${lead}`)}</dt>
            <dd>
              <b>{connector || cavity ? words("place_of_wire", { connector: connector || "–", cavity: cavity || "–" }) : name}</b>
              {colour && <b class="colour">{colour}</b>}
              {circuit && from !== null && <span class="small">{circuit}</span>}
            </dd>
          </div>
        ))}
      </dl>
      {from !== null && onTake && (
        <>
          <p class="small">{words("look_for_from", { vehicle: from })}</p>
          <button type="button" class="main wide" onClick={onTake}>
            {words("take_wires", { vehicle: from })}
          </button>
        </>
      )}
    </section>
  );
}

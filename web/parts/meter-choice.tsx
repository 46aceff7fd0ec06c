// Asked once: with which meter one works.
import { useShared } from "../page/context.ts";
import { METERS, type MeterName } from "../page/meters.ts";

export function MeterChoice({ onChange }: { onChange: (meter: MeterName) => void }) {
  const { words } = useShared();
  return (
    <section class="ask">
      <h2>{words("meter_title")}</h2>
      <p class="small">{words("meter_say")}</p>
      {METERS.map((meter) => (
        <button type="button" class="wide" key={meter} onClick={() => onChange(meter)}>
          {words(`meter_${meter}`)}
        </button>
      ))}
    </section>
  );
}

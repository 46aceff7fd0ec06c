// Asked once: how much current the test lamp takes, or that there is none.
import { useShared } from "../page/context.ts";
import { LAMPS, NO_LAMP } from "../page/use-lamp.ts";

export function LampChoice({ onChange }: { onChange: (lamp: string) => void }) {
  const { words } = useShared();
  return (
    <section class="ask">
      <h2>{words("lamp_title")}</h2>
      <p class="small">{words("lamp_say")}</p>
      <div class="row">
        {LAMPS.map((lamp) => (
          <button type="button" key={lamp} onClick={() => onChange(lamp)}>
            {lamp} A
          </button>
        ))}
        <button type="button" onClick={() => onChange(NO_LAMP)}>
          {words("lamp_none")}
        </button>
      </div>
    </section>
  );
}

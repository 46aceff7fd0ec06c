// A unit that has left its vehicle is let go, so that another job may have it.
import { useState } from "preact/hooks";
import { release } from "./api.ts";
import { useDesk, useDoing } from "./context.ts";
import { Fault } from "./pieces.tsx";

export function Release({ serial, onReleased }: { serial: string; onReleased: () => void }) {
  const { words } = useDesk();
  const { busy, fault, run } = useDoing();
  const [done, setDone] = useState(false);
  return (
    <details class="erase">
      <summary>{words("release", { serial })}</summary>
      <div class="lines">
        <p class="small">{words("release_say")}</p>
        <button
          type="button"
          disabled={busy || done}
          onClick={() =>
            void run(() => release(serial)).then((went) => {
              setDone(went);
              if (went) onReleased();
            })
          }
        >
          {words("release_do")}
        </button>
        <Fault text={fault} />
        <p class="small" role="status">
          {done ? words("release_done") : ""}
        </p>
      </div>
    </details>
  );
}

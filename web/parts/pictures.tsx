// The engine's pictures of a job: the wiring as built, the crank, the turns of the key, the sky.
import { useEffect, useId, useState } from "preact/hooks";
import { engine } from "../page/engine.ts";
import { question, type OpenJob } from "../page/use-job.ts";

export type PictureName = "wiring" | "crank" | "turns" | "sky" | "parked";

interface Drawn {
  readonly svg: string;
  readonly caption: string;
  readonly alt: string;
}

/** Those of the pictures named for which there is evidence. */
export function Pictures({ open, names }: { open: OpenJob; names: readonly PictureName[] }) {
  const drawn = useDrawn(open, names.length > 0);
  return (
    <>
      {names.map((name) => {
        const found = drawn[name];
        return found ? <OnePicture key={name} drawn={found} /> : null;
      })}
    </>
  );
}

function OnePicture({ drawn }: { drawn: Drawn }) {
  return (
    <figure>
      <div class="picture" role="img" aria-label={drawn.alt} tabIndex={0} dangerouslySetInnerHTML={{ __html: drawn.svg }} />
      <figcaption>{drawn.caption}</figcaption>
    </figure>
  );
}

function useDrawn({ entries, said, judgement }: OpenJob, wanted: boolean): Partial<Record<PictureName, Drawn>> {
  const asker = useId();
  const [drawn, setDrawn] = useState<Partial<Record<PictureName, Drawn>>>({});
  useEffect(() => {
    let current = true;
    if (!entries || !wanted || !judgement?.ok) return undefined;
    void (async () => {
      const text = await engine().ask("pictures", await question(entries, said), asker);
      const told = text === null ? null : (JSON.parse(text) as { ok: boolean; pictures: Partial<Record<PictureName, Drawn>> });
      if (told?.ok && current) setDrawn(told.pictures);
    })();
    return () => {
      current = false;
    };
  }, [judgement]);
  return drawn;
}

// A signature drawn with a finger, kept as a picture.
import { useRef, useState } from "preact/hooks";
import { photoOf } from "../core/photo.ts";
import { text } from "../core/standing.ts";
import { useKeeping, useShared } from "../page/context.ts";
import type { OpenJob } from "../page/use-job.ts";
import { formWordsIn } from "../words/form-words.ts";
import { Picture } from "./photos.tsx";

const WIDTH = 640;
const HEIGHT = 240;
const SHOWS = "signature";

export function Signature({ open }: { open: OpenJob }) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const keeping = useKeeping();
  const [signing, setSigning] = useState(false);
  const signed = open.said.findLast((one) => one.kind === "photo" && text(one.body, "shows") === SHOWS);
  const keep = async (drawn: Blob): Promise<void> => {
    const picture = await photoOf(drawn);
    const name = `photos/${SHOWS}-${picture.sha256.slice(0, 8)}.jpg`;
    const body = { file: name, sha256: picture.sha256, bytes: picture.bytes.byteLength, stored: true, shows: SHOWS };
    if (await keeping(() => open.write([{ kind: "photo", body, blobs: [picture.sha256] }], [picture]))) setSigning(false);
  };
  return (
    <section class="signature">
      <h2>{words("signature")}</h2>
      {signed && !signing ? (
        <>
          <Picture sha256={text(signed.body, "sha256")} alt={words("signature")} />
          <button type="button" onClick={() => setSigning(true)}>
            {words("signature_another")}
          </button>
        </>
      ) : (
        <Pad onKeep={(drawn) => void keep(drawn)} />
      )}
    </section>
  );
}

function Pad({ onKeep }: { onKeep: (drawn: Blob) => void }) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const canvas = useRef<HTMLCanvasElement>(null);
  const [drawn, setDrawn] = useState(false);
  const brush = (): CanvasRenderingContext2D | null => canvas.current?.getContext("2d") ?? null;
  const clear = (): void => {
    const on = brush();
    if (!on) return;
    on.fillStyle = "#ffffff";
    on.fillRect(0, 0, WIDTH, HEIGHT);
    setDrawn(false);
  };
  const place = (event: PointerEvent): [number, number] => {
    const box = (event.currentTarget as HTMLCanvasElement).getBoundingClientRect();
    return [((event.clientX - box.left) / box.width) * WIDTH, ((event.clientY - box.top) / box.height) * HEIGHT];
  };
  const begin = (event: PointerEvent): void => {
    const on = brush();
    if (!on) return;
    if (!drawn) clear();
    (event.currentTarget as HTMLCanvasElement).setPointerCapture(event.pointerId);
    on.strokeStyle = "#1b1a17";
    on.lineWidth = 4;
    on.lineCap = "round";
    on.lineJoin = "round";
    on.beginPath();
    on.moveTo(...place(event));
    setDrawn(true);
  };
  const go = (event: PointerEvent): void => {
    if (event.buttons === 0) return;
    const on = brush();
    on?.lineTo(...place(event));
    on?.stroke();
  };
  return (
    <>
      <p class="small">{words("signature_say")}</p>
      <canvas ref={canvas} width={WIDTH} height={HEIGHT} aria-label={words("signature")} role="img" onPointerDown={begin} onPointerMove={go} />
      <div class="row">
        <button type="button" disabled={!drawn} onClick={clear}>
          {words("signature_clear")}
        </button>
        <button type="button" class="main" disabled={!drawn} onClick={() => canvas.current?.toBlob((made) => made && onKeep(made))}>
          {words("signature_keep")}
        </button>
      </div>
    </>
  );
}

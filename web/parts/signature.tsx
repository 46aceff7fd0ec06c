// A signature drawn with a finger: whoever holds the pad up gets it as a picture.
import { useRef, useState } from "preact/hooks";
import { photoOf } from "../core/photo.ts";
import { useShared } from "../page/context.ts";
import type { NewEntry } from "../page/use-job.ts";
import type { NewBlob } from "../store/blobs.ts";
import { formWordsIn } from "../words/form-words.ts";

const WIDTH = 640;
const HEIGHT = 240;
export const SHOWS = "signature";

/** What was drawn, made into a picture when it is wanted. */
export type Drawing = () => Promise<Blob | null>;

/** A drawing as a photo of the job, which is still to be kept. */
export async function asPhoto(drawing: Drawing): Promise<{ entry: NewEntry; blob: NewBlob } | null> {
  const drawn = await drawing();
  if (drawn === null) return null;
  const blob = await photoOf(drawn);
  const file = `photos/${SHOWS}-${blob.sha256.slice(0, 8)}.jpg`;
  const body = { file, sha256: blob.sha256, bytes: blob.bytes.byteLength, stored: true, shows: SHOWS };
  return { entry: { kind: "photo", body, blobs: [blob.sha256] }, blob };
}

export function Pad({ onDrawn }: { onDrawn: (drawing: Drawing | null) => void }) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const canvas = useRef<HTMLCanvasElement>(null);
  const [drawn, setDrawn] = useState(false);
  const brush = (): CanvasRenderingContext2D | null => canvas.current?.getContext("2d") ?? null;
  const picture: Drawing = () => new Promise((done) => (canvas.current ? canvas.current.toBlob(done) : done(null)));
  const clear = (): void => {
    const on = brush();
    if (!on) return;
    on.fillStyle = "#ffffff";
    on.fillRect(0, 0, WIDTH, HEIGHT);
    setDrawn(false);
    onDrawn(null);
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
    onDrawn(picture);
  };
  const go = (event: PointerEvent): void => {
    if (event.buttons === 0) return;
    const on = brush();
    on?.lineTo(...place(event));
    on?.stroke();
  };
  return (
    <>
      <canvas ref={canvas} width={WIDTH} height={HEIGHT} aria-label={words("signature")} role="img" onPointerDown={begin} onPointerMove={go} />
      {drawn && (
        <button type="button" class="clear" onClick={clear}>
          {words("signature_clear")}
        </button>
      )}
    </>
  );
}

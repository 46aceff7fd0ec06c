// The camera, looking for a barcode; whatever it reads is handed on, typing is always possible beside it.
import { useEffect, useRef, useState } from "preact/hooks";
import { useShared } from "../page/context.ts";

declare const SCAN_WORKER: string;

const LOOKS_EVERY_MS = 250;
const WIDEST = 960; // of a picture that is looked at; more only costs time

interface Props {
  readonly choose?: ((codes: readonly string[]) => readonly string[]) | undefined; // those that may be meant, the likeliest first
  readonly onRead: (text: string, others: readonly string[]) => void;
  readonly onClose: () => void;
}

export function Scanner({ choose = (codes) => codes, onRead, onClose }: Props) {
  const { words } = useShared();
  const film = useRef<HTMLVideoElement>(null);
  const [fault, setFault] = useState<string | null>(null);
  useEffect(() => {
    const watch = new Watch(choose, onRead, setFault);
    if (film.current) void watch.start(film.current);
    return () => watch.stop();
  }, []);
  return (
    <div class="scanner">
      {fault === null ? (
        <>
          <video ref={film} playsInline muted aria-label={words("scanning")} />
          <p>{words("scanning")}</p>
        </>
      ) : (
        <p class="fault" role="alert">
          {words("no_camera", { why: fault })}
        </p>
      )}
      <button type="button" onClick={onClose}>
        {words("cancel")}
      </button>
    </div>
  );
}

/** The camera and the worker that reads its pictures, from start to stop. */
class Watch {
  private readonly worker = new Worker(new URL(SCAN_WORKER, document.baseURI), { type: "module" });
  private readonly canvas = document.createElement("canvas");
  private stream: MediaStream | null = null;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private stopped = false;
  private readonly choose: (codes: readonly string[]) => readonly string[];
  private readonly found: Props["onRead"];
  private readonly failed: (why: string) => void;

  constructor(choose: Watch["choose"], found: Props["onRead"], failed: (why: string) => void) {
    this.choose = choose;
    this.found = found;
    this.failed = failed;
  }

  async start(film: HTMLVideoElement): Promise<void> {
    try {
      this.stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment", width: { ideal: 1280 } } });
      if (this.stopped) return this.stop();
      film.srcObject = this.stream;
      await film.play();
    } catch (fault) {
      if (!this.stopped) this.failed(fault instanceof Error ? fault.message : String(fault));
      return;
    }
    this.worker.onmessage = ({ data }: MessageEvent<string[]>) => {
      const [text, ...others] = this.choose(data);
      if (text && !this.stopped) this.found(text, others);
      else this.timer = setTimeout(() => this.look(film), LOOKS_EVERY_MS);
    };
    this.look(film);
  }

  stop(): void {
    this.stopped = true;
    clearTimeout(this.timer);
    for (const track of this.stream?.getTracks() ?? []) track.stop();
    this.worker.terminate();
  }

  private look(film: HTMLVideoElement): void {
    if (this.stopped) return;
    if (film.videoWidth === 0) {
      this.timer = setTimeout(() => this.look(film), LOOKS_EVERY_MS);
      return;
    }
    const scale = Math.min(1, WIDEST / film.videoWidth);
    this.canvas.width = Math.round(film.videoWidth * scale);
    this.canvas.height = Math.round(film.videoHeight * scale);
    const brush = this.canvas.getContext("2d", { willReadFrequently: true });
    if (!brush) return;
    brush.drawImage(film, 0, 0, this.canvas.width, this.canvas.height);
    this.worker.postMessage(brush.getImageData(0, 0, this.canvas.width, this.canvas.height));
  }
}

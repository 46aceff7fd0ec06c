// A photo as it is kept: made anew from its pixels, so that nothing that the camera wrote beside them goes along.
import { sha256 } from "./digest.ts";

const LONGEST_SIDE = 2_048;
const QUALITY = 0.85;

export interface Photo {
  readonly sha256: string;
  readonly type: string;
  readonly bytes: ArrayBuffer;
}

/** The picture in `file`, upright, at most 2,048 pixels a side, as JPEG. Throws where it is no picture. */
export async function photoOf(file: Blob): Promise<Photo> {
  const picture = await createImageBitmap(file, { imageOrientation: "from-image" });
  const scale = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  canvas.getContext("2d")?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const made = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/jpeg", QUALITY));
  if (made === null) throw new Error("the picture could not be made");
  const bytes = new Uint8Array(await made.arrayBuffer());
  return { sha256: await sha256(bytes), type: "image/jpeg", bytes: bytes.buffer };
}

// Photos that a stage asks for: each says what it protects the installer from, and shows what was taken.
import { useEffect, useState } from "preact/hooks";
import { photoOf } from "../core/photo.ts";
import { text } from "../core/standing.ts";
import { useKeeping, useShared } from "../page/context.ts";
import type { OpenJob } from "../page/use-job.ts";
import { blobOf } from "../store/blobs.ts";
import { formWordsIn, isFormWord } from "../words/form-words.ts";

/** The photos that are asked for in a whole job: each protects whoever did the work. Any other is possible, and not asked. */
const ASKED: ReadonlySet<string> = new Set(["serial_with_vin", "dash_lamps", "bare_joint", "ground"]);

export const isAsked = (shows: string): boolean => ASKED.has(shows);

/** Photos that nobody asks for, behind one quiet line. */
export function MorePhotos({ shows, open }: { shows: readonly string[]; open: OpenJob }) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const taken = open.said.filter((one) => one.kind === "photo" && shows.includes(text(one.body, "shows"))).length;
  return (
    <details class="single">
      <summary>
        {words("more_photos")}
        {taken > 0 && ` (${taken})`}
      </summary>
      {shows.map((one) => (
        <Photos key={one} shows={one} open={open} />
      ))}
    </details>
  );
}

export function Photos({ shows, open }: { shows: string; open: OpenJob }) {
  const { language, setFault } = useShared();
  const words = formWordsIn(language);
  const keeping = useKeeping();
  const taken = open.said.filter((one) => one.kind === "photo" && text(one.body, "shows") === shows);
  const word = `photo_${shows}`;
  const take = async (file: File): Promise<void> => {
    const photo = await photoOf(file).catch(() => null);
    if (photo === null) return setFault(words("photo_bad"));
    const name = `photos/${shows}-${photo.sha256.slice(0, 8)}.jpg`;
    const body = { file: name, sha256: photo.sha256, bytes: photo.bytes.byteLength, stored: true, shows };
    await keeping(() => open.write([{ kind: "photo", body, blobs: [photo.sha256] }], [photo]));
  };
  return (
    <div class="photos">
      <p>{isFormWord(word) ? words(word) : shows}</p>
      <ul>
        {taken.map((one) => (
          <li key={one.id}>
            <Picture sha256={text(one.body, "sha256")} alt={isFormWord(word) ? words(word) : shows} />
          </li>
        ))}
      </ul>
      <label class="button take">
        {taken.length > 0 ? words("another_photo") : words("take_photo")}
        <input
          type="file"
          accept="image/*"
          capture="environment"
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            event.currentTarget.value = "";
            if (file) void take(file);
          }}
        />
      </label>
    </div>
  );
}

export function Picture({ sha256, alt }: { sha256: string; alt: string }) {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    let made: string | null = null;
    void blobOf(sha256).then((blob) => {
      if (!blob) return;
      made = URL.createObjectURL(new Blob([blob.bytes], { type: blob.type }));
      setAddress(made);
    });
    return () => {
      if (made) URL.revokeObjectURL(made);
    };
  }, [sha256]);
  return address ? <img src={address} alt={alt} /> : null;
}

// A job's photos; one that shows a person can be erased for good, its entry stays.
import { useState } from "preact/hooks";
import { erase, photoAddress, type Photo, type Whole } from "./api.ts";
import { useDesk, useDoing } from "./context.ts";
import { Fault } from "./pieces.tsx";

export function Photos({ whole: { job: row, photos }, onErased }: { whole: Whole; onErased: () => void }) {
  const { words } = useDesk();
  if (photos.length === 0) return null;
  return (
    <section>
      <h2>{words("job_photos")}</h2>
      <ul class="photos">
        {photos.map((photo) => (
          <OnePhoto key={photo.sha256} job={row.id} photo={photo} onErased={onErased} />
        ))}
      </ul>
    </section>
  );
}

function OnePhoto({ job, photo: { sha256, shows, file, kept }, onErased }: { job: string; photo: Photo; onErased: () => void }) {
  const { words } = useDesk();
  const name = shows?.replaceAll("_", " ") ?? file ?? sha256.slice(0, 8);
  if (!kept) {
    return (
      <li>
        <p class="say">{words("job_photo_missing")}</p>
        <small lang="en">{name}</small>
      </li>
    );
  }
  return (
    <li>
      <a href={photoAddress(sha256, false)} target="_blank" rel="noreferrer">
        <img src={photoAddress(sha256, true)} alt={words("job_photo", { name })} loading="lazy" />
      </a>
      <small lang="en">{name}</small>
      <Erase job={job} sha256={sha256} name={name} onErased={onErased} />
    </li>
  );
}

function Erase({ job, sha256, name, onErased }: { job: string; sha256: string; name: string; onErased: () => void }) {
  const { words } = useDesk();
  const { busy, fault, run } = useDoing();
  const [why, setWhy] = useState("");
  return (
    <details class="erase">
      <summary>
        {words("erase")} <span class="unseen">{name}</span>
      </summary>
      <form
        class="lines"
        onSubmit={(event) => {
          event.preventDefault();
          void run(() => erase(job, sha256, why.trim())).then((done) => done && onErased());
        }}
      >
        <p class="small">{words("erase_say")}</p>
        <label>
          {words("erase_why")}
          <input value={why} required autoComplete="off" onInput={(event) => setWhy(event.currentTarget.value)} />
        </label>
        <button type="submit" disabled={busy || why.trim() === ""}>
          {words("erase_do")}
        </button>
        <Fault text={fault} />
      </form>
    </details>
  );
}

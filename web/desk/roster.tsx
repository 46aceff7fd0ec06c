// A roster of vehicles or units: looked at first, then brought in whole or not at all.
import { useState } from "preact/hooks";
import { roster } from "./api.ts";
import { useDesk, useDoing } from "./context.ts";
import { Fault, Heading } from "./pieces.tsx";

interface Cell {
  readonly row: number;
  readonly column: string;
  readonly text: string;
  readonly expected: string;
}

interface Change {
  readonly row: number;
  readonly name: string;
  readonly changes: readonly { readonly what: string; readonly before: string | number | null; readonly after: string | number }[];
}

interface Preview {
  readonly file: string;
  readonly new: readonly Change[];
  readonly changed: readonly Change[];
  readonly unchanged: number;
  readonly bad_rows: number;
  readonly bad: readonly Cell[];
  readonly doubts: readonly Cell[];
  readonly notes: readonly string[];
}

export function RosterPage() {
  const { words } = useDesk();
  const { busy, fault, run } = useDoing();
  const [file, setFile] = useState<File | null>(null);
  const [columns, setColumns] = useState("");
  const [preview, setPreview] = useState<Preview | null>(null);
  const [done, setDone] = useState(false);
  const look = async (): Promise<void> => {
    setDone(false);
    setPreview(null);
    if (file) setPreview(await roster<Preview>("preview", { file, columns: columns.trim() }));
  };
  const bringIn = async (): Promise<void> => {
    if (!file) return;
    await roster("import", { file, columns: columns.trim(), doubtsAreRight: (preview?.doubts.length ?? 0) > 0 });
    setPreview(null);
    setDone(true);
  };
  return (
    <main>
      <Heading title={words("roster_title")} />
      <p class="say">{words("roster_say")}</p>
      <form
        class="lines narrow"
        onSubmit={(event) => {
          event.preventDefault();
          void run(look);
        }}
      >
        <label>
          {words("roster_file")}
          <input
            type="file"
            accept=".csv,.txt,.xlsx"
            required
            onChange={(event) => {
              setFile(event.currentTarget.files?.[0] ?? null);
              setPreview(null);
            }}
          />
        </label>
        <label>
          {words("roster_columns")}
          <input value={columns} autoComplete="off" spellcheck={false} onInput={(event) => setColumns(event.currentTarget.value)} />
        </label>
        <button type="submit" class={preview ? "" : "main"} disabled={busy || file === null}>
          {words("roster_look")}
        </button>
      </form>
      <Fault text={fault} />
      {done && <p role="status">{words("roster_done")}</p>}
      {preview && <Found preview={preview} busy={busy} onTake={() => void run(bringIn)} />}
    </main>
  );
}

function Found({ preview, busy, onTake }: { preview: Preview; busy: boolean; onTake: () => void }) {
  const { words } = useDesk();
  const [right, setRight] = useState(false);
  const doubtful = preview.doubts.length > 0;
  const writes = preview.new.length + preview.changed.length;
  return (
    <section class="lines" aria-live="polite">
      <dl class="tally">
        {(["new", "changed"] as const).map((name) => (
          <div key={name}>
            <dt>{words(`roster_${name}`)}</dt>
            <dd>{preview[name].length}</dd>
          </div>
        ))}
        <div>
          <dt>{words("roster_unchanged")}</dt>
          <dd>{preview.unchanged}</dd>
        </div>
      </dl>
      {preview.bad_rows > 0 && (
        <>
          <p class="fault">{words("roster_bad", { count: preview.bad_rows })}</p>
          <Cells cells={preview.bad} />
        </>
      )}
      {(doubtful || preview.notes.length > 0) && <h2>{words("roster_notes")}</h2>}
      {preview.notes.map((note) => (
        <p key={note} lang="en">
          {note}
        </p>
      ))}
      {doubtful && <Cells cells={preview.doubts} />}
      {doubtful && preview.bad_rows === 0 && (
        <label class="tick">
          <input type="checkbox" checked={right} onChange={(event) => setRight(event.currentTarget.checked)} />
          {words("roster_right")}
        </label>
      )}
      {preview.bad_rows === 0 && (
        <button type="button" class="main" disabled={busy || writes === 0 || (doubtful && !right)} onClick={onTake}>
          {words("roster_do")}
        </button>
      )}
      <Changes title={words("roster_changed")} changes={preview.changed} />
      <Changes title={words("roster_new")} changes={preview.new} />
    </section>
  );
}

function Cells({ cells }: { cells: readonly Cell[] }) {
  const { words } = useDesk();
  return (
    <table class="bad">
      <thead>
        <tr>
          {(["row", "column", "text", "expected"] as const).map((name) => (
            <th key={name} scope="col">
              {words(`roster_${name}`)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {cells.map(({ row, column, text, expected }) => (
          <tr key={`${row} ${column} ${expected}`}>
            <td>{row}</td>
            <td>{column}</td>
            <td>{text}</td>
            <td lang="en">{expected}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** What each row would write, so that nobody has to guess. */
function Changes({ title, changes }: { title: string; changes: readonly Change[] }) {
  if (changes.length === 0) return null;
  return (
    <details>
      <summary>
        {title}: {changes.length}
      </summary>
      <ul class="plain-list">
        {changes.map((change) => (
          <li key={change.row}>
            <b>{change.name}</b>
            <small>{change.changes.map(({ what, before, after }) => (before === null ? `${what} ${after}` : `${what} ${before} → ${after}`)).join(", ")}</small>
          </li>
        ))}
      </ul>
    </details>
  );
}

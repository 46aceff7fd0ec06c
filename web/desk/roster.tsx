// A roster of vehicles or units: looked at first, then brought in whole or not at all.
import { useState } from "preact/hooks";
import { people, roster, rosterWithJobs, type JobPlan } from "./api.ts";
import { useDesk, useDoing, useLoaded } from "./context.ts";
import { PeopleChoice } from "./people-choice.tsx";
import { Fault, Heading, Shown } from "./pieces.tsx";

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
  readonly without_job: number;
}

const NO_PLAN: JobPlan = { "unit.toml": "", system_V: 12, people: [], day: null };

export function RosterPage() {
  const { words } = useDesk();
  const { busy, fault, run } = useDoing();
  const [file, setFile] = useState<File | null>(null);
  const [columns, setColumns] = useState("");
  const [preview, setPreview] = useState<Preview | null>(null);
  const [done, setDone] = useState<string | null>(null);
  const look = async (): Promise<void> => {
    setDone(null);
    setPreview(null);
    if (file) setPreview(await roster<Preview>("preview", { file, columns: columns.trim() }));
  };
  const bringIn = async (plan: JobPlan | null): Promise<void> => {
    if (!file) return;
    const sent = { file, columns: columns.trim(), doubtsAreRight: (preview?.doubts.length ?? 0) > 0 };
    if (plan) setDone(words("roster_made", { count: (await rosterWithJobs(sent, plan)).jobs }));
    else {
      await roster("import", sent);
      setDone(words("roster_done"));
    }
    setPreview(null);
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
      {done && <p role="status">{done}</p>}
      {preview && <Found preview={preview} busy={busy} onTake={(plan) => void run(() => bringIn(plan))} />}
    </main>
  );
}

function Found({ preview, busy, onTake }: { preview: Preview; busy: boolean; onTake: (plan: JobPlan | null) => void }) {
  const { words } = useDesk();
  const [right, setRight] = useState(false);
  const doubtful = preview.doubts.length > 0;
  const [making, setMaking] = useState(false);
  const [plan, setPlan] = useState<JobPlan>(NO_PLAN);
  const writes = preview.new.length + preview.changed.length + (making ? preview.without_job : 0);
  const lacks = making && plan["unit.toml"].trim() === "";
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
        <p key={note}>
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
      {preview.bad_rows === 0 && preview.without_job > 0 && (
        <label class="tick">
          <input type="checkbox" checked={making} onChange={(event) => setMaking(event.currentTarget.checked)} />
          {words("roster_jobs", { count: preview.without_job })}
        </label>
      )}
      {making && preview.bad_rows === 0 && <Plan plan={plan} onPlan={setPlan} />}
      {preview.bad_rows === 0 && (
        <button type="button" class="main" disabled={busy || writes === 0 || lacks || (doubtful && !right)} onClick={() => onTake(making ? plan : null)}>
          {words("roster_do")}
        </button>
      )}
      <Changes title={words("roster_changed")} changes={preview.changed} />
      <Changes title={words("roster_new")} changes={preview.new} />
    </section>
  );
}

/** What the new jobs have in common: the unit's sheet, the voltage, who does them and when. */
function Plan({ plan, onPlan }: { plan: JobPlan; onPlan: (plan: JobPlan) => void }) {
  const { words } = useDesk();
  const all = useLoaded(people, []);
  return (
    <div class="lines narrow">
      <label>
        {words("new_unit")}
        <input
          type="file"
          accept=".toml,text/plain"
          onChange={(event) => void event.currentTarget.files?.[0]?.text().then((text) => onPlan({ ...plan, "unit.toml": text }))}
        />
      </label>
      <label>
        {words("roster_system")}
        <select value={plan.system_V} onChange={(event) => onPlan({ ...plan, system_V: event.currentTarget.value === "24" ? 24 : 12 })}>
          <option value="12">12 V</option>
          <option value="24">24 V</option>
        </select>
      </label>
      <label>
        {words("roster_day")}
        <input type="date" value={plan.day ?? ""} onInput={(event) => onPlan({ ...plan, day: event.currentTarget.value || null })} />
      </label>
      <Shown of={all}>{(everybody) => <PeopleChoice legend={words("job_with")} people={everybody} chosen={plan.people} onChange={(chosen) => onPlan({ ...plan, people: chosen })} />}</Shown>
    </div>
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
            <td>{expected}</td>
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

// All jobs, what fails or is thin first.
import { useEffect, useState } from "preact/hooks";
import { Choice } from "../parts/choice.tsx";
import { VerdictMark } from "../parts/verdict.tsx";
import { exportAddress, jobs, type JobList, type Row } from "./api.ts";
import { useDesk, useLoaded, when } from "./context.ts";
import { Heading, Shown } from "./pieces.tsx";
import { addressOf } from "./place.ts";
import { deskNamed } from "./words/words.ts";

const STATES = ["new", "in_work", "provisional", "proven", "abandoned"];
const TYPING_MS = 250;

/** What people call the vehicle: its plate, else its number, else its VIN, else the job. */
export function vehicleName({ vehicle, name, id }: Row): string {
  return vehicle.plate ?? vehicle.fleet_number ?? vehicle.vin ?? name ?? id;
}

export function Jobs() {
  const { words, language } = useDesk();
  const [state, setState] = useState("");
  const [typed, setTyped] = useState("");
  const q = useSettled(typed.trim());
  const loaded = useLoaded(() => jobs({ state, q, after: null, language }), [state, q, language]);
  return (
    <main>
      <Heading title={words("jobs_title")}>
        <a class="button" href={addressOf({ name: "new" })}>
          {words("jobs_new")}
        </a>
      </Heading>
      <div class="sift">
        <label class="find">
          {words("jobs_search")}
          <input type="search" value={typed} autoComplete="off" spellcheck={false} onInput={(event) => setTyped(event.currentTarget.value)} />
        </label>
        <States counts={loaded.value?.counts ?? {}} state={state} onState={setState} />
      </div>
      <Shown of={loaded}>{(list) => <List key={`${state} ${q} ${language}`} first={list} sift={{ state, q, language }} />}</Shown>
      <p class="take">
        {words("export_say")}{" "}
        {["csv", "json", "geojson"].map((form) => (
          <a key={form} href={exportAddress(form)} download>
            {form.toUpperCase()}
          </a>
        ))}
      </p>
    </main>
  );
}

/** The value as soon as nobody has changed it for a moment. */
function useSettled(value: string): string {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(value), TYPING_MS);
    return () => clearTimeout(timer);
  }, [value]);
  return settled;
}

function States({ counts, state, onState }: { counts: Readonly<Record<string, number>>; state: string; onState: (state: string) => void }) {
  const { words } = useDesk();
  const all = Object.values(counts).reduce((sum, count) => sum + count, 0);
  const options = [
    { value: "", label: words("jobs_all"), note: String(all) },
    ...STATES.map((value) => ({ value, label: deskNamed(words, "state", value), note: String(counts[value] ?? 0) })),
  ];
  return <Choice legend={words("jobs_state")} options={options} value={state} onChange={onState} kind="strip" />;
}

function List({ first, sift }: { first: JobList; sift: { state: string; q: string; language: string } }) {
  const { words } = useDesk();
  const [list, setList] = useState(first);
  useEffect(() => setList(first), [first]);
  const more = async (): Promise<void> => {
    const next = await jobs({ ...sift, after: list.after });
    setList({ ...next, jobs: [...list.jobs, ...next.jobs] });
  };
  if (list.jobs.length === 0) return <p class="say">{sift.q || sift.state ? words("jobs_none") : words("jobs_none_yet")}</p>;
  return (
    <>
      <table class="job-table">
        <thead>
          <tr>
            {(["vehicle", "verdict", "next", "people", "unit", "updated"] as const).map((name) => (
              <th key={name} scope="col">
                {words(`col_${name}`)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {list.jobs.map((row) => (
            <Line key={row.id} row={row} />
          ))}
        </tbody>
      </table>
      {list.more && (
        <button type="button" onClick={() => void more()}>
          {words("jobs_more")}
        </button>
      )}
    </>
  );
}

function Line({ row }: { row: Row }) {
  const { words, language } = useDesk();
  return (
    <tr>
      <th scope="row">
        <a href={addressOf({ name: "job", job: row.id })}>{vehicleName(row)}</a>
        <small>{[row.vehicle.plate && row.vehicle.fleet_number, row.vehicle.type, deskNamed(words, "state", row.state)].filter(Boolean).join(" · ")}</small>
      </th>
      <td>
        <Standing row={row} />
      </td>
      <td class="next-cell">
        <span>{row.next ?? "–"}</span>
      </td>
      <td>{row.people.map((person) => person.name).join(", ") || words("nobody")}</td>
      <td class="serial">{row.unit.serial ?? "–"}</td>
      <td>{when(row.updated_at, language)}</td>
    </tr>
  );
}

/** The verdict and how many findings are not as they should be. */
export function Standing({ row }: { row: Row }) {
  const { words } = useDesk();
  if (row.verdict === null) return <span class="say">{words("not_judged")}</span>;
  const counts = (["fails", "thin", "open"] as const).filter((name) => row[name] > 0).map((name) => words(`${name}_count`, { count: row[name] }));
  return (
    <>
      <VerdictMark verdict={row.verdict} />
      {counts.length > 0 && <small>{counts.join(", ")}</small>}
    </>
  );
}

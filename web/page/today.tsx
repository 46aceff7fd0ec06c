// The jobs of the day: which, what is open in each, and what was not sent yet.
import { useEffect, useState } from "preact/hooks";
import { stageNamed } from "../core/onward.ts";
import { refused } from "../store/journal.ts";
import { allJobs, type Job } from "../store/jobs.ts";
import { onSync } from "../sync/sync.ts";
import { Top, Troubles } from "../parts/top.tsx";
import { VerdictShape } from "../parts/verdict.tsx";
import { named } from "../words/words.ts";
import { useShared } from "./context.ts";
import type { Verdict } from "./judgement.ts";
import { addressOf } from "./place.ts";

/** What people call the vehicle: its plate, else its number, else its VIN, else the job. */
export function vehicleName({ vehicle, name, id }: Job): string {
  return vehicle.plate ?? vehicle.fleet_number ?? vehicle.vin ?? name ?? id;
}

export function Today() {
  const { words } = useShared();
  const [jobs, setJobs] = useState<readonly Job[] | null>(null);
  const [odd, setOdd] = useState(0);
  useEffect(() => {
    const read = async (): Promise<void> => {
      setJobs(await allJobs());
      setOdd((await refused()).length);
    };
    void read();
    return onSync((_, changed) => changed && void read());
  }, []);
  const today = jobs?.filter((job) => job.today) ?? [];
  const earlier = jobs?.filter((job) => !job.today) ?? [];
  return (
    <>
      <Top title={words("today")} />
      <main>
        <Troubles />
        {odd > 0 && <p class="fault">{odd === 1 ? words("refused_one") : words("refused_many", { count: odd })}</p>}
        {jobs !== null && today.length === 0 && <p class="say">{words("today_none")}</p>}
        <JobList jobs={today} />
        {earlier.length > 0 && (
          <details>
            <summary>{words("earlier")}</summary>
            <JobList jobs={earlier} />
          </details>
        )}
        <a class="quiet" href={addressOf({ name: "settings" })}>
          {words("settings")}
        </a>
      </main>
    </>
  );
}

function JobList({ jobs }: { jobs: readonly Job[] }) {
  return (
    <ul class="jobs">
      {jobs.map((job) => (
        <li key={job.id}>
          <a href={addressOf({ name: "job", job: job.id })}>
            <b id={`vehicle-${job.id}`}>{vehicleName(job)}</b>
            <span class="kind">{[job.vehicle.type, job.place?.name].filter(Boolean).join(" · ")}</span>
            <JobState job={job} />
          </a>
          <Due job={job} />
        </li>
      ))}
    </ul>
  );
}

/** Straight to the stage that is due: the walkround where nothing was judged yet; nothing where nothing is to be done. */
function Due({ job: { id, said } }: { job: Job }) {
  const { words } = useShared();
  const stage = said ? stageNamed(said.stage ?? null) : "walkround";
  if (stage === null) return null;
  return (
    <a class="button due" aria-describedby={`vehicle-${id}`} href={addressOf({ name: "stage", job: id, stage })}>
      {named(words, "stage", stage)}
    </a>
  );
}

function JobState({ job: { said } }: { job: Job }) {
  const { words } = useShared();
  if (!said) return <span class="state">{words("not_judged")}</span>;
  const counts = [said.fails && words("fails_count", { count: said.fails }), said.open && words("open_count", { count: said.open })];
  return (
    <span class="state">
      <VerdictShape verdict={said.verdict as Verdict} />
      {counts.filter(Boolean).join(", ") || words("nothing_open")}
    </span>
  );
}

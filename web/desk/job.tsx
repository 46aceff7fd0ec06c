// One job with everything: what is next, the findings with their bars, drawings, photos, entries.
import { useState } from "preact/hooks";
import { VerdictMark, VerdictShape } from "../parts/verdict.tsx";
import { useShared } from "../page/context.ts";
import type { Finding, Verdict } from "../page/judgement.ts";
import { named } from "../words/words.ts";
import { assign, job, people, recordAddress, type Whole } from "./api.ts";
import { useDesk, useDoing, useLoaded, when } from "./context.ts";
import { Standing, vehicleName } from "./jobs.tsx";
import { PeopleChoice } from "./people-choice.tsx";
import { Photos } from "./photos.tsx";
import { Fault, Heading, Picture, Shown } from "./pieces.tsx";
import { addressOf } from "./place.ts";
import { Release } from "./release.tsx";
import { ToDecide } from "./to-decide.tsx";
import { deskNamed } from "./words/words.ts";

const WORST_FIRST: readonly Verdict[] = ["fails", "open", "thin", "holds"];

export function JobPage({ id }: { id: string }) {
  const { words, language } = useDesk();
  const loaded = useLoaded(() => job(id, language), [id, language]);
  return (
    <main>
      <a class="quiet" href={addressOf({ name: "jobs" })}>
        ← {words("job_back")}
      </a>
      <Shown of={loaded}>{(whole) => <Everything whole={whole} again={loaded.again} />}</Shown>
    </main>
  );
}

function Everything({ whole, again }: { whole: Whole; again: () => void }) {
  const { words } = useDesk();
  const { job: row, answer, drawings } = whole;
  const pictures = Object.entries(drawings);
  return (
    <>
      <Heading title={vehicleName(row)}>
        <a class="button main" href={recordAddress(row.id)} download>
          {words("job_record")}
        </a>
      </Heading>
      <p class="facts-line">
        {[row.vehicle.type, row.vehicle.fleet_number, row.vehicle.vin, row.unit.serial, deskNamed(words, "state", row.state)].filter(Boolean).join(" · ")} <Standing row={row} />
      </p>
      <section class="next">
        <h2>{words("job_next")}</h2>
        <p class="do">
          {answer === null ? (whole.fault ?? words("not_judged")) : (answer.next ?? words("job_next_none"))}
        </p>
      </section>
      <ToDecide whole={whole} onSettled={again} />
      <div class="columns">
        <section>
          <h2>{words("job_findings")}</h2>
          {answer ? <Findings findings={answer.findings} bars={whole.bars} /> : <p class="say">{words("job_findings_none")}</p>}
        </section>
        <div class="lines">
          <Assign key={row.id} whole={whole} onKept={again} />
          {row.unit.serial && <Release key={row.unit.serial} serial={row.unit.serial} onReleased={again} />}
          {pictures.length > 0 && (
            <section>
              <h2>{words("job_pictures")}</h2>
              {pictures.map(([name, drawing]) => (
                <figure key={name} class={name}>
                  <Picture svg={drawing.svg} />
                  <figcaption>{drawing.caption}</figcaption>
                </figure>
              ))}
            </section>
          )}
          <Photos whole={whole} onErased={again} />
          <Entries whole={whole} />
        </div>
      </div>
    </>
  );
}

/** The stages in the order of the work; within each what is not as it should be, the worst first, and the rest folded. */
function Findings({ findings, bars }: { findings: readonly Finding[]; bars: Readonly<Record<string, string>> }) {
  const { words } = useDesk();
  const stages = [...new Set(findings.map((finding) => finding.stage))];
  return (
    <>
      {stages.map((stage) => {
        const here = findings.map((finding, at) => ({ finding, bar: bars[String(at)], at })).filter(({ finding }) => finding.stage === stage);
        const worst = WORST_FIRST.find((verdict) => here.some(({ finding }) => finding.verdict === verdict)) ?? "open";
        const odd = here.filter(({ finding }) => finding.verdict !== "holds").sort((a, b) => WORST_FIRST.indexOf(a.finding.verdict) - WORST_FIRST.indexOf(b.finding.verdict));
        const good = here.filter(({ finding }) => finding.verdict === "holds");
        return (
          <section key={stage} class="stage">
            <h3>
              {deskNamed(words, "stage", stage)} <VerdictMark verdict={worst} />
            </h3>
            <Lines of={odd} />
            {good.length > 0 && (
              <details>
                <summary>{good.length === 1 ? words("job_holds_one") : words("job_holds", { count: good.length })}</summary>
                <Lines of={good} />
              </details>
            )}
          </section>
        );
      })}
    </>
  );
}

interface Barred {
  readonly finding: Finding;
  readonly bar: string | undefined;
  readonly at: number;
}

function Lines({ of }: { of: readonly Barred[] }) {
  return (
    <ul class="findings">
      {of.map(({ finding, bar, at }) => (
        <Line key={at} finding={finding} bar={bar} />
      ))}
    </ul>
  );
}

function Line({ finding, bar }: { finding: Finding; bar: string | undefined }) {
  const { words } = useDesk();
  const { words: plain } = useShared();
  return (
    <li>
      <p class="what">
        <VerdictShape verdict={finding.verdict} /> <b>{finding.what}</b> <span class="word">{named(plain, "verdict", finding.verdict)}</span>
      </p>
      {bar && <Picture svg={bar} />}
      <p>{finding.because}</p>
      {finding.next && <p class="then">→ {finding.next}</p>}
      {finding.limit && <p class="small">{words("finding_limit", { basis: finding.limit.basis })}</p>}
    </li>
  );
}

function Assign({ whole: { job: row }, onKept }: { whole: Whole; onKept: () => void }) {
  const { words } = useDesk();
  const { busy, fault, run } = useDoing();
  const all = useLoaded(people, []);
  const [chosen, setChosen] = useState<readonly string[]>(row.people.map((person) => person.id));
  const [kept, setKept] = useState(false);
  const keep = async (): Promise<void> => {
    const done = await run(() => assign(row.id, chosen));
    setKept(done);
    if (done) onKept();
  };
  return (
    <section>
      <Shown of={all}>{(everybody) => <PeopleChoice legend={words("job_with")} people={everybody} chosen={chosen} onChange={setChosen} />}</Shown>
      <Fault text={fault} />
      <button type="button" disabled={busy} onClick={() => void keep()}>
        {words("job_assign")}
      </button>
      <p class="small" role="status">
        {kept ? words("job_assigned") : ""}
      </p>
    </section>
  );
}

function Entries({ whole: { entries, faults, open } }: { whole: Whole }) {
  const { words, language } = useDesk();
  return (
    <section>
      <h2>{words("job_entries")}</h2>
      <Texts title={words("job_open")} texts={open} />
      <Texts title={words("job_faults")} texts={faults} />
      <details>
        <summary>{words("job_entries_count", { count: entries.length })}</summary>
        <ol class="entries">
          {entries.map(({ cursor, received_at, at, kind, device, person, body }) => (
            <li key={cursor}>
              <b>{words("entry_line", { at: when(at ?? received_at, language), kind, who: person ?? device })}</b>
              <code>{JSON.stringify(body)}</code>
            </li>
          ))}
        </ol>
      </details>
    </section>
  );
}

function Texts({ title, texts }: { title: string; texts: readonly string[] }) {
  if (texts.length === 0) return null;
  return (
    <>
      <h3>{title}</h3>
      <ul class="bullets">
        {texts.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </>
  );
}

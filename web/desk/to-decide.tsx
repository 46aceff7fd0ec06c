// Two have said different things of one job: the lead says which stands; both stay in the journal.
import { settle, type Decision, type Whole } from "./api.ts";
import { useDesk, useDoing, when } from "./context.ts";
import { Fault } from "./pieces.tsx";

export function ToDecide({ whole: { job: row, to_decide }, onSettled }: { whole: Whole; onSettled: () => void }) {
  const { words, language } = useDesk();
  const { busy, fault, run } = useDoing();
  const { slots, disputes } = to_decide;
  if (slots.length + disputes.length === 0) return null;
  const chosen = (decision: Decision): void => void run(() => settle(row.id, decision)).then((done) => done && onSettled());
  return (
    <section class="ask">
      <h2>{words("decide_title")}</h2>
      <p>{words("decide_say")}</p>
      {slots.map(({ name, values }) => (
        <fieldset key={name} class="matter">
          <legend>{name.replaceAll("_", " ")}</legend>
          {values.map((value) => (
            <button key={value} type="button" disabled={busy} onClick={() => chosen({ slot: name, value })}>
              {value}
            </button>
          ))}
        </fieldset>
      ))}
      {disputes.map(({ about, standing }) => (
        <fieldset key={about} class="matter">
          <legend>{standing[0]?.kind.replaceAll("_", " ")}</legend>
          {standing.map(({ id, device, at, body }) => (
            <button key={id} type="button" disabled={busy} onClick={() => chosen({ about, stands: id })}>
              <span>
                {device}, {when(at, language)}
              </span>
              <code>{JSON.stringify(body)}</code>
            </button>
          ))}
        </fieldset>
      ))}
      <Fault text={fault} />
    </section>
  );
}

// Entries that the server kept but did not take into a job; the lead decides.
import { aside, decide, type Aside } from "./api.ts";
import { useDesk, useDoing, useLoaded, when } from "./context.ts";
import { Fault, Heading, Shown } from "./pieces.tsx";

export function AsidePage() {
  const { words } = useDesk();
  const all = useLoaded(aside, []);
  return (
    <main class="narrow">
      <Heading title={words("aside_title")} />
      <p class="say">{words("aside_say")}</p>
      <Shown of={all}>
        {(items) =>
          items.length === 0 ? (
            <p class="say">{words("aside_none")}</p>
          ) : (
            <ul class="plain-list">
              {items.map((item) => (
                <Item key={item.number} item={item} onDecided={all.again} />
              ))}
            </ul>
          )
        }
      </Shown>
    </main>
  );
}

function Item({ item, onDecided }: { item: Aside; onDecided: () => void }) {
  const { words, language } = useDesk();
  const { busy, fault, run } = useDoing();
  const chosen = (decision: "take" | "leave"): void => void run(() => decide(item.number, decision)).then((done) => done && onDecided());
  return (
    <li>
      <b>{item.error}</b>
      <small>{words("aside_of", { job: item.job ?? "–", phone: item.phone ?? "–", at: when(item.received_at, language) })}</small>
      <details>
        <summary>{words("aside_show")}</summary>
        <code>{item.text}</code>
      </details>
      <div class="row">
        {item.code === "phone_withdrawn" && (
          <button type="button" disabled={busy} onClick={() => chosen("take")}>
            {words("aside_take")}
          </button>
        )}
        <button type="button" disabled={busy} onClick={() => chosen("leave")}>
          {words("aside_leave")}
        </button>
      </div>
      <Fault text={fault} />
    </li>
  );
}

// Who may send the units' reports here.
import { useState } from "preact/hooks";
import { addFeed, feeds, withdrawFeed } from "./api.ts";
import { useDesk, useDoing, useLoaded } from "./context.ts";
import { Fault, Heading, Shown } from "./pieces.tsx";

/** Their column names by ours, out of "unit_id=Device,t=Sent at"; the server says which names there are. */
export function columnMap(text: string): Record<string, string> {
  const pairs = text.split(",").filter((pair) => pair.trim() !== "");
  return Object.fromEntries(pairs.map((pair) => [(pair.split("=")[0] ?? "").trim(), pair.split("=").slice(1).join("=").trim()]));
}

export function Feeds() {
  const { words } = useDesk();
  const { busy, fault, run } = useDoing();
  const all = useLoaded(feeds, []);
  const [label, setLabel] = useState("");
  const [columns, setColumns] = useState("");
  const [token, setToken] = useState<string | null>(null);
  const add = async (): Promise<void> => {
    setToken((await addFeed(label.trim(), columnMap(columns))).token);
    setLabel("");
    setColumns("");
    all.again();
  };
  return (
    <main class="narrow">
      <Heading title={words("feeds_title")} />
      <p class="say">{words("feeds_say")}</p>
      <Shown of={all}>
        {(senders) =>
          senders.length === 0 ? (
            <p class="say">{words("feeds_none")}</p>
          ) : (
            <ul class="plain-list">
              {senders.map((feed) => (
                <li key={feed.id}>
                  <b>{feed.label}</b> <small>{Object.entries(feed.columns).map((pair) => pair.join("=")).join(", ")}</small>
                  {feed.withdrawn_at ? (
                    <small>{words("feed_withdrawn")}</small>
                  ) : (
                    <button type="button" onClick={() => void run(() => withdrawFeed(feed.id)).then(all.again)}>
                      {words("feed_withdraw")}
                    </button>
                  )}
                </li>
              ))}
            </ul>
          )
        }
      </Shown>
      {token !== null && (
        <div class="ask" role="status">
          <p>{words("feed_token")}</p>
          <code class="code">{token}</code>
          <p>{words("feed_how", { address: new URL("api/reports", document.baseURI).href })}</p>
        </div>
      )}
      <form
        class="lines"
        onSubmit={(event) => {
          event.preventDefault();
          void run(add);
        }}
      >
        <h2>{words("feed_add")}</h2>
        <label>
          {words("feed_label")}
          <input value={label} required autoComplete="off" onInput={(event) => setLabel(event.currentTarget.value)} />
        </label>
        <label>
          {words("feed_columns")}
          <input value={columns} autoComplete="off" spellcheck={false} onInput={(event) => setColumns(event.currentTarget.value)} />
        </label>
        <Fault text={fault} />
        <button type="submit" disabled={busy || label.trim() === ""}>
          {words("feed_do")}
        </button>
      </form>
    </main>
  );
}

// A file that belongs to a job: what it is is told from what it holds, by the engine, and said before anything else.
import { useId, useState } from "preact/hooks";
import { entriesOfFile, OPENED_KINDS, type Opened, type Refused } from "../core/opened.ts";
import { sha256 } from "../core/digest.ts";
import { text } from "../core/standing.ts";
import { useKeeping, useShared } from "../page/context.ts";
import { engine } from "../page/engine.ts";
import { spoken } from "../page/spoken.ts";
import type { OpenJob } from "../page/use-job.ts";
import { textOf } from "../store/blobs.ts";
import { formWordsIn } from "../words/form-words.ts";
import { Findings } from "./findings.tsx";

const MOST_BYTES = 20_000_000; // more is slow to judge on a phone; it goes through the desk

// what the engine calls the findings on a log: they belong to other stages, and stand here beside the file, too
const FINDINGS_OF = { bus_log: "bus_", reception: "reception_" } as const;

interface Props {
  readonly kind?: "recording" | "reports" | "reception"; // what is expected here; anything else is taken, too
  readonly open: OpenJob;
}

export function OpenFile({ kind, open }: Props) {
  const { language, setFault } = useShared();
  const words = formWordsIn(language);
  const keeping = useKeeping();
  const [busy, setBusy] = useState<string | null>(null);
  const [taken, setTaken] = useState<{ readonly name: string; readonly found: Opened } | null>(null);
  const held = open.said.filter((one) => OPENED_KINDS.some((known) => known === one.kind));
  const keep = async (name: string, bytes: Uint8Array<ArrayBuffer>): Promise<boolean> => {
    setBusy(name);
    setTaken(null);
    const found = await whatItIs(open, name, bytes);
    setBusy(null);
    if (!found?.ok) return (setFault(found ? words("file_refused", { why: found.error }) : words("file_unread", { name })), false);
    const digest = await sha256(bytes);
    const drafts = entriesOfFile(found, { sha256: digest, bytes: bytes.byteLength }, open.said);
    const blob = { sha256: digest, type: "text/plain", bytes: bytes.buffer };
    const isKept = await keeping(() => (drafts.length > 0 ? open.write(drafts, [blob]) : Promise.resolve()));
    if (isKept) setTaken({ name, found });
    return isKept;
  };
  const take = async (file: File): Promise<void> => {
    if (file.size > MOST_BYTES) return setFault(words("file_too_large"));
    await keep(file.name, new Uint8Array(await file.arrayBuffer()));
  };
  return (
    <div class="files">
      <ul>
        {held.map((one) => (
          <li key={one.id}>{text(one.body, "file")}</li>
        ))}
      </ul>
      <label class="button take">
        {words("open_file")}
        <input
          type="file"
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            event.currentTarget.value = "";
            if (file) void take(file);
          }}
        />
      </label>
      <p class="small">{words("open_file_say")}</p>
      <p role="status" class={busy === null ? "outcome" : "say"}>
        {busy !== null && words("file_listening", { name: busy })}
        {taken && (
          <>
            {words("file_taken", { name: taken.name, what: words(`file_is_${taken.found.kind}`) })} ({taken.found.counted})
          </>
        )}
      </p>
      <OfLog kind="bus_log" open={open} />
      {kind !== "reception" && <OfLog kind="reception" open={open} />}
      {kind === "reports" && <Paste onPaste={(content) => keep("reports.csv", new TextEncoder().encode(content))} />}
    </div>
  );
}

/** What was found of logs of one kind; nothing where there is none. */
function OfLog({ kind, open }: { kind: keyof typeof FINDINGS_OF; open: OpenJob }) {
  const judged = open.judgement?.ok ? open.judgement : null;
  const found = judged?.findings.filter(({ id }) => id.startsWith(FINDINGS_OF[kind])) ?? [];
  return judged && found.length > 0 ? <Findings findings={found} all={judged.findings} open={open} /> : null;
}

/** The engine's word on a file; null where the engine cannot be had. */
async function whatItIs({ said }: OpenJob, file: string, bytes: Uint8Array): Promise<Opened | Refused | null> {
  const sheet = said.findLast((one) => one.kind === "job");
  const asked = JSON.stringify({ file, "job.toml": sheet ? await textOf(text(sheet.body, "sha256")) : null, ...spoken() });
  const told = await engine().ask("opened", asked, `opened ${file}`, bytes);
  return told === null ? null : (JSON.parse(told) as Opened | Refused);
}

/** What was pasted stays in its field where it cannot be kept. */
function Paste({ onPaste }: { onPaste: (content: string) => Promise<boolean> }) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const [content, setContent] = useState("");
  const line = useId();
  return (
    <div class="typed">
      <label for={line}>{words("paste_reports")}</label>
      <textarea id={line} rows={3} value={content} spellcheck={false} onInput={(event) => setContent(event.currentTarget.value)} />
      <button type="button" disabled={content.trim() === ""} onClick={() => void onPaste(content).then((isKept) => isKept && setContent(""))}>
        {words("keep_pasted")}
      </button>
    </div>
  );
}

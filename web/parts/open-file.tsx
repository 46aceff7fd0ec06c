// A file of text that belongs to a job: a recording, or what the unit reported; opened here, or pasted.
import { useId, useState } from "preact/hooks";
import { text } from "../core/standing.ts";
import { useKeeping, useShared } from "../page/context.ts";
import type { NewEntry, OpenJob } from "../page/use-job.ts";
import { textBlob } from "../store/blobs.ts";
import { formWordsIn, type FormWord } from "../words/form-words.ts";

const MOST_BYTES = 20_000_000; // more is slow to judge on a phone; it goes through the desk
const REPORTS = "reports.csv";

type Kind = "recording" | "reports";

interface Props {
  readonly kind: Kind;
  readonly open: OpenJob;
}

const ASKED: Readonly<Record<Kind, FormWord>> = { recording: "open_recording", reports: "open_reports" };

export function OpenFile({ kind, open }: Props) {
  const { language, setFault } = useShared();
  const words = formWordsIn(language);
  const keeping = useKeeping();
  const held = open.said.filter((one) => one.kind === kind);
  const keep = async (name: string, content: string): Promise<void> => {
    const blob = await textBlob(content);
    const body = { file: name, sha256: blob.sha256, bytes: blob.bytes.byteLength, stored: true };
    await keeping(() => open.write([fileEntry(open, kind, body)], [blob]));
  };
  const take = async (file: File): Promise<void> => {
    if (file.size > MOST_BYTES) return setFault(words("file_too_large"));
    await keep(kind === "recording" ? `recordings/${file.name}` : REPORTS, await file.text());
  };
  return (
    <div class="files">
      <ul>
        {held.map((one) => (
          <li key={one.id}>{text(one.body, "file")}</li>
        ))}
      </ul>
      <label class="button take">
        {words(ASKED[kind])}
        <input
          type="file"
          accept=".csv,.txt,.tsv,text/*"
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            event.currentTarget.value = "";
            if (file) void take(file);
          }}
        />
      </label>
      {kind === "reports" && <Paste onPaste={(content) => void keep(REPORTS, content)} />}
    </div>
  );
}

function Paste({ onPaste }: { onPaste: (content: string) => void }) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const [content, setContent] = useState("");
  const line = useId();
  return (
    <div class="typed">
      <label for={line}>{words("paste_reports")}</label>
      <textarea id={line} rows={3} value={content} spellcheck={false} onInput={(event) => setContent(event.currentTarget.value)} />
      <button
        type="button"
        disabled={content.trim() === ""}
        onClick={() => {
          onPaste(content);
          setContent("");
        }}
      >
        {words("keep_pasted")}
      </button>
    </div>
  );
}

/** The entry of a file; one of the same name stands in place of the one before. */
function fileEntry({ said }: OpenJob, kind: Kind, body: { readonly file: string; readonly sha256: string; readonly bytes: number; readonly stored: boolean }): NewEntry {
  const before = said.filter((one) => one.kind === kind && text(one.body, "file") === body.file).map((one) => one.id);
  const blobs = [body.sha256];
  return before.length === 0 ? { kind, body, blobs } : { kind: "correction", body: { replaces: before, kind, body }, blobs };
}

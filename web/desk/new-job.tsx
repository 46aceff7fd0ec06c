// A job made at the desk from its two sheets.
import { useState } from "preact/hooks";
import { makeJob, people } from "./api.ts";
import { useDesk, useDoing, useLoaded } from "./context.ts";
import { PeopleChoice } from "./people-choice.tsx";
import { Fault, Heading, Shown } from "./pieces.tsx";
import { addressOf } from "./place.ts";

export function NewJob() {
  const { words } = useDesk();
  const { busy, fault, run } = useDoing();
  const all = useLoaded(people, []);
  const [sheet, setSheet] = useState("");
  const [unit, setUnit] = useState("");
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const make = async (): Promise<void> => {
    const { id } = await makeJob(sheet, unit, chosen);
    location.hash = addressOf({ name: "job", job: id });
  };
  return (
    <main class="narrow">
      <Heading title={words("new_title")} />
      <p class="say">{words("new_say")}</p>
      <form
        class="lines"
        onSubmit={(event) => {
          event.preventDefault();
          void run(make);
        }}
      >
        <Sheet label={words("new_job")} text={sheet} onText={setSheet} />
        <Sheet label={words("new_unit")} text={unit} onText={setUnit} />
        <Shown of={all}>{(everybody) => <PeopleChoice legend={words("job_with")} people={everybody} chosen={chosen} onChange={setChosen} />}</Shown>
        <Fault text={fault} />
        <button type="submit" class="main" disabled={busy || sheet.trim() === "" || unit.trim() === ""}>
          {words("new_do")}
        </button>
      </form>
    </main>
  );
}

function Sheet({ label, text, onText }: { label: string; text: string; onText: (text: string) => void }) {
  const { words } = useDesk();
  return (
    <div class="sheet">
      <label>
        {label}
        <textarea rows={10} value={text} spellcheck={false} onInput={(event) => onText(event.currentTarget.value)} />
      </label>
      <label class="file">
        {words("new_file")}
        <input
          type="file"
          accept=".toml,text/plain"
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            if (file) void file.text().then(onText);
          }}
        />
      </label>
    </div>
  );
}

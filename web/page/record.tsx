// The record on paper: made by the server where there is a line, kept here to be shown later; the printable page for the time before.
import { useEffect, useState } from "preact/hooks";
import { keepRecord, recordOf, type KeptRecord } from "../store/records.ts";
import { setting } from "../store/settings.ts";
import { waitingBlobs } from "../store/blobs.ts";
import { waitingCount } from "../store/journal.ts";
import { fetchRecord, Refused } from "../sync/server.ts";
import { syncNow } from "../sync/sync.ts";
import { formWordsIn, type FormWord } from "../words/form-words.ts";
import { useKeeping, useShared } from "./context.ts";
import type { OpenJob } from "./use-job.ts";

type State = { readonly word: FormWord; readonly why?: string } | null;

export function Record({ id, open }: { id: string; open: OpenJob }) {
  const { language } = useShared();
  const asked = formWordsIn(language);
  const keeping = useKeeping();
  const [state, setState] = useState<State>(null);
  const [record, setRecord] = useState<KeptRecord | null>(null);
  useEffect(() => void recordOf(id).then(setRecord), [id]);
  const count = open.entries?.length ?? 0;
  const get = async (): Promise<void> => {
    setState({ word: "record_making" });
    const { told, made } = await fetched(id, count);
    if (made) {
      setRecord(made);
      await keeping(() => keepRecord(made));
    }
    setState(told);
  };
  const busy = state?.word === "record_making";
  return (
    <section class="record">
      {record && <OpenRecord record={record} isOld={record.entries < count} />}
      <button type="button" class="wide" disabled={busy || count === 0} onClick={() => void get()}>
        {asked("record_get")}
      </button>
      <p class="small" role="status">
        {state && asked(state.word, { why: state.why ?? "" })}
      </p>
    </section>
  );
}

function OpenRecord({ record, isOld }: { record: KeptRecord; isOld: boolean }) {
  const { language } = useShared();
  const asked = formWordsIn(language);
  const [address, setAddress] = useState("");
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([record.bytes], { type: "application/pdf" }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [record]);
  const when = new Intl.DateTimeFormat(language, { dateStyle: "medium", timeStyle: "short" }).format(new Date(record.at));
  return (
    <>
      <a class="button main wide" href={address} target="_blank" rel="noopener">
        {asked("record_show", { when })}
      </a>
      {isOld && <p class="small">{asked("record_old")}</p>}
    </>
  );
}

/** The record as the server makes it of all that this phone has entered, or why there is none. */
async function fetched(job: string, entries: number): Promise<{ told: State; made: KeptRecord | null }> {
  const none = (word: FormWord, why?: string) => ({ told: why === undefined ? { word } : { word, why }, made: null });
  const enrolment = await setting("enrolment");
  if (!enrolment || !navigator.onLine) return none("record_no_line");
  await syncNow();
  if ((await waitingCount()) > 0 || (await waitingBlobs()).length > 0) return none(navigator.onLine ? "record_unsent" : "record_no_line");
  try {
    return { told: null, made: { job, at: new Date().toISOString(), entries, bytes: await fetchRecord(job, enrolment.token) } };
  } catch (fault) {
    return fault instanceof Refused ? none("record_bad", fault.message) : none("record_no_line");
  }
}

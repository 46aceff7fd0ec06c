// Who works here, and which phones they hold.
import { useState } from "preact/hooks";
import { Choice } from "../parts/choice.tsx";
import { grouped } from "../core/sign-off.ts";
import { LANGUAGES, type Language } from "../words/words.ts";
import { addPerson, enrolPhone, people, phones, withdrawPhone, type Enrolment, type Person, type Phone } from "./api.ts";
import { useDesk, useDoing, useLoaded, when } from "./context.ts";
import { Fault, Heading, Picture, Shown } from "./pieces.tsx";

export function People() {
  const { words } = useDesk();
  const crew = useLoaded(people, []);
  const held = useLoaded(phones, []);
  return (
    <main>
      <Heading title={words("people_title")} />
      <div class="columns">
        <section class="lines">
          <h2>{words("people")}</h2>
          <Shown of={crew}>{(everybody) => <Crew people={everybody} />}</Shown>
          <AddPerson onAdded={crew.again} />
        </section>
        <section class="lines">
          <h2>{words("phones")}</h2>
          <Shown of={held}>{(all) => <Phones phones={all} onChanged={held.again} />}</Shown>
        </section>
      </div>
    </main>
  );
}

function Crew({ people: everybody }: { people: readonly Person[] }) {
  const { words, language } = useDesk();
  const { fault, run } = useDoing();
  const [shown, setShown] = useState<{ person: string; enrolment: Enrolment } | null>(null);
  if (everybody.length === 0) return <p class="say">{words("people_none")}</p>;
  const enrol = (person: string): void => void run(async () => setShown({ person, enrolment: await enrolPhone(person) }));
  return (
    <ul class="plain-list">
      {everybody.map((person) => (
        <li key={person.id}>
          <b>{person.name}</b>
          <button type="button" onClick={() => enrol(person.id)}>
            {words("phone_enrol", { name: person.name })}
          </button>
          {shown?.person === person.id && (
            <div class="enrolment">
              <Picture svg={shown.enrolment.qr_svg} />
              <p>{words("phone_scan", { at: when(shown.enrolment.expires_at, language) })}</p>
              <p>
                {words("phone_code")} <b class="code">{shown.enrolment.code}</b>
              </p>
              <a href={shown.enrolment.url}>{words("phone_open")}</a>
            </div>
          )}
        </li>
      ))}
      <Fault text={fault} />
    </ul>
  );
}

function AddPerson({ onAdded }: { onAdded: () => void }) {
  const { words } = useDesk();
  const { busy, fault, run } = useDoing();
  const [name, setName] = useState("");
  const [language, setLanguage] = useState<Language>("en");
  const [units, setUnits] = useState<"metric" | "us">("metric");
  const add = async (): Promise<void> => {
    await addPerson({ name: name.trim(), language, units });
    setName("");
    onAdded();
  };
  return (
    <form
      class="lines"
      onSubmit={(event) => {
        event.preventDefault();
        void run(add);
      }}
    >
      <h3>{words("person_add")}</h3>
      <label>
        {words("person_name")}
        <input value={name} required autoComplete="off" onInput={(event) => setName(event.currentTarget.value)} />
      </label>
      <Choice legend={words("person_language")} options={(Object.keys(LANGUAGES) as Language[]).map((value) => ({ value, label: LANGUAGES[value] }))} value={language} onChange={setLanguage} kind="strip" />
      <Choice legend={words("person_units")} options={(["metric", "us"] as const).map((value) => ({ value, label: words(`units_${value}`) }))} value={units} onChange={setUnits} kind="strip" />
      <Fault text={fault} />
      <button type="submit" disabled={busy || name.trim() === ""}>
        {words("person_do")}
      </button>
    </form>
  );
}

function Phones({ phones: all, onChanged }: { phones: readonly Phone[]; onChanged: () => void }) {
  const { words } = useDesk();
  if (all.length === 0) return <p class="say">{words("phones_none")}</p>;
  return (
    <ul class="plain-list">
      {all.map((phone) => (
        <PhoneLine key={phone.id} phone={phone} onChanged={onChanged} />
      ))}
    </ul>
  );
}

function PhoneLine({ phone, onChanged }: { phone: Phone; onChanged: () => void }) {
  const { words, language } = useDesk();
  const { busy, fault, run } = useDoing();
  const [asked, setAsked] = useState(false);
  const withdraw = async (): Promise<void> => {
    await withdrawPhone(phone.id);
    onChanged();
  };
  return (
    <li>
      <b>{phone.label}</b> <span>{phone.person.name}</span>
      <small>{phone.withdrawn_at ? words("phone_withdrawn", { at: when(phone.withdrawn_at, language) }) : phone.seen_at ? words("phone_seen", { at: when(phone.seen_at, language) }) : words("phone_never")}</small>
      {phone.fingerprints.length > 0 && <small>{words("phone_key", { key: grouped(phone.fingerprints.at(-1) ?? "") })}</small>}
      {!phone.withdrawn_at && !asked && (
        <button type="button" onClick={() => setAsked(true)}>
          {words("phone_withdraw")}
        </button>
      )}
      {asked && !phone.withdrawn_at && (
        <div class="ask" role="alertdialog" aria-label={words("phone_withdraw")}>
          <p>{words("phone_withdraw_sure", { label: phone.label })}</p>
          <div class="row">
            <button type="button" class="main" disabled={busy} onClick={() => void run(withdraw)}>
              {words("yes")}
            </button>
            <button type="button" onClick={() => setAsked(false)}>
              {words("no")}
            </button>
          </div>
        </div>
      )}
      <Fault text={fault} />
    </li>
  );
}

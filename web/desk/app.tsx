// The desk: where one is, in which language, and whether somebody has logged in.
import { useEffect, useMemo, useState } from "preact/hooks";
import { SharedContext } from "../page/context.ts";
import { LANGUAGES, wordsIn, type Language } from "../words/words.ts";
import { logout, session, type Session } from "./api.ts";
import { AsidePage } from "./aside.tsx";
import { DeskContext, useDesk, useLoaded } from "./context.ts";
import { Feeds } from "./feeds.tsx";
import { JobPage } from "./job.tsx";
import { Jobs } from "./jobs.tsx";
import { Login } from "./login.tsx";
import { NewJob } from "./new-job.tsx";
import { People } from "./people.tsx";
import { Shown } from "./pieces.tsx";
import { addressOf, PAGES, usePlace } from "./place.ts";
import { RosterPage } from "./roster.tsx";
import { deskWordsIn } from "./words/words.ts";

interface Props {
  readonly language: Language;
  readonly onLanguage: (language: Language) => void;
}

export function App({ language: given, onLanguage }: Props) {
  const [language, setLanguage] = useState(given);
  const [turn, setTurn] = useState(0);
  const desk = useMemo(() => ({ words: deskWordsIn(language), language, onLoggedOut: () => setTurn((before) => before + 1) }), [language]);
  useEffect(() => {
    document.documentElement.lang = language;
  }, [language]);
  const choose = (chosen: Language): void => {
    setLanguage(chosen);
    onLanguage(chosen);
  };
  const shared = { words: wordsIn(language), language, setLanguage: choose, units: "metric" as const, setUnits: () => undefined, fault: null, setFault: () => undefined };
  return (
    <SharedContext.Provider value={shared}>
      <DeskContext.Provider value={desk}>
        <Inside turn={turn} onTurn={() => setTurn((before) => before + 1)} onLanguage={choose} />
      </DeskContext.Provider>
    </SharedContext.Provider>
  );
}

function Inside({ turn, onTurn, onLanguage }: { turn: number; onTurn: () => void; onLanguage: (language: Language) => void }) {
  const who = useLoaded(session, [turn]);
  return (
    <Shown of={who}>
      {(said) =>
        said.login_needed && said.person === null ? (
          <Login onLoggedIn={onTurn} />
        ) : (
          <>
            <Head who={said} onLoggedOut={onTurn} onLanguage={onLanguage} />
            <Page />
          </>
        )
      }
    </Shown>
  );
}

function Head({ who, onLoggedOut, onLanguage }: { who: Session; onLoggedOut: () => void; onLanguage: (language: Language) => void }) {
  const { words, language } = useDesk();
  const place = usePlace();
  return (
    <header class="desk-head">
      <nav aria-label={words("nav")}>
        {PAGES.map((name) => (
          <a key={name} href={addressOf({ name })} aria-current={place.name === name ? "page" : undefined}>
            {words(`nav_${name}`)}
          </a>
        ))}
      </nav>
      <label class="language">
        <span class="unseen">{words("language")}</span>
        <select value={language} onChange={(event) => onLanguage(event.currentTarget.value as Language)}>
          {(Object.keys(LANGUAGES) as Language[]).map((value) => (
            <option key={value} value={value}>
              {LANGUAGES[value]}
            </option>
          ))}
        </select>
      </label>
      {who.login_needed && (
        <button type="button" class="plain" onClick={() => void logout().finally(onLoggedOut)}>
          {words("nav_out")}
        </button>
      )}
    </header>
  );
}

function Page() {
  const place = usePlace();
  if (place.name === "job") return <JobPage key={place.job} id={place.job} />;
  if (place.name === "new") return <NewJob />;
  if (place.name === "roster") return <RosterPage />;
  if (place.name === "people") return <People />;
  if (place.name === "feeds") return <Feeds />;
  if (place.name === "aside") return <AsidePage />;
  return <Jobs />;
}

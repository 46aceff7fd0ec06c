// Which page is shown, in which language, and whether a newer app waits.
import { useEffect, useMemo, useState } from "preact/hooks";
import type { Units } from "../core/units.ts";
import { keepSetting, setting } from "../store/settings.ts";
import { wordsIn, type Language } from "../words/words.ts";
import { SharedContext, type Shared } from "./context.ts";
import { Enrol } from "./enrol.tsx";
import { FormPage } from "./form-page.tsx";
import { HandOver } from "./hand-over.tsx";
import { JobPage } from "./job.tsx";
import { usePlace, type Place, type StageName } from "./place.ts";
import { Probe } from "./probe.tsx";
import { Prove } from "./prove.tsx";
import { SettingsPage } from "./settings.tsx";
import { Today } from "./today.tsx";
import { keepApp, takeOver } from "./update.ts";

interface Props {
  readonly language: Language;
  readonly enrolled: boolean;
  readonly onLanguage: (language: Language) => void;
}

export function App({ language: given, enrolled: before, onLanguage }: Props) {
  const [enrolled, setEnrolled] = useState(before);
  const [language, setLanguage] = useState(given);
  const [units, setUnits] = useState<Units>("metric");
  const [fault, setFault] = useState<string | null>(null);
  const [newer, setNewer] = useState<ServiceWorker | null>(null);
  const place = usePlace();
  const words = useMemo(() => wordsIn(language), [language]);
  useEffect(() => void keepApp(setNewer), []);
  useEffect(() => {
    void (async () => setUnits((await setting("units")) ?? (await setting("enrolment"))?.person.units ?? "metric"))();
  }, [enrolled]);
  useEffect(() => {
    document.documentElement.lang = language;
  }, [language]);
  const shared: Shared = {
    words,
    language,
    units,
    fault,
    setFault,
    setUnits: (chosen) => {
      setUnits(chosen);
      void keepSetting("units", chosen);
    },
    setLanguage: (chosen) => {
      setLanguage(chosen);
      onLanguage(chosen);
    },
  };
  return (
    <SharedContext.Provider value={shared}>
      {newer && (
        <aside class="newer">
          {words("new_version")}{" "}
          <button type="button" onClick={() => takeOver(newer)}>
            {words("use_it")}
          </button>
        </aside>
      )}
      <Shown place={enrolled ? place : { name: "enrol", code: place.name === "enrol" ? place.code : "" }} onEnrolled={() => setEnrolled(true)} />
    </SharedContext.Provider>
  );
}

function Stage({ id, stage }: { id: string; stage: StageName }) {
  if (stage === "probe") return <Probe id={id} />;
  if (stage === "prove") return <Prove id={id} />;
  if (stage === "hand_over") return <HandOver id={id} />;
  return <FormPage id={id} name={stage} />;
}

function Shown({ place, onEnrolled }: { place: Place; onEnrolled: () => void }) {
  if (place.name === "enrol") return <Enrol code={place.code} onEnrolled={onEnrolled} />;
  if (place.name === "settings") return <SettingsPage />;
  if (place.name === "job") return <JobPage key={place.job} id={place.job} />;
  if (place.name === "stage") return <Stage key={`${place.job}/${place.stage}`} id={place.job} stage={place.stage} />;
  return <Today />;
}

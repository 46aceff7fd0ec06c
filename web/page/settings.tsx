// What a person chooses once: language, look, meter, lamp.
import { useEffect, useState } from "preact/hooks";
import { keepSetting, setting, type Enrolment, type Settings } from "../store/settings.ts";
import { Choice } from "../parts/choice.tsx";
import { Top } from "../parts/top.tsx";
import { LANGUAGES, type Language } from "../words/words.ts";
import { useShared } from "./context.ts";
import { METERS, type MeterName } from "./meters.ts";
import { addressOf } from "./place.ts";
import { showTheme } from "./theme.ts";
import { LAMPS, NO_LAMP } from "./use-lamp.ts";

declare const VERSION: string;

const UNITS = ["metric", "us"] as const;
const THEMES = ["auto", "light", "dark"] as const;

export function SettingsPage() {
  const { words, language, setLanguage, units, setUnits } = useShared();
  const [theme, setTheme] = useState<Settings["theme"]>("auto");
  const [meter, setMeter] = useState<string | null>(null);
  const [lamp, setLamp] = useState<string | null>(null);
  const [enrolment, setEnrolment] = useState<Enrolment | null>(null);
  const [persisted, setPersisted] = useState(true);
  const [read, setRead] = useState(false);
  useEffect(() => {
    void (async () => {
      setTheme((await setting("theme")) ?? "auto");
      setMeter(await setting("meter"));
      setLamp(await setting("lamp"));
      setEnrolment(await setting("enrolment"));
      setPersisted((await navigator.storage?.persisted?.()) ?? true);
      setRead(true); // all at once: nothing moves under a finger
    })();
  }, []);
  const chooseTheme = (chosen: Settings["theme"]): void => {
    setTheme(chosen);
    showTheme(chosen);
    void keepSetting("theme", chosen);
  };
  const chooseMeter = (chosen: MeterName): void => {
    setMeter(chosen);
    void keepSetting("meter", chosen);
  };
  const chooseLamp = (chosen: string): void => {
    setLamp(chosen);
    void keepSetting("lamp", chosen);
  };
  const lamps = [...LAMPS.map((value) => ({ value: value as string, label: `${value} A` })), { value: NO_LAMP as string, label: words("lamp_none") }];
  const languages = (Object.keys(LANGUAGES) as Language[]).map((value) => ({ value, label: LANGUAGES[value] }));
  return (
    <>
      <Top title={words("settings")} back={{ name: "today" }} />
      {read && (
        <main>
          {!persisted && <p class="notice">{words("may_be_dropped")}</p>}
          <Choice legend={words("language")} options={languages} value={language} onChange={setLanguage} kind="strip" />
          <Choice legend={words("units")} options={UNITS.map((value) => ({ value, label: words(`units_${value}`) }))} value={units} onChange={setUnits} kind="strip" />
          <Choice legend={words("theme")} options={THEMES.map((value) => ({ value, label: words(`theme_${value}`) }))} value={theme} onChange={chooseTheme} kind="strip" />
          <Choice legend={words("meter_title")} options={METERS.map((value) => ({ value, label: words(`meter_${value}`) }))} value={meter as MeterName | null} onChange={chooseMeter} kind="list" />
          <Choice legend={words("lamp_title")} options={lamps} value={lamp} onChange={chooseLamp} kind="strip" />
          <dl class="facts">
            <dt>{words("person")}</dt>
            <dd>{enrolment?.person.name}</dd>
            <dt>{words("phone")}</dt>
            <dd>{enrolment?.device}</dd>
          </dl>
          <a class="quiet" href={addressOf({ name: "enrol", code: "" })}>
            {words("enrol_again")}
          </a>
          <p class="small">{words("version", { version: VERSION })}</p>
        </main>
      )}
    </>
  );
}

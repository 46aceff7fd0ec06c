// The app begins: language and look first, then the page; engine, sync and the app's own keeping start beside it.
import { render } from "preact";
import { keepSetting, setting } from "../store/settings.ts";
import { startSync } from "../sync/sync.ts";
import { languageOf, type Language } from "../words/words.ts";
import { App } from "./app.tsx";
import { engine } from "./engine.ts";
import { showTheme } from "./theme.ts";

async function begin(): Promise<void> {
  const place = document.getElementById("app");
  if (!place) return;
  engine(); // first: it takes longest
  showTheme((await setting("theme")) ?? "auto");
  const enrolment = await setting("enrolment");
  const language: Language = (await setting("language")) ?? enrolment?.person.language ?? languageOf(navigator.languages);
  document.documentElement.lang = language; // before anything is asked of the engine
  render(<App language={language} enrolled={enrolment !== null} onLanguage={(chosen) => void keepSetting("language", chosen)} />, place);
  performance.mark("backprobe-usable");
  startSync();
}

void begin();

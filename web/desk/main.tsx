// The desk begins: language first, then the page.
import { render } from "preact";
import { languageOf, LANGUAGES, type Language } from "../words/words.ts";
import { App } from "./app.tsx";

const KEPT = "desk-language";

function language(): Language {
  const kept = localStorage.getItem(KEPT);
  return kept !== null && kept in LANGUAGES ? (kept as Language) : languageOf(navigator.languages);
}

const place = document.getElementById("app");
if (place) render(<App language={language()} onLanguage={(chosen) => localStorage.setItem(KEPT, chosen)} />, place);

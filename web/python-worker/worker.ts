// The engine in a worker of its own: it starts while the page is in use already, and answers one call after another.
import type { Ask, Told } from "../core/engine-words.ts";

declare const PYTHON_HOME: string;
declare const PYTHON_LIBRARY: string;
declare const PYTHON_LOCK: string;
declare const ENGINE: string;
declare const START: string;

interface Python {
  FS: { writeFile(path: string, bytes: Uint8Array): void };
  runPython(code: string): unknown;
  globals: { get(name: string): (text: string, bytes?: Uint8Array) => string };
}

const DOORS: Record<Ask["door"], string> = {
  judge_journal: "judge_journal_text",
  margin_bars: "margin_bars_text",
  pictures: "pictures_text",
  places: "places_text",
  proof: "proof_text",
  sign_off: "sign_off_text",
  opened: "opened_file",
};
const OPENED = `
from backprobe.job.journal_door import judge_journal_text, margin_bars_text, pictures_text
from backprobe.job.places_door import places_text


def sign_off_text(text):
    from backprobe.job.sign_off_door import sign_off_text as door  # wanted once a job: not while the engine starts

    return door(text)


def proof_text(text):
    from backprobe.job.proof_door import proof_text as door

    return door(text)


def opened_file(asked, held):
    from backprobe.job.opened_door import opened_text as door  # as rarely

    return door(asked, held.to_bytes())
`;

const place = (name: string): string => new URL(name, self.location.href).href;
const say = (told: Told): void => self.postMessage(told);

async function started(): Promise<Python> {
  const begun = performance.now();
  const home = place(`${PYTHON_HOME}/`);
  const engine = fetch(place(ENGINE)).then((response) => response.arrayBuffer());
  const { loadPyodide } = (await import(`${home}pyodide.mjs`)) as { loadPyodide(options: object): Promise<Python> };
  const python = await loadPyodide({
    indexURL: home,
    packageBaseUrl: home,
    lockFileContents: PYTHON_LOCK,
    stdLibURL: place(PYTHON_LIBRARY),
  });
  python.FS.writeFile("/engine.bin", new Uint8Array(await engine));
  python.runPython(START + OPENED);
  say({ state: "ready", ms: Math.round(performance.now() - begun) });
  return python;
}

const python = started();
python.catch((fault: unknown) => say({ state: "failed", why: String(fault) }));

self.onmessage = async ({ data }: MessageEvent<Ask>) => {
  try {
    const { globals } = await python;
    const begun = performance.now();
    const door = globals.get(DOORS[data.door]);
    const text = data.bytes ? door(data.text, data.bytes) : door(data.text);
    say({ state: "answer", id: data.id, text, ms: Math.round(performance.now() - begun) });
  } catch (fault) {
    say({ state: "fault", id: data.id, why: String(fault) });
  }
};

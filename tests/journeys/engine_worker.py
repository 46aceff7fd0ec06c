"""The engine's worker as the page has it, asked directly: its answer byte for byte, and how long it took."""

from __future__ import annotations

import json
from pathlib import Path

from playwright.sync_api import Page

ASK = """async ([name, door, text, encoded]) => {
  const bytes = encoded ? Uint8Array.from(atob(encoded), (letter) => letter.charCodeAt(0)) : undefined;
  const worker = new Worker(new URL(name, document.baseURI), { type: "module" });
  const told = (wanted) => new Promise((done, failed) => {
    worker.onmessage = ({ data }) => {
      if (data.state === wanted) done(data);
      else if (data.state === "failed" || data.state === "fault") failed(new Error(data.why));
    };
  });
  await told("ready");
  const answers = [];
  for (const id of encoded ? [1] : [1, 2]) {
    worker.postMessage({ id, door, text, bytes });
    answers.push(await told("answer"));
  }
  worker.terminate();
  return answers.map(({ text, ms }) => [text, ms]);
}"""


def asked_twice(page: Page, built: Path, *, door: str, text: str) -> list[tuple[str, int]]:
    """What a fresh worker says to a question asked twice, each time with the milliseconds it took."""
    return [(said, ms) for said, ms in page.evaluate(ASK, [_worker(built), door, text, None])]


def asked_with(page: Page, built: Path, *, door: str, text: str, encoded: str) -> tuple[str, int]:
    """What a fresh worker says to a question about a file, its bytes given in base64, and the milliseconds it took."""
    [(said, ms)] = page.evaluate(ASK, [_worker(built), door, text, encoded])
    return said, ms


def _worker(built: Path) -> str:
    """The name under which the pages find the worker."""
    listed = json.loads((built / "files.json").read_text(encoding="utf-8"))["files"]
    return next(name for name in listed if name.startswith("python-worker"))

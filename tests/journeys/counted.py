"""How often a hand touches the glass and how many characters it types, counted by the page's own events.

A touch is a press on anything that can be touched; a character is a key of the keypad, or what a line grew by. Not
counted: what takes a photo, what chooses a file, and the drawing of a signature.
"""

from __future__ import annotations

from dataclasses import dataclass

from playwright.sync_api import BrowserContext

LISTEN = """
(() => {
  const apart = (target) => target.closest(".photos, .signature canvas, input[type=file], label:has(input[type=file])");
  addEventListener("pointerdown", ({ target, isTrusted }) => {
    if (!isTrusted || !(target instanceof Element) || apart(target)) return;
    const key = target.closest(".keys button");
    const touched = target.closest("button, a, label, summary, input, select, textarea");
    if (key) counted("character", key.textContent ?? "");
    else if (touched) counted("touch", (touched.textContent || touched.getAttribute("aria-label") || "").trim());
  }, true);
  const lengths = new WeakMap();
  addEventListener("focusin", ({ target }) => "value" in target && lengths.set(target, target.value.length), true);
  addEventListener("input", ({ target }) => {
    if (!["text", "", "search", "tel", "number", null].includes(target.getAttribute("type"))) return;
    const grown = target.value.length - (lengths.get(target) ?? 0);
    lengths.set(target, target.value.length);
    for (let more = 0; more < grown; more += 1) counted("character", target.value.at(-1));
  }, true);
})();
"""


@dataclass(frozen=True, slots=True)
class Done:
    """One touch or one character, and what was touched."""

    what: str
    on: str


class Counted:
    """What was done on the pages of a browser since `begin`."""

    def __init__(self, context: BrowserContext) -> None:
        self.done: list[Done] = []
        context.expose_function("counted", lambda what, on: self.done.append(Done(what, on)))
        context.add_init_script(LISTEN)

    def begin(self) -> None:
        """Forgets what was done before."""
        self.done.clear()

    @property
    def touches(self) -> list[str]:
        """What was touched, in order."""
        return [each.on for each in self.done if each.what == "touch"]

    @property
    def characters(self) -> str:
        """What was typed, in order."""
        return "".join(each.on for each in self.done if each.what == "character")

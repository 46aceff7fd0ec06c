"""Everybody can use it: by keyboard, with a screen reader, with gloves, in the dark, in Spanish, 360 px wide."""

from __future__ import annotations

from typing import Any

import pytest
from playwright.sync_api import expect
from tests.journeys.conftest import ROOT, Phone

AXE = ROOT / "web" / "node_modules" / "axe-core" / "axe.min.js"
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
LEAST_TARGET_PX = 48
SMALL = """
least => [...document.querySelectorAll('button, a[href], input, summary, .options label')]
  .filter(each => each.offsetParent !== null && !each.closest('.unseen'))
  .map(each => [each.textContent || each.getAttribute('aria-label') || each.tagName, each.getBoundingClientRect()])
  .filter(([, box]) => Math.min(box.width, box.height) < least)
  .map(([name, box]) => `${name}: ${Math.round(box.width)} x ${Math.round(box.height)}`)
"""


def faults_of(phone: Phone) -> list[str]:
    """What axe finds wrong with the page as it stands, with the places."""
    phone.page.evaluate(AXE.read_text(encoding="utf-8"))
    found: dict[str, Any] = phone.page.evaluate("rules => axe.run({runOnly: rules})", RULES)
    return [f"{fault['id']}: {[node['target'] for node in fault['nodes']]}" for fault in found["violations"]]


def must_be_reachable(phone: Phone) -> None:
    """No violation, nothing smaller than a gloved finger, nothing wider than the phone; in light and in dark."""
    for scheme in ("light", "dark"):
        phone.page.emulate_media(color_scheme=scheme)
        assert faults_of(phone) == [], scheme
    assert phone.page.evaluate(SMALL, LEAST_TARGET_PX) == []
    assert phone.page.evaluate("document.documentElement.scrollWidth") <= 360


def test_every_screen_can_be_reached_by_everybody(phone: Phone) -> None:
    """The day, the settings, a job with its findings open, the wires with a figure, a wire's own sheet, enrolling."""
    must_be_reachable(phone)
    phone.page.goto(f"{phone.yard.url}#/settings")
    must_be_reachable(phone)
    phone.page.goto(f"{phone.yard.url}#/")
    phone.to_wires()
    must_be_reachable(phone)
    phone.choose_meter()
    phone.add_wire("X12", "4", "RD")
    phone.measure("X12/4 RD", "off", "12.62")
    expect(phone.page.locator(".next .do")).to_contain_text("Measure X12/4 RD")
    must_be_reachable(phone)
    phone.page.get_by_role("button", name="About X12/4 RD").click()
    expect(phone.page.get_by_role("dialog")).to_be_visible()
    must_be_reachable(phone)
    phone.page.get_by_role("button", name="Close").click()
    phone.page.get_by_role("link", name="Back").click()
    phone.page.locator(".stage summary").last.click()
    expect(phone.page.locator(".findings li").first).to_be_visible()
    must_be_reachable(phone)


def test_enrolling_can_be_reached_by_everybody(phone: Phone) -> None:
    """The first screen of a new phone."""
    fresh = phone.context.browser
    assert fresh is not None
    context = fresh.new_context(viewport={"width": 360, "height": 740})
    new = Phone(context, phone.yard)
    new.page.goto(phone.yard.url)
    expect(new.page.get_by_role("heading", level=1)).to_be_visible()
    must_be_reachable(new)
    context.close()


def test_a_wire_is_probed_by_keyboard_alone(phone: Phone) -> None:
    """Tab, arrows, figures and Enter: a position chosen, a figure typed and kept, with no pointer at all."""
    phone.to_wires()
    phone.choose_meter()
    phone.add_wire("X12", "4", "RD")
    page = phone.page
    page.get_by_role("radio", name="off", exact=True).focus()
    page.keyboard.press("ArrowRight")
    page.keyboard.press("ArrowRight")
    expect(page.get_by_role("radio", name="on", exact=True)).to_be_checked()
    page.keyboard.press("Tab")  # to the figure
    page.keyboard.type("12.40")
    page.keyboard.press("Enter")
    expect(page.locator("main > .said")).to_have_text("Kept: X12/4 RD, on, 12.40 V")


def test_a_figure_is_put_right_and_taken_back(phone: Phone) -> None:
    """A slip of the finger: 21.62 becomes 12.62, then it is taken back altogether; the server has all three entries."""
    phone.to_wires()
    phone.choose_meter()
    phone.add_wire("X12", "4", "RD")
    phone.measure("X12/4 RD", "off", "21.62")
    page = phone.page
    page.locator(".readings > summary").click()
    page.get_by_role("button", name="off 21.62 V").click()
    page.get_by_label("Right figure in volts").fill("12.62")
    page.get_by_role("button", name="Change").click()
    expect(page.get_by_role("button", name="off 12.62 V")).to_be_visible()
    page.get_by_role("button", name="off 12.62 V").click()
    page.get_by_role("button", name="Take back").click()
    expect(page.locator(".readings li")).to_have_count(0)
    expect(page.locator(".unsent")).to_have_text("All sent")


@pytest.mark.parametrize(("language", "title", "keep"), [("English", "Today", "Keep"), ("Español", "Hoy", "Guardar")])
def test_each_language_stands_on_its_own(phone: Phone, language: str, title: str, keep: str) -> None:
    """Chosen in the settings, kept through a reload, and said to screen readers."""
    phone.choose_language(language)
    phone.page.reload()
    expect(phone.page.get_by_role("heading", level=1)).to_have_text(title)
    assert phone.page.evaluate("document.documentElement.lang") == {"English": "en", "Español": "es"}[language]
    phone.page.goto(f"{phone.yard.url}#/job/LY-2026-07/probe")
    expect(phone.page.get_by_role("button", name=keep, exact=True)).to_be_visible()

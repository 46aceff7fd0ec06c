"""A Spanish phone: everything on it is Spanish, what the engine says too, but for what somebody wrote themselves."""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, expect
from tests.journeys.conftest import PHONE, Phone, Yard
from tests.journeys.line import Line
from tests.journeys.trucks import Desk
from tests.samples.demo_jobs import DEMO
from tests.samples.own_words import runs_of
from tests.samples.served import serving

from backprobe.cases.hand_in_folder import hand_in_folder
from backprobe.server.settings import Settings

ENGLISH = re.compile(
    r"\b(?:the|of|is|was|are|not|with|from|and|wire|lead|at|by|in|its|has|that|what|who|unit|measure|while|it|to|for)\b"
)
STAGES = ("walkround", "probe", "join", "mount", "prove", "hand_over")
# everything is unfolded, and something that the engine said stands on the page
UNFOLDED = """() => {
  document.querySelectorAll("details:not([open])").forEach((each) => (each.open = true));
  return document.querySelectorAll(".findings li, .sentences li, .next .do").length > 0;
}"""
QUOTED = re.compile(r'"([^"]+)"')


def own_words(folder: Path) -> list[str]:
    """What somebody wrote into the job's files, the longest first."""
    texts = [path.read_text("utf-8", "replace") for path in folder.iterdir() if path.suffix in {".toml", ".csv"}]
    texts += [(DEMO / "unit.toml").read_text("utf-8"), (DEMO / "corners.txt").read_text("utf-8")]
    written = {said for text in texts for said in QUOTED.findall(text)}
    parts = {part.strip() for said in written for part in re.split(r"[,(;:]| and ", said)}
    cells = {cell.strip() for text in texts for cell in re.split(r"[,;\n\t]", text)}
    return sorted(written | parts | cells, key=len, reverse=True)


def english(text: str, own: list[str]) -> list[str]:
    """The lines of a page that are English still."""
    for said in own:
        if " " in said:
            text = text.replace(said, "")
    left = [line for line in text.splitlines() if ENGLISH.search(line)]
    for run in runs_of(own) if left else ():  # a picture breaks over lines what somebody wrote
        left = [line.replace(run, "") for line in left]
    return [line for line in left if ENGLISH.search(line)]


@pytest.fixture
def bare(built: Path, tmp_path: Path) -> Iterator[Yard]:
    """A yard without a job."""
    with serving(Settings(data=tmp_path / "data", pages=built)) as server:
        line = Line(server.url)
        desk = Desk.of(server, server.person("Ines Okafor"))
        yield Yard(line, desk)
        desk.client.close()
        line.close()


@pytest.mark.parametrize("truck", ["truck-12", "truck-07"])
def test_nothing_on_a_spanish_phone_is_english(browser: Browser, bare: Yard, tmp_path: Path, truck: str) -> None:
    """Today, a job and each of its stages, all that can be unfolded unfolded: no English word is left."""
    shutil.copytree(DEMO, tmp_path / "demo", ignore=shutil.ignore_patterns("*journal*", "blobs"))
    folder = tmp_path / "demo" / truck
    handed = hand_in_folder(
        bare.desk.server.yard, bare.desk.server.lead, folder=folder, people_ids=[bare.desk.person.id]
    )
    bare.desk.given.append(handed.job)
    own = own_words(folder)
    context = browser.new_context(**PHONE)
    phone = Phone(context, bare)
    phone.enrol("Español")
    page = phone.page
    expect(page.get_by_role("heading", name="Hoy")).to_be_visible()
    assert english(page.locator("#app").inner_text(), own) == []
    for place in ("", *(f"/{stage}" for stage in STAGES)):
        page.goto(f"{bare.url}#/job/{handed.job}{place}")
        expect(page.locator("main h2").first).to_be_visible()
        expect(page.locator("main")).not_to_contain_text("Calculando", timeout=60_000)
        expect(page.locator("main")).not_to_contain_text("se está iniciando", timeout=60_000)
        page.wait_for_function(UNFOLDED, timeout=90_000)
        expect(page.locator(".behind")).to_have_count(0, timeout=60_000)
        assert english(page.locator("#app").inner_text(), own) == [], place
    context.close()
    assert phone.faults == []


def test_nothing_on_a_spanish_desk_is_english(browser: Browser, bare: Yard, tmp_path: Path) -> None:
    """The list of jobs and one job with everything unfolded, but for its entries as they were written."""
    shutil.copytree(DEMO, tmp_path / "demo", ignore=shutil.ignore_patterns("*journal*", "blobs"))
    folder = tmp_path / "demo" / "truck-12"
    handed = hand_in_folder(bare.desk.server.yard, bare.desk.server.lead, folder=folder)
    context = browser.new_context(viewport={"width": 1280, "height": 900}, locale="es-ES")
    page = context.new_page()
    for place, found in (("jobs", "tbody tr"), (f"job/{handed.job}", ".findings li")):
        page.goto(f"{bare.desk.server.url}/desk.html#/{place}")
        expect(page.locator(found).first).to_be_attached()
        page.evaluate("document.querySelectorAll('details').forEach((each) => (each.open = true))")
        page.evaluate("document.querySelectorAll('code, [lang=en]:not(html)').forEach((each) => each.remove())")
        assert english(page.locator("main").inner_text(), own_words(folder)) == [], place
    context.close()

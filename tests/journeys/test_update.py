"""A newer app waits until it is touched, and nothing that was kept is lost by it."""

from __future__ import annotations

import json
import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, expect
from tests.journeys.conftest import PHONE, Phone, Yard
from tests.journeys.line import Line
from tests.journeys.trucks import Desk
from tests.samples.served import serving

from backprobe.server.settings import Settings

WORKER = "service-worker.js"
DIGEST = re.compile(r"[0-9a-f]{16}(?=[\"'`])")


def newer(pages: Path) -> None:
    """Changes built pages as a next version would: another service worker, with a digest of its own."""
    script = (pages / WORKER).read_text(encoding="utf-8")
    (pages / WORKER).write_text(DIGEST.sub("f" * 16, script, count=1), encoding="utf-8")
    listed = json.loads((pages / "files.json").read_text(encoding="utf-8"))
    listed["files"][WORKER] |= {"sha256": "f" * 64, "br": None, "gz": None}
    (pages / "files.json").write_text(json.dumps(listed), encoding="utf-8")


@pytest.fixture
def pages(built: Path, tmp_path: Path) -> Path:
    """A copy of the built pages, to be changed."""
    return Path(shutil.copytree(built, tmp_path / "pages"))


@pytest.fixture
def yard_of_copy(pages: Path, tmp_path: Path) -> Iterator[Yard]:
    """A yard that serves the copy."""
    with serving(Settings(data=tmp_path / "data", pages=pages)) as server:
        line = Line(server.url)
        desk = Desk.of(server, server.person("Ines Okafor"))
        desk.give("LY-2026-07", "LY 07")
        yield Yard(line, desk)
        desk.client.close()
        line.close()


def test_a_newer_app_waits_until_it_is_touched(browser: Browser, yard_of_copy: Yard, pages: Path) -> None:
    """Entries that wait while the app is renewed are there afterwards; the large files are not loaded again."""
    context = browser.new_context(**PHONE)
    phone = Phone(context, yard_of_copy)
    phone.enrol()
    phone.to_wires()
    phone.choose_meter()
    loaded = yard_of_copy.line.carried
    newer(pages)
    phone.page.evaluate("navigator.serviceWorker.ready.then(kept => kept.update()).then(() => true)")
    expect(phone.page.locator(".newer")).to_contain_text("A new version is here")
    assert yard_of_copy.line.carried - loaded < 200_000
    phone.offline()
    phone.add_wire("X12", "4", "RD")
    phone.page.get_by_role("button", name="Use it now").click()
    expect(phone.page.locator(".newer")).to_have_count(0)
    expect(phone.page.get_by_role("radio", name="X12/4 RD")).to_have_count(1)
    names = phone.page.evaluate("caches.keys()")
    assert names == [f"backprobe-{'f' * 16}"]
    context.close()

"""What may be taken over from another vehicle of the type, and what may not."""

from __future__ import annotations

import shutil
from pathlib import Path

from playwright.sync_api import expect
from tests.journeys.conftest import Phone
from tests.samples.demo_jobs import DEMO

from backprobe.cases.hand_in_folder import hand_in_folder

JOB = "LY-2026-05"
SHOWN = {"probe": ".next .do", "join": ".leads > li", "mount": ".at-once"}  # what stands on a page that is ready


def test_a_job_that_fails_is_no_pattern(phone: Phone, tmp_path: Path) -> None:
    """LY 12 is of the type and on this phone, its joints written down; some fail: nothing is offered of it."""
    shutil.copytree(DEMO, tmp_path / "demo", ignore=shutil.ignore_patterns("*journal*", "blobs"))
    server, folder = phone.yard.desk.server, tmp_path / "demo" / "truck-12"
    hand_in_folder(server.yard, server.lead, folder=folder, people_ids=[phone.yard.desk.person.id])
    phone.yard.desk.give(JOB, "LY 05", "LN2-00432")
    phone.page.reload()
    expect(phone.page.locator(".jobs li")).to_have_count(3)
    failing = phone.page.locator(".jobs li", has=phone.page.get_by_text("LY 12", exact=True))
    expect(failing.locator(".state")).to_contain_text("failing")
    for stage, shown in SHOWN.items():
        phone.page.goto(f"{phone.yard.url}#/job/{JOB}/{stage}")
        expect(phone.page.locator("h1")).to_contain_text("LY 05")
        expect(phone.page.locator(shown).first).to_be_visible()
        expect(phone.page.get_by_role("button", name="LY 12")).to_have_count(0)

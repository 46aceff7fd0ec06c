"""A day that has not changed is not fetched again; what has changed is."""

from __future__ import annotations

from typing import Any

from playwright.sync_api import Response, expect
from tests.journeys.conftest import Phone
from tests.samples.journals import Phone as Device

LOOKED_AT = "document.dispatchEvent(new Event('visibilitychange'))"
KEPT = """name => new Promise((resolve, reject) => {
  const opened = indexedDB.open("backprobe");
  opened.onerror = () => reject(opened.error);
  opened.onsuccess = () => {
    const found = opened.result.transaction("settings").objectStore("settings").get(name);
    found.onsuccess = () => resolve(found.result ?? null);
  };
})"""


def asked_again(phone: Phone) -> Response:
    """The answer to the day that the phone asks for when its page is looked at again."""
    with phone.page.expect_response(lambda answer: "/api/day" in answer.url) as found:
        phone.page.evaluate(LOOKED_AT)
    return found.value


def kept(phone: Phone, name: str) -> Any:
    """A setting as the phone has kept it."""
    return phone.page.evaluate(KEPT, name)


def test_only_what_is_new_is_fetched(phone: Phone) -> None:
    """Looked at again: 304, the job is there. A unit goes into a vehicle elsewhere: the list of units comes, alone."""
    phone.page.wait_for_function(f"async () => (await ({KEPT})('day')) !== null")
    assert asked_again(phone).status == 304
    expect(phone.page.locator(".jobs li")).to_have_count(1)
    server = phone.yard.desk.server
    with server.phone("Marta", device="phone-b") as other:
        claim = Device("phone-b", job="job-b").claims("serial", "LN2-7")
        other.post("/api/entries", json={"entries": [claim.raw.decode()]})
    answer = asked_again(phone)
    assert answer.status == 200
    parts = set(answer.json())
    assert "serials" in parts
    assert not {"usual", "corners"} & parts
    phone.page.wait_for_function(f"async () => (await ({KEPT})('serials')).some(each => each.serial === 'LN2-7')")
    assert asked_again(phone).status == 304
    assert kept(phone, "usual") == []
    assert kept(phone, "clock_out_min") == 0


def test_the_day_says_how_each_job_stands_before_it_was_opened(phone: Phone) -> None:
    """As the server has judged it, with a button to what is due; then as the phone itself has: the same."""
    job = phone.page.locator(".jobs li")
    expect(job.locator(".state")).to_contain_text("open")
    due = job.locator(".due")
    expect(due).to_have_text("Walkround")
    said = job.locator(".state").inner_text()
    job.locator("a").first.click()
    expect(phone.page.locator(".next .do:not(.behind)")).to_be_visible()
    phone.page.goto(f"{phone.yard.url}#/")
    expect(phone.page.locator(".jobs .state")).to_have_text(said)  # the same engine says the same

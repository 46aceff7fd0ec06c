"""The proof by few touches: one for each planned turn, one for the lights; the reports come by themselves."""

from __future__ import annotations

import json
from datetime import UTC, datetime, timedelta
from typing import Any

from playwright.sync_api import Page, expect
from tests.journeys.conftest import Phone
from tests.journeys.counted import Counted
from tests.journeys.test_reach import must_be_reachable
from tests.journeys.test_stages import judged
from tests.samples.prove_cases import HEADER

JOB, UNIT = "LY-2026-05", "LN2-00432"
PLACE = "\n[place]\nlat = -33.1\nlon = 151.2\naccuracy_m = 5\n"
PLAN = ["off", "accessory", "off", "on", "crank", "running", "off", "doors_shut"]
DOING = [
    "key off",
    "key to accessory",
    "key off",
    "key on",
    "start the engine",
    "the engine runs",
    "key off",
    "get out",
]
ON_S, OFF_S, BEAT_S = 2, 20, 30
AFTER_S = 300  # for which it is heard after the last turn
MOST_TOUCHES = 9
CSV = {"Content-Type": "text/csv"}


def at_proof(phone: Phone, more: str = PLACE) -> Counted:
    """LY 05 at its proof, with a clock that the test moves on; the plan is there."""
    phone.yard.desk.give(JOB, "LY 05", UNIT, more=more)
    counted = Counted(phone.context)
    phone.page.clock.install()
    phone.page.reload()
    expect(phone.page.locator(".jobs li")).to_have_count(2)
    phone.page.goto(f"{phone.yard.url}#/job/{JOB}/prove")
    expect(phone.page.locator("button.key-turn")).to_contain_text("key off")
    counted.begin()
    return counted


def turn_the_key(page: Page, *, done: int = 0, until: int = len(DOING)) -> None:
    """The planned turns that are not done yet, each as the page asks for it and once its hold is over."""
    for at in range(done, until):
        due = page.locator("button.key-turn")
        expect(due).to_contain_text(DOING[at])
        expect(due).to_contain_text("Now, and touch:")
        due.click()
        expect(page.locator(".stamped li")).to_have_count(at + 1)
        page.clock.fast_forward(held_s(page) * 1000 + 1000)


def held_s(page: Page) -> int:
    """How long the page says that the state is to be left."""
    waits = page.locator(".next .when, .next .do").first
    expect(waits).to_contain_text(":")
    minutes, seconds = (
        next(word for word in (waits.text_content() or "").split() if word[0].isdigit()).strip(":.").split(":")
    )
    return int(minutes) * 60 + int(seconds)


def stamped(phone: Phone, job: str = JOB) -> list[tuple[datetime, str]]:
    """The turns as the server has them."""
    expect(phone.page.locator(".unsent")).to_have_text("All sent")
    said = [json.loads(text) for text in phone.yard.desk.entries(job)]
    turns = [entry["body"] for entry in said if entry["kind"] == "key_turn"]
    return [(datetime.fromisoformat(turn["t"]), turn["key"]) for turn in turns]


def reports_of(turns: list[tuple[datetime, str]], unit: str = UNIT, *, after_s: float = AFTER_S) -> str:
    """What a healthy unit reports of them: on 2 s and off 20 s late, a heartbeat every half minute."""
    edges: list[tuple[datetime, bool]] = []
    for t, key in turns:
        on = key in ("on", "crank", "running")
        if key != "doors_shut" and on != (bool(edges) and edges[-1][1]):
            edges.append((t + timedelta(seconds=ON_S if on else OFF_S), on))
    first, last = turns[0][0], turns[-1][0] + timedelta(seconds=after_s)
    rows = [(first - timedelta(seconds=600), "boot", False)]
    rows += [(t, "ignition_on" if on else "ignition_off", on) for t, on in edges]
    beat = first - timedelta(seconds=590)
    while beat <= last:
        rows.append(
            (
                beat,
                "heartbeat",
                any(t <= beat for t, on in edges if on) and not any(t <= beat for t, on in edges if not on),
            )
        )
        beat += timedelta(seconds=BEAT_S)
    return "\n".join([HEADER, *(row(unit, t, event=event, on=on) for t, event, on in sorted(rows))])


def row(unit: str, t: datetime, *, event: str, on: bool) -> str:
    """One report, arrived a second later."""
    arrived = (t + timedelta(seconds=1)).astimezone(UTC).isoformat()
    sent = t.astimezone(UTC).isoformat()
    return f"{unit},{sent},{arrived},-33.1,151.2,4,0,9,0.9,{13.9 if on else 12.4},{int(on)},{event}"


def push(phone: Phone, reports: str, job: str = JOB) -> None:
    """A collector hands them to the server."""
    server = phone.yard.desk.server
    with server.client(**{"X-CSRF-Token": server.running.local_csrf}) as desk:
        token = desk.post("/api/desk/feeds", json={"label": "collector"}).json()["token"]
    with server.client(Authorization=f"Bearer {token}") as collector:
        said = collector.post("/api/reports", content=reports.encode(), headers=CSV).raise_for_status().json()
    assert said["jobs"] == [job], said


def found_by(phone: Phone) -> dict[str, Any]:
    """What the engine in this Python finds of what the server has."""
    texts = phone.yard.desk.entries(JOB)
    named = {part for text in texts for part in text.split('"') if len(part) == 64}
    answers = {each: phone.yard.desk.client.get(f"/api/blobs/{each}") for each in named}
    return judged(texts, {each: answer.content for each, answer in answers.items() if answer.status_code == 200})


def test_eight_turns_and_the_lights(phone: Phone) -> None:
    """Nine touches and no character; every turn is matched by what was pushed, and the unit's words stand large."""
    counted = at_proof(phone)
    page = phone.page
    expect(page.get_by_text("Nothing heard yet")).to_be_visible()
    turn_the_key(page)
    page.get_by_role("button", name="All lights as they should be").click()
    expect(page.get_by_text("All turns done.")).to_be_visible()
    assert len(counted.touches) <= MOST_TOUCHES, counted.touches
    assert counted.characters == ""
    turns = stamped(phone)
    assert [key for _, key in turns] == PLAN
    push(phone, reports_of(turns))
    page.clock.fast_forward(11_000)
    expect(page.locator(".unit-now")).to_contain_text("12.4 V")
    expect(page.locator(".unit-now dd").first).to_have_text("off")
    expect(page.locator(".stamped .verdict").filter(has_text="reported")).to_have_count(2)
    must_be_reachable(phone)
    found = found_by(phone)
    assert {turn["state"] for turn in found["prove"]["turns"]} == {"matched"}
    lights = next(each for each in found["findings"] if each["id"] == "prove_lights")
    assert lights["verdict"] == "holds"
    open_ones = {each["id"] for each in found["findings"] if each["stage"] == "prove" and each["verdict"] != "holds"}
    assert open_ones == {"prove_parked"}, open_ones  # a night is still to come


def test_the_hold_counts_from_the_stamp(phone: Phone) -> None:
    """The page is closed for a minute and opened anew: a minute less is left, whatever ran meanwhile."""
    at_proof(phone)
    page = phone.page
    page.locator("button.key-turn").click()
    expect(page.locator("button.key-turn .when")).to_contain_text("Next in")
    before = held_s(page)
    page.goto(f"{phone.yard.url}#/")
    page.clock.fast_forward(60_000)
    page.goto(f"{phone.yard.url}#/job/{JOB}/prove")
    expect(page.locator("button.key-turn .when")).to_contain_text("Next in")
    assert before - held_s(page) >= 60


def test_a_failed_start_falls_back_to_on(phone: Phone) -> None:
    """One touch says so; the page then asks for the start again."""
    at_proof(phone)
    page = phone.page
    for done, doing in enumerate(DOING[:5]):
        expect(page.locator("button.key-turn")).to_contain_text(doing)
        page.locator("button.key-turn").click()
        expect(page.locator(".stamped li")).to_have_count(done + 1)
        page.clock.fast_forward(2_000)
    page.get_by_role("button", name="It did not start").click()
    expect(page.locator("button.key-turn")).to_contain_text("start the engine")
    must_be_reachable(phone)
    assert [key for _, key in stamped(phone)] == [*PLAN[:5], "on"]


def test_a_light_that_shows_something_else(phone: Phone) -> None:
    """Dark: said for one light alone, then put right; of two ways in which it was said the last stands."""
    at_proof(phone)
    page = phone.page
    page.locator("summary", has_text="Light by light").click()
    network = page.get_by_role("group", name="network")
    network.get_by_label("dark").click(force=True)
    expect(page.locator(".lights")).to_contain_text("seen: dark")
    network.get_by_label("as it should be").click(force=True)
    page.get_by_label("sky shows something else").fill("flickers")
    page.get_by_label("sky shows something else").blur()
    expect(page.locator(".lights")).to_contain_text("seen: flickers")
    expect(page.locator(".unsent")).to_have_text("All sent")
    lights = next(each for each in found_by(phone)["findings"] if each["id"] == "prove_lights")
    assert "flickers" in lights["because"]
    assert "dark" not in lights["because"]


def test_turns_are_stamped_with_no_line_and_taken_back(phone: Phone) -> None:
    """Off, on, off outside the plan and with no line: three moments in their order, and one of them taken back."""
    at_proof(phone)
    phone.offline()
    page = phone.page
    page.locator("summary", has_text="Something else happened").click()
    for done, turn in enumerate(("key off", "key on", "doors open")):
        page.locator(".turns").get_by_role("button", name=turn, exact=True).click()
        expect(page.locator(".stamped li")).to_have_count(done + 1)
        page.clock.fast_forward(2_000)
    must_be_reachable(phone)
    page.get_by_role("button", name="Put a turn right").click()
    page.locator(".stamped li").nth(1).get_by_role("button", name="Take back").click()
    expect(page.locator(".stamped li")).to_have_count(2)
    phone.online()
    turns = stamped(phone)
    assert [key for _, key in turns] == ["off", "on", "doors_open"]  # an entry that is withdrawn stays in the journal
    assert sorted(turns) == turns

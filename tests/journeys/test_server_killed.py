"""The server is killed while a phone hands in: what was shown as kept arrives once, what was answered is not lost."""

from __future__ import annotations

import hashlib
import json
import random
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import httpx
import pytest
from PIL import Image
from playwright.sync_api import Browser, expect
from tests.journeys.conftest import PHONE, Phone
from tests.journeys.crew import Lead, held_on, vin_of
from tests.journeys.own_server import OwnServer
from tests.journeys.test_probe import volts_of
from tests.journeys.watched_line import WatchedLine

from backprobe.job.journal import read_journal

JOB = "LY-2026-31"
SIDE = 2_048
PIECE_BYTES = 1_048_576  # what the phone sends at a time
PHOTO = """
async () => {
  const asked = indexedDB.open("backprobe");
  const base = await new Promise(done => asked.onsuccess = () => done(asked.result));
  const all = store => new Promise(done => {
    const got = base.transaction(store).objectStore(store).getAll();
    got.onsuccess = () => done(got.result);
  });
  const photo = (await all("blobs")).find(each => each.type === "image/jpeg");
  const got = base.transaction("settings").objectStore("settings").get("enrolment");
  const enrolment = await new Promise(done => got.onsuccess = () => done(got.result));
  base.close();
  return {sha256: photo.sha256, bytes: photo.bytes.byteLength, token: enrolment.token};
}
"""


@dataclass
class Gate:
    """What a phone needs of a yard whose server is a process of its own: the line, and a code to enrol with."""

    line: WatchedLine
    lead: Lead
    person: str

    @property
    def url(self) -> str:
        """Where phones find it."""
        return f"{self.line.url}/"

    def enrolment(self) -> str:
        """What the desk's QR holds."""
        return f"{self.url}#enrol={self.lead.said('phones', {'person': self.person})['code']}"


@pytest.fixture
def server(built: Path, tmp_path: Path) -> Iterator[OwnServer]:
    """The real server on an empty folder."""
    own = OwnServer(tmp_path / "data", built)
    own.start()
    yield own
    own.kill()


@pytest.fixture
def gate(server: OwnServer) -> Iterator[Gate]:
    """A yard with one job, Ines's."""
    with httpx.Client(base_url=server.url) as client:
        lead = Lead(client)
        person = lead.said("people", {"name": "Ines Okafor", "language": "en", "units": "metric"})["id"]
        lead.give(JOB, "LY 31", vin=vin_of("200431"), people=[person])
        line = WatchedLine(server.url)
        yield Gate(line, lead, person)
        line.close()


@pytest.fixture
def grain(tmp_path: Path) -> Path:
    """A photo that does not get small: 2,048 pixels a side, in which nothing repeats."""
    picture = Image.frombytes("RGB", (SIDE, SIDE), random.Random(SIDE).randbytes(3 * SIDE * SIDE))
    picture.save(tmp_path / "grain.jpg", quality=95)
    return tmp_path / "grain.jpg"


def strike(phone: Phone, server: OwnServer, line: WatchedLine) -> None:
    """The line comes back, the server is killed in the midst of it, and is started again behind a cut line."""
    phone.online()
    phone.page.evaluate("dispatchEvent(new Event('online'))")
    for _ in range(150):
        if line.struck:
            break
        phone.page.wait_for_timeout(100)
    assert line.struck, "the moment never came"
    phone.offline()
    server.start()


def test_a_server_killed_twice_gets_everything_once(
    browser: Browser, server: OwnServer, gate: Gate, grain: Path
) -> None:
    """Killed as it answers for the entries, then in the third piece of a photo; then it gets the rest."""
    context = browser.new_context(**PHONE)
    phone = Phone(context, gate)  # type: ignore[arg-type]
    page, line = phone.page, gate.line
    page.goto(gate.enrolment())
    page.locator("form button[type=submit]").click()
    expect(page.locator(".jobs li")).to_have_count(1)
    phone.offline()
    phone.to_wires("LY 31")
    phone.choose_meter()
    phone.add_wire("X12", "4", "RD")
    for key, volts in (("off", "12.62"), ("on", "12.40")):
        phone.measure("X12/4 RD", key, volts)
    page.goto(f"{gate.url}#/job/{JOB}/walkround")
    page.locator(".photos input").first.set_input_files(grain)
    expect(page.locator(".photos img")).to_have_count(1)
    queued = phone.unsent()
    assert queued == 1 + 1 + 1 + 2 + 1  # person, wire, meter, two readings, photo
    kept = [text for text in held_on(phone, JOB) if '"device":"phone-' in text]
    photo = page.evaluate(PHOTO)
    assert photo["bytes"] > 2.5 * PIECE_BYTES

    line.strike_at_answer(b"POST /api/entries", server.kill)
    strike(phone, server, line)
    assert phone.unsent() == queued  # it was not answered
    client = httpx.Client(base_url=server.url, headers={"Authorization": f"Bearer {photo['token']}"})
    assert set(kept) <= set(entries_of(client))  # the server had said so already, to nobody

    line.strike_within(b"PUT /api/blobs/" + photo["sha256"].encode(), server.kill, after_bytes=int(2.2 * PIECE_BYTES))
    strike(phone, server, line)
    expect(page.locator(".unsent")).to_have_attribute("data-unsent", "0")
    expect(page.locator(".unsent")).to_contain_text("not sent yet")
    stands = client.head(f"/api/blobs/{photo['sha256']}")
    assert (stands.status_code, int(stands.headers["Upload-Offset"])) == (404, 2 * PIECE_BYTES)

    out = line.out
    phone.online()
    page.evaluate("dispatchEvent(new Event('online'))")
    expect(page.locator(".unsent")).to_have_text("All sent")
    assert line.out - out < photo["bytes"] - PIECE_BYTES  # what was acknowledged is not sent again
    texts = entries_of(client)
    assert sorted(text for text in texts if '"device":"phone-' in text) == sorted(kept)
    assert len({json.loads(text)["id"] for text in texts}) == len(texts)
    assert volts_of(texts) == [("X12/4 RD", "off", "12.62"), ("X12/4 RD", "on", "12.40")]
    assert read_journal(text.encode() for text in texts).faults == ()
    whole = client.get(f"/api/blobs/{photo['sha256']}").raise_for_status().content
    assert (hashlib.sha256(whole).hexdigest(), len(whole)) == (photo["sha256"], photo["bytes"])
    client.close()
    context.close()
    assert phone.faults == []


def entries_of(client: httpx.Client) -> list[str]:
    """The job's entries as the server has them."""
    page = client.get("/api/entries", params={"job": JOB, "after": 0}).raise_for_status().json()
    assert not page["more"]
    return [entry["text"] for entry in page["entries"]]

"""The engine's door for a journal says of its entries what a terminal says of the folder they came from."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from tests.samples import corners
from tests.samples.jobs import demo_job

from backprobe.cases.import_folder import import_folder
from backprobe.cases.judge import judge_folder
from backprobe.job.answer import judgement_json
from backprobe.job.canonical import Body
from backprobe.job.entry import Entry
from backprobe.job.ids import timed_id
from backprobe.job.journal_door import judge_journal_text, margin_bars_text, pictures_text

PHONE = "phone-5f2c"
OWN = ("journal", "setup", "leads", "body_builder", "ends", "signed")  # what this door says beyond the judgement


class Held:
    """A journal as a phone holds it, with the texts of its files; what is said on the phone is added to it."""

    def __init__(self, folder: Path) -> None:
        journal = import_folder(folder).journal
        self.job = journal.entries[0].job
        self.entries = list(journal.entries)
        self.blobs = {path.name: path.read_text(errors="replace") for path in (folder / "blobs").iterdir()}
        self.said: list[Entry] = []

    def say(self, kind: str, body: Body) -> str:
        """Adds an entry of the phone; returns its id."""
        prev = self.said[-1].digest if self.said else None
        number = len(self.said) + 1
        entry = Entry(
            id=timed_id(1_760_000_000_000 + number, bytes(10)), job=self.job, kind=kind, device=PHONE, seq=number,
            prev=prev, engine="0.1.0", body=body,
        )  # fmt: skip
        self.said.append(entry)
        return entry.id

    def asked(self) -> str:
        """What the door is asked."""
        raws = [entry.raw.decode() for entry in (*self.entries, *self.said)]
        return json.dumps({"entries": raws, "blobs": self.blobs})

    def answer(self) -> dict[str, Any]:
        """What the door says."""
        return dict(json.loads(judge_journal_text(self.asked())))


def reading(wire: str, key: str, volts: str) -> Body:
    """The body of a reading that was typed on a phone."""
    amounts: Body = {"capture": "display", "after_min": None, "load_A": None, "file": None, "line": None}
    return {"wire": wire, "key": key, "volts": volts, **amounts}


@pytest.fixture
def held(tmp_path: Path) -> Held:
    """Truck 12's journal: its ignition wire is live in accessory."""
    return Held(demo_job(tmp_path, "truck-12"))


def plain(answer: dict[str, Any]) -> dict[str, Any]:
    """The judgement alone."""
    return {name: value for name, value in answer.items() if name not in OWN}


@pytest.mark.parametrize("truck", ["truck-07", "truck-12"])
def test_a_journal_is_judged_as_its_folder(tmp_path: Path, truck: str) -> None:
    """The same judgement for a folder and for the entries that its import wrote, its recordings among them."""
    folder = demo_job(tmp_path, truck)
    assert plain(Held(folder).answer()) == judgement_json(judge_folder(folder).judged)


def test_what_the_unit_reports_closes_a_reading_at_every_door(tmp_path: Path) -> None:
    """The supply was not read in accessory and after key-off: folder and journal say it by the unit's reports alike."""
    folder = demo_job(tmp_path, "truck-07")
    rows = (folder / "readings.csv").read_text(encoding="utf-8").splitlines(keepends=True)
    left = [row for row in rows if not row.startswith(("X12/4 RD,accessory", "X12/4 RD,after"))]
    assert len(left) == len(rows) - 2
    (folder / "readings.csv").write_text("".join(left), encoding="utf-8")
    said = plain(Held(folder).answer())
    assert said == judgement_json(judge_folder(folder).judged)
    after = next(finding for finding in said["findings"] if finding["id"] == "supply_after")
    assert (after["verdict"], "by the unit's reports" in after["because"]) == ("holds", True)
    assert said["choice"]["supply"] == "X12/4 RD"


def test_who_has_no_lamp_is_not_asked_for_one(tmp_path: Path) -> None:
    """A supply read at off alone is asked for under a lamp next, but not where the journal says there is none."""
    held = Held(demo_job(tmp_path, "truck-07"))
    off = {"wire": "X12/4 RD", "key": "off"}
    held.entries = [
        entry
        for entry in held.entries
        if entry.kind not in ("reading", "recording") or {**entry.body, **off} == entry.body
    ]
    assert held.answer()["next_reading"]["loaded"] is True
    held.say("claim", {"slot": "lamp", "value": "none"})
    assert "loaded" not in held.answer()["next_reading"]


def test_a_reading_of_a_phone_counts(held: Held) -> None:
    """What the phone adds is judged with the rest: a wire of its own, dead in accessory and live at key on."""
    held.say("wire_declared", {"wire": "X12/7 WH", "file": None, "order": None})
    for key, volts in (("off", "0.02"), ("accessory", "0.03"), ("on", "12.31")):
        held.say("reading", reading("X12/7 WH", key, volts))
    wires = {wire["wire"]: wire for wire in held.answer()["wires"]}
    assert wires["X12/7 WH"]["reasons"]
    assert held.answer()["journal"]["settled"]


def test_the_wire_that_is_claimed_is_the_one_that_is_judged(held: Held) -> None:
    """Truck 12's sheet means X12/6 GY for the ignition; the claim of another wire stands in its place."""
    held.say("claim", {"slot": "tap_ignition", "value": "X12/9 VT"})
    assert "Ignition wire: X12/9 VT" in {finding["what"] for finding in held.answer()["findings"]}


def test_two_claims_for_one_lead_leave_it_open(held: Held) -> None:
    """Two wires claimed for the ignition: neither is taken, and the journal says both."""
    held.say("claim", {"slot": "tap_ignition", "value": "X12/9 VT"})
    held.say("claim", {"slot": "tap_ignition", "value": "X12/6 GY"})
    said = held.answer()
    assert said["journal"] == {"open": ["tap_ignition: X12/6 GY or X12/9 VT"], "settled": False}


def test_the_meter_that_is_claimed_counts(held: Held) -> None:
    """A class of meter chosen on the phone stands in place of the sheet's; an unknown one changes nothing."""
    assert held.answer()["setup"]["meter"] == "basic"
    chosen = held.say("claim", {"slot": "meter", "value": "precise"})
    assert held.answer()["setup"]["meter"] == "precise"
    odd: Body = {"replaces": chosen, "kind": "claim", "body": {"slot": "meter", "value": "a good one"}}
    held.say("correction", odd)
    assert held.answer()["setup"]["meter"] == "basic"


def test_the_positions_are_those_of_the_vehicle(held: Held) -> None:
    """A truck with a crank has no charger; without a battery switch nothing is asked with it open."""
    before = held.answer()["setup"]["keys"]
    assert before == ["off", "accessory", "on", "crank", "running", "after"]


def test_a_position_that_does_not_exist_is_left_out(tmp_path: Path) -> None:
    """Declared absent, where nothing was read there: the key has no such position."""
    held = Held(demo_job(tmp_path, "truck-12"))
    held.entries = [entry for entry in held.entries if entry.body.get("key") != "accessory"]
    held.say("absent_key", {"key": "accessory", "file": None})
    assert "accessory" not in held.answer()["setup"]["keys"]


def test_bars_stand_where_a_limit_does(held: Held) -> None:
    """One SVG for each finding that has a limit, under its place in the list of findings."""
    bars = json.loads(margin_bars_text(held.asked()))["bars"]
    findings = held.answer()["findings"]
    assert list(bars) == sorted((str(at) for at, each in enumerate(findings) if each["limit"]))
    assert all(svg.startswith("<svg") for svg in bars.values())


def test_pictures_are_those_of_the_job(tmp_path: Path) -> None:
    """Truck 7 has joints and a recorded crank: both are drawn, each with a caption and in words."""
    pictures = json.loads(pictures_text(Held(demo_job(tmp_path, "truck-07")).asked()))["pictures"]
    assert {"wiring", "crank"} <= set(pictures)
    assert all(drawn["svg"].startswith("<svg") and drawn["caption"] and drawn["alt"] for drawn in pictures.values())


@pytest.mark.parametrize(
    ("asked", "message"),
    [
        ("[]", "the journal is no JSON object"),
        ("{", "the journal is no JSON: "),
        ('{"entries": [1]}', "entries: a list of texts is expected"),
        ('{"entries": [], "blobs": []}', "the journal names no file of the kind 'job'"),
        ('{"entries": [], "blobs": {"a": 1}}', "blobs: an object of names and texts is expected"),
        ('{"entries": ["{}"]}', "not an entry of any version"),
    ],
)
def test_what_is_no_journal_is_refused(asked: str, message: str) -> None:
    """In words, by each function, as JSON."""
    for door in (judge_journal_text, margin_bars_text, pictures_text):
        said = json.loads(door(asked))
        assert said["ok"] is False
        assert said["error"].startswith(message)


def test_a_sheet_that_has_not_arrived_is_named(held: Held) -> None:
    """An entry may arrive before its file: then the door says which is missing."""
    sheet = next(entry for entry in held.entries if entry.kind == "job")
    del held.blobs[str(sheet.body["sha256"])]
    assert held.answer()["error"] == "job.toml is not on this device yet"


def test_corners_beside_the_journal(tmp_path: Path) -> None:
    """An index on the phone puts the unit's own position into words; it is no part of the journal."""
    held = Held(demo_job(tmp_path, "truck-07"))
    asked = {**json.loads(held.asked()), "corners.txt": corners.TEXT}
    found = json.loads(judge_journal_text(json.dumps(asked)))
    (position,) = [each for each in found["findings"] if each["id"] == "prove_position"]
    assert position["because"].endswith(corners.SAID)
    assert found["journal"] == held.answer()["journal"]
    refused = json.loads(judge_journal_text(json.dumps({**asked, "corners.txt": 1})))
    assert refused["error"] == "corners.txt: a text is expected"


def test_a_circuit_that_was_named_at_the_probe_counts_at_the_joints(tmp_path: Path) -> None:
    """The job sheet says nothing of what its wires feed, the journal does: nobody is asked why they were spliced."""
    folder = demo_job(tmp_path, "truck-07")
    sheet = folder / "job.toml"
    lines = sheet.read_text(encoding="utf-8").splitlines(keepends=True)
    sheet.write_text("".join(line for line in lines if not line.startswith("circuit = ")), encoding="utf-8")
    held = Held(folder)
    before = {finding["id"]: finding for finding in held.answer()["findings"]}
    assert "why 'power' is neither" in before["join_order_told"]["because"]
    for wire, feed in (("X12/4 RD", "permanent supply, fuse F12"), ("X12/9 VT", "ignition feed, fuse F31")):
        known = {"wire": wire, "circuit": f"body-builder connector X12, {feed}", "marks": None}
        held.say("circuit", {**known, "file": None, "order": None})
    after = {finding["id"]: finding for finding in held.answer()["findings"]}
    assert "join_order_told" not in after
    assert [after[f"join_{lead}_order"]["verdict"] for lead in ("supply", "ignition")] == ["holds", "holds"]

"""Entries by invented phones, chained by hand, and histories of several phones that record, correct and withdraw."""

from __future__ import annotations

import hashlib
from uuid import UUID

from hypothesis import strategies as st

from backprobe.job.canonical import Body
from backprobe.job.entry import Entry

JOB = "job-7"
KEYS = ("off", "on", "crank", "after")


class Phone:
    """A device that says one thing after the other; `ids` sets the range its ids are counted from."""

    def __init__(self, device: str = "phone-a", *, ids: int = 0, job: str = JOB) -> None:
        self.device = device
        self.job = job
        self.ids = ids
        self.entries: list[Entry] = []

    def say(self, kind: str, body: Body, *, blobs: tuple[str, ...] = ()) -> Entry:
        """The next entry of this phone."""
        last = self.entries[-1] if self.entries else None
        entry = Entry(
            id=uuid7(self.ids + len(self.entries)),
            job=self.job,
            kind=kind,
            at="2026-05-04T09:30:00Z",
            device=self.device,
            seq=len(self.entries) + 1,
            prev=hashlib.sha256(last.raw).hexdigest() if last else None,
            engine="0.1.0",
            body=body,
            blobs=blobs,
        )
        self.entries.append(entry)
        return entry

    def reads(self, wire: str, key: str, volts: str) -> Entry:
        """A reading off the display."""
        return self.say("reading", reading(wire, key, volts))

    def corrects(self, volts: str, *replaced: Entry) -> Entry:
        """A reading of Red at on in place of others."""
        ids = [entry.id for entry in replaced]
        body = reading("Red", "on", volts)
        return self.say("correction", {"replaces": ids[0] if len(ids) == 1 else ids, "kind": "reading", "body": body})

    def withdraws(self, entry: Entry) -> Entry:
        """Takes an entry back."""
        return self.say("withdrawn", {"entry": entry.id, "why": "wrong truck"})

    def claims(self, slot: str, value: str) -> Entry:
        """A value for a place that holds one."""
        return self.say("claim", {"slot": slot, "value": value})


def reading(wire: str, key: str, volts: str) -> Body:
    """The body of a reading off the display."""
    return {"wire": wire, "key": key, "volts": volts, "capture": "display"}


def uuid7(count: int) -> str:
    """An id of version 7 (RFC 9562) that is `count` and nothing else."""
    return str(UUID(int=(count << 80) | (0x7 << 76) | (0b10 << 62)))


@st.composite
def histories(draw: st.DrawFn) -> list[Entry]:
    """What up to three phones said, in the order they said it, each free to correct or withdraw what any had said."""
    phones = [Phone(f"phone-{name}", ids=1000 * at) for at, name in enumerate("abc")]
    said: list[Entry] = []
    for _ in range(draw(st.integers(0, 12))):
        phone = draw(st.sampled_from(phones))
        what = draw(st.sampled_from(("reads", "corrects", "withdraws", "claims", "decides", "moves", "unknown")))
        volts = draw(st.sampled_from(("12.30", "12.3", "0.02")))
        if what == "reads" or not said:
            said.append(phone.reads(draw(st.sampled_from(("Red", "Blue"))), draw(st.sampled_from(KEYS)), volts))
        elif what == "corrects":
            said.append(phone.corrects(volts, draw(st.sampled_from(said))))
        elif what == "decides":
            said.append(phone.corrects(volts, *draw(st.lists(st.sampled_from(said), min_size=1, max_size=3))))
        elif what == "withdraws":
            said.append(phone.withdraws(draw(st.sampled_from(said))))
        elif what == "claims":
            said.append(phone.claims("serial", draw(st.sampled_from(("U-1", "U-2")))))
        elif what == "moves":
            moved = [[draw(st.sampled_from(said)).id, draw(st.integers(0, 9))]]
            said.append(phone.say("rows_moved", {"file": "readings.csv", "moved": moved}))
        else:
            said.append(phone.say("smell", {"of": "burnt varnish"}))
    return said


SHA = "a" * 64
# a good body of each kind
GOOD: dict[str, Body] = {
    "job": {"file": "job.toml", "sha256": SHA, "bytes": 12, "vin": None},
    "unit_sheet": {"file": "unit.toml", "sha256": SHA, "bytes": 12},
    "meter_sheet": {"file": "meter.toml", "sha256": SHA, "bytes": 12},
    "walkround": {"file": "walkround.toml", "sha256": SHA, "bytes": 12},
    "mount": {"file": "mount.toml", "sha256": SHA, "bytes": 12},
    "policy": {"file": "policy.toml", "sha256": SHA, "bytes": 12},
    "readings_file": {"file": "readings.csv", "sha256": SHA, "bytes": 0},
    "script_file": {"file": "key-script.csv", "sha256": SHA, "bytes": 12},
    "lights_file": {"file": "lights.csv", "sha256": SHA, "bytes": 12},
    "reports": {"file": "reports.csv", "sha256": SHA, "bytes": 12, "stored": True},
    "key_turn": {"file": "key-script.csv", "line": 2, "t": "2026-03-31T08:00:00Z", "key": "on"},
    "light_seen": {"light": "network", "pattern": "one flash a second", "after_s": "41"},
    "reception": {"file": "reception.nmea", "sha256": SHA, "bytes": 12, "stored": True, "figures": {"epochs": 9}},
    "recording": {"file": "recordings/crank.csv", "sha256": SHA, "bytes": 12, "stored": False},
    "photo": {"file": "photos/a.jpg", "sha256": SHA, "bytes": 12, "stored": True, "shows": "ground"},
    "person": {"sha256": SHA},
    "claim": {"slot": "serial", "value": "U-1"},
    "bus_log": {"file": "bus/start.log", "sha256": SHA, "bytes": 12, "stored": True, "heard": {"v": 1, "frames": 9}},
    "unit_claimed": {"serial": "U-1", "vehicle": None},
    "unit_refused": {"serial": "U-1", "held_by": "job-8", "vehicle": "5ZLDR7HV5KR200417"},
    "reading": reading("Red", "on", "12.30"),
    "wire_declared": {"wire": "Red", "order": 0},
    "circuit": {"wire": "Red", "circuit": "F14"},
    "absent_key": {"key": "accessory"},
    "unread": {"wire": "Red", "key": "on"},
    "skipped_line": {"file": "readings.csv", "line": 3, "text": "red,onn", "expected": "a key position"},
    "correction": {"replaces": "some-id", "kind": "reading", "body": {}},
    "withdrawn": {"entry": ["some-id", "another-id"]},
    "erased": {"blobs": [SHA]},
    "rows_moved": {"file": "readings.csv", "moved": [["some-id", 4]]},
    "sign_off": {
        "end": "proven",
        "verdict": "holds",
        "heads": [["folder", 3, SHA]],
        "entries": 3,
        **dict.fromkeys(("entries_sha256", "order_sha256", "findings_sha256", "hand_over_sha256"), SHA),
        **dict.fromkeys(("engine_sha256", "limits_sha256", "unit_sheet_sha256", "key", "fingerprint"), SHA),
        "signature": "b" * 128,
    },
}

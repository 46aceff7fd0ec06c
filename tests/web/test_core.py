"""What the phone writes is, byte for byte, what the journal in Python takes and would have written itself."""

from __future__ import annotations

import json
import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from backprobe.errors import JournalError
from backprobe.job.canonical import canonical
from backprobe.job.entry import MOST_BYTES, read_entry
from backprobe.job.ids import timed_id
from backprobe.job.journal import read_journal

HERE = Path(__file__).resolve().parent
CORE = HERE.parents[1] / "web" / "core"
CHAIN = {"job": "LY-2026-07", "device": "phone-5f2c", "engine": "0.1.0"}
START = {"seq": 0, "digest": None}

Call = Callable[..., Any]


@pytest.fixture(scope="session")
def phone(node: Path) -> Callable[[list[dict[str, Any]]], list[dict[str, Any]]]:
    """Runs calls of web/core in Node; each answer is {value} or {fault}."""

    def run(calls: list[dict[str, Any]]) -> list[dict[str, Any]]:
        command = [node, HERE / "core_run.mjs", CORE]
        done = subprocess.run(command, input=json.dumps(calls), capture_output=True, text=True, check=False)
        assert done.returncode == 0, done.stderr
        return list(json.loads(done.stdout))

    return run


def call(module: str, name: str, *args: object) -> dict[str, Any]:
    """One call of a function in a module of web/core."""
    return {"module": module, "name": name, "args": list(args)}


def draft(number: int, kind: str, body: object, blobs: list[str] | None = None) -> dict[str, Any]:
    """What an entry is to say."""
    entry_id = timed_id(1_760_000_000_000 + number, bytes([number % 256]) * 10)
    return {"id": entry_id, "kind": kind, "body": body, "blobs": blobs or [], "at": "2026-03-31T09:30:00Z", "by": None}


WORDS = st.text(st.characters(exclude_categories=["Cs"]), max_size=30)
KEYS = st.from_regex(r"[A-Za-z][A-Za-z0-9_]{0,12}", fullmatch=True)
VALUES = st.recursive(
    st.none() | st.booleans() | st.integers(-(2**53) + 1, 2**53 - 1) | WORDS,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(KEYS, inner, max_size=4),
    max_leaves=12,
)
BODIES = st.dictionaries(KEYS, VALUES, max_size=6)


def test_values_are_written_as_python_writes_them(phone: Call) -> None:
    """Two hundred invented bodies, with every sort of character: the same text from both."""
    bodies: list[object] = []

    @settings(max_examples=200, database=None, derandomize=True)
    @given(BODIES)
    def collect(body: object) -> None:
        try:
            canonical(body)
        except JournalError:
            return  # deeper than entries may be
        bodies.append(body)

    collect()
    answers = phone([call("canonical.ts", "canonical", body) for body in bodies])
    assert len(bodies) > 100
    assert [answer["value"] for answer in answers] == [canonical(body).decode() for body in bodies]


@pytest.mark.parametrize(
    ("value", "message"),
    [
        ({"volts": 12.3}, "entry.volts: 12.3 is no whole number; figures are text as typed"),
        ({"n": 2**53}, f"entry.n: {2**53} is no whole number; figures are text as typed"),
        ({"10": "a"}, "entry: the key 10 is not made of ASCII letters, digits and _"),
        ({"__proto__": "a"}, "entry: the key __proto__ is not made of ASCII letters, digits and _"),
        ({"a": ["\ud800"]}, "entry.a[0]: holds half a character; UTF-8 has no such"),
        ([[[[[[[[[["deep"]]]]]]]]]], "nested deeper than 8 levels"),
    ],
)
def test_what_python_refuses_is_not_written(phone: Call, value: object, message: str) -> None:
    """The same refusals on both sides, with the place."""
    with pytest.raises(JournalError):
        canonical(value)
    assert phone([call("canonical.ts", "canonical", value)])[0]["fault"].endswith(message)


def test_ids_are_those_of_rfc_9562(phone: Call) -> None:
    """The example of RFC 9562, appendix A.6, and 2**48 - 1 milliseconds: as backprobe/job/ids.py makes them."""
    samples = [(0x017F22E279B0, "0cc318c4dc0c0c07398f"), (0, "ff" * 10), (2**48 - 1, "00" * 10)]
    answers = phone([call("ids.ts", "timedId", time_ms, {"hex": random}) for time_ms, random in samples])
    made = [answer["value"] for answer in answers]
    assert made == [timed_id(time_ms, bytes.fromhex(random)) for time_ms, random in samples]
    assert made[0] == "017f22e2-79b0-7cc3-98c4-dc0c0c07398f"


def test_entries_of_a_phone_make_a_sound_journal(phone: Call) -> None:
    """A wire, a figure and its withdrawal, written in two goes: read back with no fault, byte for byte."""
    reading = {"wire": "X12/4 RD", "key": "on", "volts": "12.30", "capture": "display", "after_min": None}
    first = [
        draft(1, "wire_declared", {"wire": "X12/4 RD", "cavity": "4", "colour": "röt ☐"}),
        draft(2, "reading", {**reading, "load_A": None, "file": None, "line": None}, ["a" * 64]),
    ]
    begun = phone([call("entry.ts", "continued", first, CHAIN, START)])[0]["value"]
    then = [draft(3, "withdrawn", {"entry": [first[1]["id"]], "why": None})]
    ended = phone([call("entry.ts", "continued", then, CHAIN, begun["tip"])])[0]["value"]
    raws = [written["raw"].encode() for written in (*begun["written"], *ended["written"])]
    journal = read_journal(raws)
    assert journal.faults == ()
    assert [entry.raw for entry in journal.entries] == raws
    assert [entry.seq for entry in journal.entries] == [1, 2, 3]
    assert journal.heads["phone-5f2c"].digest == ended["tip"]["digest"]


def test_an_entry_that_is_too_large_is_not_written(phone: Call) -> None:
    """At most 64,000 bytes in UTF-8: 'Ω' has two, so 31,800 of them fit and 32,000 do not."""
    fits, does_not = (draft(1, "claim", {"slot": "a", "value": "Ω" * letters}) for letters in (31_800, 32_000))
    answers = phone([call("entry.ts", "continued", [one], CHAIN, START) for one in (fits, does_not)])
    assert len(read_entry(answers[0]["value"]["written"][0]["raw"].encode()).raw) <= MOST_BYTES
    assert answers[1]["fault"].endswith("is too large: at most 64000")


def test_batches_are_no_larger_than_the_server_takes(phone: Call) -> None:
    """At most 500 entries and 4 MB together, one of any size by itself, none where none waits."""
    small = [{"raw": "x" * 100}] * 600
    large = [{"raw": "x" * 60_000}] * 50  # 180,000 bytes each at most: 22 are 3.96 MB, 23 are more than 4 MB
    answers = phone([call("batches.ts", "firstBatch", waiting) for waiting in (small, large, large[:1], [])])
    assert [len(answer["value"]) for answer in answers] == [500, 22, 1, 0]


def test_tries_become_rarer_but_never_end(phone: Call) -> None:
    """2 s, 4 s, 8 s … and at most two minutes."""
    waits = phone([call("batches.ts", "wait_ms", failures) for failures in (0, 1, 2, 5, 6, 100)])
    assert [answer["value"] for answer in waits] == [2_000, 4_000, 8_000, 64_000, 120_000, 120_000]


@pytest.mark.parametrize(
    ("shown", "key", "then"),
    [("", "1", "1"), ("1", "2", "12"), ("", ".", "0."), ("12", ".", "12."), ("12.", ".", None), ("0", "5", "5")],
)
def test_figures_grow_by_one_key(phone: Call, shown: str, key: str, then: str | None) -> None:
    """One point in a figure, no zeros before it, whatever is pressed."""
    assert phone([call("figures.ts", "typed", shown, key)])[0]["value"] == then


def test_figures_are_kept_as_typed(phone: Call) -> None:
    """'12.30' stays, a point at the end goes, a comma counts as a point, and nothing is no figure."""
    asked = ["12.30", "12.", "12,5", "", ".", "1e3"]
    answers = phone([call("figures.ts", "finished", shown) for shown in asked])
    assert [answer["value"] for answer in answers] == ["12.30", "12", "12.5", None, None, None]


def test_one_touch_gives_the_battery_as_last_seen(phone: Call) -> None:
    """To a tenth of a volt, by the last live figure with the engine as it is now; never in the crank."""
    rows = [("off", "12.62"), ("running", "14.02"), ("crank", "10.10"), ("on", "12.37"), ("off", "0.02")]
    readings = [{"key": key, "volts": volts} for key, volts in rows]
    asked = [("on", readings), ("running", readings), ("crank", readings), ("running", readings[:1]), ("off", [])]
    answers = phone([call("probe-table.ts", "batteryFigure", some, key, 12) for key, some in asked])
    assert [answer["value"] for answer in answers] == ["12.4", "14.0", None, None, None]


def test_one_touch_is_never_finer_than_what_was_typed(phone: Call) -> None:
    """A whole volt stays one; what was read under a lamp is not the battery's figure."""
    rows = [{"key": "off", "volts": "13"}, {"key": "off", "volts": "12.55", "load": "1.5"}]
    assert phone([call("probe-table.ts", "batteryFigure", rows, "on", 12)])[0]["value"] == "13"


@pytest.mark.parametrize(
    ("shown", "key", "most", "then"),
    [
        ("12", "6", 18, "12.6"),
        ("12.6", "2", 18, "12.62"),
        ("1", "9", 18, "19"),  # a point may still be typed
        ("19", "0", 18, "1.90"),  # 19 V is above what a 12 V system has for long
        ("10", "8", 18, "10.8"),
        ("97", "5", 18, "9.75"),
        ("2", "5", 36, "25"),
        ("25", "4", 36, "25.4"),
        ("1", "2", 18, "12"),
        ("108", ".", 18, "108."),  # a point that is typed stays where it was typed
    ],
)
def test_the_point_stands_by_itself_where_only_one_place_is_possible(
    phone: Call, shown: str, key: str, most: int, then: str
) -> None:
    """ISO 16750-2 long-term overvoltage, as the engine's limit has it: 18 V in a 12 V system, 36 V in a 24 V one."""
    assert phone([call("figures.ts", "typed", shown, key, most)])[0]["value"] == then


def test_likely_figures_are_tenths_around_the_battery(phone: Call) -> None:
    """Around the last live figure with the engine as it is, without that one; hundredths beneath it under a lamp."""
    rows = [("Red", "off", "12.62", ""), ("Blue", "off", "0.02", ""), ("Red", "running", "14.02", "")]
    readings = [{"wire": w, "key": k, "volts": v, "load": load, "capture": "display"} for w, k, v, load in rows]
    asked = [
        (readings, {"wire": "Blue", "key": "on", "load": ""}, 12),
        (readings, {"wire": "Blue", "key": "running", "load": ""}, 12),
        (readings[:1], {"wire": "Red", "key": "running", "load": ""}, 12),
        (readings[:1], {"wire": "Red", "key": "off", "load": "1.5"}, 12),
        (readings[:1], {"wire": "Red", "key": "crank", "load": ""}, 12),
        ([], {"wire": "Red", "key": "off", "load": ""}, 12),
        ([], {"wire": "Red", "key": "running", "load": ""}, 24),
    ]
    found = [one["value"] for one in phone([call("likely-figures.ts", "likelyFigures", *each) for each in asked])]
    assert found[0] == ["12.8", "12.7", "12.5", "12.4", "12.3", "12.2", "12.1", "12.0", "11.9", "11.8"]
    assert found[1] == ["14.4", "14.3", "14.2", "14.1", "13.9", "13.8", "13.7", "13.6", "13.5", "13.4"]
    assert (found[2][0], found[2][-1]) == ("14.5", "13.6")
    assert (found[3][0], found[3][-1], len(found[3])) == ("12.62", "12.53", 10)
    assert found[4:6] == [[], []]
    assert (found[6][0], found[6][-1]) == ("28.5", "27.6")


LEADS_SHEET = """
[[wire]]
name = "X12/9 VT"
lead = "ignition"
connector = "X12"
cavity = "9"
colour = "VT"
[[wire]]
name = "X12/4 RD"
lead = "supply"
connector = "X12"
cavity = "4"
circuit = "permanent supply, fuse F12"
[[wire]]
name = "X12/6 GY"
"""


def test_a_sheet_names_the_wires_of_the_leads(phone: Call) -> None:
    """Supply first, each with what the sheet says of its place; a wire without a lead is none of them."""
    (found,) = [one["value"] for one in phone([call("lead-wires.ts", "leadWiresIn", LEADS_SHEET)])]
    assert [(one["lead"], one["name"], one["cavity"], one["colour"]) for one in found] == [
        ("supply", "X12/4 RD", "4", ""),
        ("ignition", "X12/9 VT", "9", "VT"),
    ]
    assert [one["circuit"] for one in found] == ["permanent supply, fuse F12", ""]


def test_what_stands_is_what_nobody_has_replaced(phone: Call) -> None:
    """A figure put right stands as the new one, one taken back not at all, one put right twice is disputed."""
    raws = []
    for entry_id, kind, body in [
        ("a", "reading", {"volts": "1"}),
        ("b", "correction", {"replaces": "a", "kind": "reading", "body": {"volts": "2"}}),
        ("c", "reading", {"volts": "3"}),
        ("d", "withdrawn", {"entry": ["c"]}),
        ("e", "reading", {"volts": "5"}),
        ("f", "correction", {"replaces": ["e"], "kind": "reading", "body": {"volts": "6"}}),
        ("g", "correction", {"replaces": "e", "kind": "reading", "body": {"volts": "7"}}),
    ]:
        raws.append(json.dumps({"id": entry_id, "kind": kind, "body": body, "at": None, "device": "p"}))
    said = phone([call("standing.ts", "standing", raws)])[0]["value"]
    assert [(one["id"], one["body"]["volts"], one["disputed"]) for one in said] == [
        ("b", "2", False),
        ("f", "6", True),
        ("g", "7", True),
    ]

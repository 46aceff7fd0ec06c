"""A record of an invented job, for the tests of the paper."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Callable, Iterator
from typing import Any

import pikepdf
import pytest

from backprobe.drawings.trace import KeySpan, LimitLine, Trace, Waveform
from backprobe.drawings.waveform import described_waveform, waveform
from backprobe.findings import Finding, Limit, Side, Stage, Standing, Verdict, judge
from backprobe.paper.content import ChoiceRow, IdentityRow, Picture, RecordContent

JOURNAL = b'{"body":{"volts":"12.30","wire":"red 2.5"},"seq":1,"v":1}\n'
LEAST = Limit("crank", 9.0, "V", Side.AT_LEAST, "lowest supply while the starter turns", Standing.COMMON_PRACTICE)


def a_finding(number: int) -> Finding:
    """One of many findings: 10.3 V against 9 V, with a range that holds for even numbers and is thin for odd ones."""
    low = 9.4 if number % 2 == 0 else 8.9
    return Finding(
        id=f"f{number}",
        stage=Stage.PROBE,
        what=f"red 2.5 while cranking, try {number}",
        verdict=judge(LEAST, 10.3, low=low, high=10.4),
        because="MIN hold over three cranks; the range allows for what a hold of 100 ms misses.",
        next=None if number % 2 == 0 else "Record the wire with a logging meter.",
        value=10.3,
        low=low,
        high=10.4,
        unit="V",
        limit=LEAST,
    )


def a_picture(name: str = "red 2.5") -> Picture:
    """A waveform of one wire."""
    points = tuple((index / 10, 12.4 - (2 if 30 < index < 40 else 0), 12.5) for index in range(100))
    content = Waveform(
        traces=(Trace(name, points),), limits=(LimitLine(9.0, "9 V supply"),), keys=(KeySpan(0, 10, "on"),)
    )
    return Picture(svg=waveform(content), caption="The crank", alt=described_waveform(content))


@pytest.fixture(scope="session")
def findings() -> Callable[[int], tuple[Finding, ...]]:
    """As many findings as asked for."""
    return lambda count: tuple(a_finding(number) for number in range(count))


@pytest.fixture(scope="session")
def a_waveform() -> Callable[..., Picture]:
    """A waveform of one wire of the given name."""
    return a_picture


@pytest.fixture(scope="session")
def record() -> Callable[..., RecordContent]:
    """Builds the content of a normal job's record; any part can be given otherwise."""

    def build(**changes: Any) -> RecordContent:
        journal = changes.pop("journal", JOURNAL)
        parts: dict[str, Any] = {
            "title": "Wire finding record",
            "verdict": Verdict.THIN,
            "sentence": "Red 2.5 is a supply that stays; yellow/black looks like a true ignition.",
            "next_step": "Record yellow/black with a logging meter.",
            "identity": (
                IdentityRow("Vehicle", "Harrow & Vale Linnet 18 t, fleet no. 17"),
                IdentityRow("Unit", "Tarn TX-5, serial 0042-7731"),
                IdentityRow("System", "12 V, diesel"),
                IdentityRow("Fitter", "M. Okonjo"),
            ),
            "choices": (
                ChoiceRow(lead="Supply", wire="red 2.5", place="X2, cavity 7", note="proven for 10 minutes"),
                ChoiceRow(lead="Ignition", wire=None, note="circuit not identified"),
            ),
            "findings": tuple(a_finding(number) for number in range(10)),
            "pictures": (a_picture(),),
            "notes": ("Tap only a circuit that is named, and follow the vehicle maker's instructions.",),
            "journal": journal,
            "journal_name": "journal.jsonl",
            "journal_digest": hashlib.sha256(journal).hexdigest(),
            "engine_version": "0.1.0",
            "made_at": "2026-03-04T11:20:00+02:00",
        }
        return RecordContent(**{**parts, **changes})

    return build


CODES = re.compile(rb"<([0-9a-fA-F]+)>")


def letters_of(font: pikepdf.Object) -> dict[int, str]:
    """What a font's two-byte codes stand for, from its ToUnicode map (bfchar and bfrange sections)."""
    found: dict[int, str] = {}
    table = font.ToUnicode.read_bytes()
    for kind, body in re.findall(rb"begin(bfchar|bfrange)(.*?)endbf", table, re.S):
        values = [bytes.fromhex(code.decode()) for code in CODES.findall(body)]
        size = 2 if kind == b"bfchar" else 3
        for entry in zip(*[iter(values)] * size, strict=True):
            first, last = int.from_bytes(entry[0]), int.from_bytes(entry[-2])
            text = entry[-1].decode("utf-16-be")
            for code in range(first, last + 1):
                found[code] = text[:-1] + chr(ord(text[-1]) + code - first)
    return found


def strings_in(stream: pikepdf.Object, resources: pikepdf.Object) -> Iterator[str]:
    """The texts that a content stream shows, with those of the pictures it places."""
    fonts = {name: letters_of(font) for name, font in resources.get("/Font", pikepdf.Dictionary()).items()}
    font: dict[int, str] = {}
    for operands, operator in pikepdf.parse_content_stream(stream):
        if str(operator) == "Tf":
            font = fonts[str(operands[0])]
        elif str(operator) in {"Tj", "TJ"}:
            parts = operands[0] if str(operator) == "TJ" else operands
            codes = b"".join(bytes(part) for part in parts if isinstance(part, pikepdf.String))
            yield "".join(font[int.from_bytes(codes[at : at + 2])] for at in range(0, len(codes), 2))
        elif str(operator) == "Do":
            placed = resources.XObject[operands[0]]
            if placed.Subtype == "/Form":
                yield from strings_in(placed, placed.get("/Resources", resources))


@pytest.fixture(scope="session")
def shown() -> Callable[[pikepdf.Page], str]:
    """From a page of a PDF everything that is printed on it, without any white space."""
    return lambda page: "".join("".join(strings_in(page.obj, page.Resources)).split())

"""What stands beside the findings: the wires chosen, wiring, readings, photos, how to undo it, the sign-off."""

from __future__ import annotations

from base64 import b64encode

from backprobe.drawings.svg import number
from backprobe.job.readings_grid import ReadingsGrid
from backprobe.paper.content import (
    ChoiceRow,
    JoinedRow,
    OwedRow,
    RecordContent,
    ReportedBlock,
    ShownPhoto,
    SignOffBlock,
)
from backprobe.paper.setter import Setter, spoken

# the rooms for photos on the page, side by side [mm]: up to three in one row, more by two and six to a page
ONE_ROW = (3, 56.0, 33.0)
BY_TWO = (2, 84.0, 58.0)
LEAST_PX_PER_MM = 2.0  # a small photo is not made larger than this: its points would show

LONG_NAME = 20  # letters: a column for longer names would take the figures' room
NO_UNDO = "not written down"
NOBODY, NO_DAY = "nobody is named", "no day is named"
NOTHING_TOLD = "Nothing was written down."


def sections(content: RecordContent, setter: Setter) -> dict[str, object]:
    """The plain values of those parts; None or empty where the job has none of it."""
    wiring, readings, sign_off = content.wiring, content.readings, content.sign_off
    said = content.reported
    return {
        "choices": [choice(row, setter) for row in content.choices],
        "wiring": None if wiring is None else setter.picture(wiring),
        "reported": None if said is None else reported(said, setter),
        "readings": None if readings is None else grid(readings, setter),
        "pictures": [setter.picture(shown) for shown in content.pictures],
        "photos": photos(content.photos, setter),
        "joined": [joined(row, setter) for row in content.joined],
        "owed": [owed(row, setter) for row in content.owed],
        "driver_told": driver_told(content.driver_told, setter),
        "sign_off": None if sign_off is None else signed(sign_off, setter),
    }


def choice(row: ChoiceRow, setter: Setter) -> dict[str, object]:
    """The wire chosen for a lead."""
    return {
        "lead": setter.words(row.lead),
        "wire": setter.words_or_none(row.wire),
        "place": setter.words_or_none(row.place),
        "note": setter.words_or_none(row.note),
    }


def reported(block: ReportedBlock, setter: Setter) -> dict[str, object]:
    """What the unit reported."""
    return {
        "picture": None if block.picture is None else setter.picture(block.picture),
        "findings": [setter.finding(finding) for finding in block.findings],
        "others": [setter.words(name) for name in block.others],
        "notes": [setter.words(note) for note in block.notes],
    }


def grid(readings: ReadingsGrid, setter: Setter) -> dict[str, object]:
    """The readings: the heads of the columns, and for each wire a list of figures in each column."""
    rows = [
        {"wire": setter.words(row.wire), "cells": [[setter.words(text) for text in cell] for cell in row.cells]}
        for row in readings.rows
    ]
    long_names = any(len(row.wire) > LONG_NAME for row in readings.rows)
    return {"keys": [setter.words(key) for key in readings.keys], "rows": rows, "long_names": long_names}


def photos(shown: tuple[ShownPhoto, ...], setter: Setter) -> dict[str, object]:
    """The photos, and the room that each of them gets."""
    side_by_side, width_mm, height_mm = room = ONE_ROW if len(shown) <= ONE_ROW[0] else BY_TWO
    return {
        "columns": side_by_side,
        "width_mm": width_mm,
        "height_mm": height_mm,
        "shown": [photo(each, setter, room_mm=room[1:]) for each in shown],
    }


def photo(shown: ShownPhoto, setter: Setter, *, room_mm: tuple[float, float]) -> dict[str, object]:
    """A photo as a picture of its own size, with its caption and its words."""
    width_mm, height_mm = photo_size_mm((shown.width_px, shown.height_px), room_mm)
    return {
        "svg": framed(shown),
        "width_mm": width_mm,
        "height_mm": height_mm,
        "shows": setter.words(shown.shows),
        "note": setter.words_or_none(shown.note),
        "source": setter.words(shown.source),
        "alt": spoken(shown.alt),
    }


def photo_size_mm(size_px: tuple[int, int], room_mm: tuple[float, float]) -> tuple[float, float]:
    """How large a photo stands on the page: within its room, in its own proportions, not blown up.

    >>> photo_size_mm((720, 540), (84, 58)), photo_size_mm((20, 10), (84, 58))
    ((77.33, 58.0), (10.0, 5.0))
    """
    scale = min(*(room / px for room, px in zip(room_mm, size_px, strict=True)), 1.0 / LEAST_PX_PER_MM)
    return round(size_px[0] * scale, 2), round(size_px[1] * scale, 2)


def framed(shown: ShownPhoto) -> str:
    """The photo's JPEG inside an SVG: the form in which all pictures reach the page."""
    size = f'width="{number(shown.width_px)}" height="{number(shown.height_px)}"'
    data = b64encode(shown.jpeg).decode("ascii")
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" {size} '
        f'viewBox="0 0 {number(shown.width_px)} {number(shown.height_px)}">'
        f'<image {size} preserveAspectRatio="none" xlink:href="data:image/jpeg;base64,{data}"/></svg>'
    )


def joined(row: JoinedRow, setter: Setter) -> dict[str, object]:
    """What became of a lead, and how it is undone."""
    return {
        "lead": setter.words(row.lead),
        "joined": setter.words(row.joined),
        "undo": setter.words(row.undo or NO_UNDO),
    }


def owed(row: OwedRow, setter: Setter) -> dict[str, object]:
    """What is still missing, and who owes it until when."""
    return {
        "what": setter.words(row.what),
        "owed_by": setter.words(row.owed_by or NOBODY),
        "until": setter.words(row.until or NO_DAY),
    }


def driver_told(told: tuple[str, ...] | None, setter: Setter) -> list[object] | None:
    """What the driver was told, a line each; of a job that was handed over it is also said that nothing is known."""
    return None if told is None else [setter.words(line) for line in told or (NOTHING_TOLD,)]


def signed(block: SignOffBlock, setter: Setter) -> dict[str, object]:
    """The sign-off."""
    return {
        "end": setter.words(block.end),
        "lines": [setter.words(line) for line in block.lines],
        "signed": setter.words(block.signed),
        "key": setter.words(block.key),
    }

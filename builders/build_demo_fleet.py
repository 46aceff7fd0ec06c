"""Make what the demo's other trucks hold beside what was typed: recordings, reports, photos, all out of formulas.

Truck 15 has 24 V, and its ignition wire ends just above its limit in the crank; truck 18's unit was heard for an
afternoon, not for a night; truck 23 was put back as it was. Run ``python builders/build_demo_fleet.py``; ``--check``
only says whether the files in demo/ are those it makes.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent))

from PIL import Image

from build_demo import Start
from build_demo import text as recording_text
from build_demo_photos import (
    BLACK,
    MOST_BYTES,
    RED,
    STEEL,
    Plates,
    as_jpeg,
    at,
    box,
    cable,
    font,
    ground_point,
    photographed,
    serial_and_vin,
    sheet,
    shows_the_same,
)
from build_demo_reports import Fitted, clock, reports_text, script_text

YARD = Path(__file__).resolve().parents[1] / "demo" / "linden-yard"
DAY = 24  # hours; the reports' clock begins on 31 March

STARTS = {
    "truck-15": Start(
        wires=("X40/1 RD", "X40/3 WH", "X40/5 BNGN"),
        rest_V=25.24,
        on_V=24.86,
        plateau_V=20.92,
        ripple_V=0.38,
        trough_V=1.02,
        charging_V=28.12,
        ripple_Hz=8.0,
    ),
    "truck-18": Start(
        wires=("F14", "F22", "F17"),
        rest_V=12.85,
        on_V=12.66,
        plateau_V=11.52,
        ripple_V=0.26,
        trough_V=0.62,
        charging_V=14.31,
        ripple_Hz=7.0,  # a four-cylinder turned at 210 /min
    ),
}
TRUE_IGNITION = frozenset({"on", "crank", "running"})
FIFTEEN = Fitted(
    folder="truck-15",
    unit="LN2-00431",
    powered=clock(10 - DAY, 12, seconds=30),
    first_fix=63.0,
    until=clock(6, 20),
    turns=(
        (clock(10 - DAY, 41), "off"),
        (clock(10 - DAY, 43, seconds=28), "accessory"),
        (clock(10 - DAY, 46, seconds=40), "off"),
        (clock(10 - DAY, 49, seconds=17), "on"),
        (clock(10 - DAY, 53, seconds=2), "crank"),
        (clock(10 - DAY, 53, seconds=5), "running"),
        (clock(10 - DAY, 56, seconds=44), "off"),
        (clock(10 - DAY, 59, seconds=31), "doors_shut"),
    ),
    live=TRUE_IGNITION,
    restarts=(),
    place=(-33.10046, 151.20059),
    accuracy_m=5.0,
    sagging_V=0.0,
    batteries=2,
)
EIGHTEEN = Fitted(
    folder="truck-18",
    unit="TL5-10641",
    powered=clock(DAY + 13, 5, seconds=12),
    first_fix=58.0,
    until=clock(DAY + 14, 40),
    turns=(
        (clock(DAY + 13, 30), "off"),
        (clock(DAY + 13, 32, seconds=35), "accessory"),
        (clock(DAY + 13, 35, seconds=41), "off"),
        (clock(DAY + 13, 38, seconds=20), "on"),
        (clock(DAY + 13, 42, seconds=9), "crank"),
        (clock(DAY + 13, 42, seconds=11), "running"),
        (clock(DAY + 13, 45, seconds=50), "off"),
        (clock(DAY + 13, 48, seconds=33), "doors_shut"),
    ),
    live=TRUE_IGNITION,
    restarts=(),
    place=(-33.10034, 151.20011),
    accuracy_m=4.5,
    sagging_V=0.0,
)
PLATES = {
    "truck-15": Plates(
        "CORRIE WORKS   TOR 26", "5ZNTR6LV7LW310215", "G.V.W. 26 000 kg     24 V", "LANTERN 2", "LN2-00431"
    ),
    "truck-18": Plates(
        "TERN & HOLLIS   PACKER 90", "5ZPPK9CL2MH411097", "G.V.W. 9 000 kg      12 V", "TALLOW 5", "TL5-10641"
    ),
}


def bare_butt() -> Image.Image:
    """Two ends in the barrel of a butt connector, before its sleeve was shrunk."""
    ground, pen = sheet((108, 116, 112), 4)
    cable(pen, [(0, 262), (196, 250)], colour=RED, width=44)
    cable(pen, [(444, 240), (640, 224)], colour=(196, 44, 40), width=30)
    pen.rounded_rectangle(box(190, 218, 450, 274), 10, fill=(206, 184, 136), outline=(120, 104, 72), width=4)
    for x in (238, 268, 372, 402):
        pen.rounded_rectangle(box(x, 222, x + 14, 270), 6, fill=(160, 138, 96))
    pen.rounded_rectangle(box(482, 208, 606, 262), 14, fill=(48, 50, 54))
    pen.text(at(70, 390), "X40/1", font=font(30, bold=True), fill=(240, 238, 230))
    return ground


def put_back() -> Image.Image:
    """A connector with its own wires, none of them cut, and the holes where a carrier sat."""
    ground, pen = sheet((84, 88, 96), 5)
    for row, colour in enumerate(((28, 28, 30), RED, (150, 96, 52), (96, 140, 104))):
        cable(pen, [(250, 150 + 54 * row), (420, 146 + 56 * row), (640, 120 + 66 * row)], colour=colour, width=26)
    pen.rounded_rectangle(box(90, 110, 262, 350), 14, fill=(40, 42, 46), outline=STEEL, width=4)
    pen.text(at(142, 206), "X7", font=font(40, bold=True), fill=(236, 234, 226))
    for x in (150, 470):
        pen.ellipse(box(x, 396, x + 28, 424), fill=BLACK, outline=STEEL, width=4)
    return ground


PHOTOS: dict[str, Callable[[], bytes]] = {
    "truck-15/photos/serial-and-vin.jpg": lambda: as_jpeg(
        photographed(serial_and_vin(PLATES["truck-15"], behind=(112, 104, 92)), 21)
    ),
    "truck-15/photos/bare-joint.jpg": lambda: as_jpeg(photographed(bare_butt(), 22)),
    "truck-15/photos/ground.jpg": lambda: as_jpeg(photographed(ground_point(behind=(88, 80, 72)), 23)),
    "truck-18/photos/serial-and-vin.jpg": lambda: as_jpeg(
        photographed(serial_and_vin(PLATES["truck-18"], behind=(96, 112, 100)), 24)
    ),
    "truck-18/photos/ground.jpg": lambda: as_jpeg(photographed(ground_point(behind=(66, 76, 92)), 25)),
    "truck-23/photos/put-back.jpg": lambda: as_jpeg(photographed(put_back(), 26)),
}


def texts() -> dict[str, str]:
    """Every text file that is made, by its path below the yard. Truck 15's reports were fetched the next morning."""
    return {
        **{f"{truck}/recordings/crank.csv": recording_text(start) for truck, start in STARTS.items()},
        "truck-15/key-script.csv": script_text(FIFTEEN),
        "truck-15/reports.csv": reports_text(clock(6, 40), (FIFTEEN,)),
        "truck-18/key-script.csv": script_text(EIGHTEEN),
        "truck-18/reports.csv": reports_text(clock(DAY + 14, 45), (EIGHTEEN,)),
    }


def stale() -> list[str]:
    """The files in the yard that are not those that are made."""
    wrong = [
        name
        for name, wanted in texts().items()
        if not (YARD / name).is_file() or (YARD / name).read_text(encoding="utf-8") != wanted
    ]
    return [*wrong, *(name for name, make in PHOTOS.items() if not shows_the_same(YARD / name, make()))]


def write() -> None:
    """Write every file. Stops where a photo is larger than it may be."""
    made = {name: text.encode() for name, text in texts().items()} | {name: make() for name, make in PHOTOS.items()}
    for name, content in made.items():
        if name in PHOTOS and len(content) > MOST_BYTES:
            raise SystemExit(f"{name}: {len(content)} bytes, more than {MOST_BYTES}")
        (YARD / name).parent.mkdir(parents=True, exist_ok=True)
        (YARD / name).write_bytes(content)


def main() -> int:
    """Write the files, or with --check compare them."""
    if "--check" not in sys.argv[1:]:
        write()
    wrong = stale()
    print("\n".join(f"{name}: not what {Path(__file__).name} would make" for name in wrong) or "fleet: current")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())

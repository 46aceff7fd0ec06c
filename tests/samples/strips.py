"""What a hand did with the key and what a unit said of it, as two strips of fifteen minutes."""

from __future__ import annotations

from backprobe.drawings.turns import Stretch

HAND = (
    Stretch(0, 20, "off", on=False),
    Stretch(20, 200, "accessory", on=False),
    Stretch(200, 400, "on", on=True),
    Stretch(400, 402, "crank", on=True),
    Stretch(402, 700, "running", on=True),
    Stretch(700, 900, "off", on=False),
)
UNIT = (Stretch(0, 203, "off", on=False), Stretch(203, 720, "on", on=True), Stretch(720, 900, "off", on=False))

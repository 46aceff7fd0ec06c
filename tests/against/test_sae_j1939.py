"""Outside check: SAE J1939 quantities as several bodies of public code scale them, and worked values.

SPN 190, 168, 158, 84, 917, 245: group, bytes and scale seen alike in several public repositories (docs/sources.md);
the worked values are arithmetic on them. SPN 959 to 964 (time and date): seconds by 0.25 s, minutes, hours, month, day
by 0.25 day, years from 1985, as two public repositories encode it. Control bytes of the transport protocol (16, 17, 19,
32, 255): as public code gives them that names J1939-21 (2006). Which raw values are no values (0xFB… and above) is from
memory, but for 0xFFFF. No copy of the standard itself was at hand.
"""

from __future__ import annotations

import pytest

from backprobe.formats import j1939
from backprobe.formats.j1939_transport import ABORT, BAM, CTS, END_OF_MESSAGE, RTS

PUBLISHED = {  # SPN: (group, first byte counted from 1, bytes, per bit, unit)
    190: (0xF004, 4, 2, 0.125, "rpm"),
    168: (0xFEF7, 5, 2, 0.05, "V"),
    158: (0xFEF7, 7, 2, 0.05, "V"),
    84: (0xFEF1, 2, 2, 1 / 256, "km/h"),
    917: (0xFEC1, 1, 4, 0.005, "km"),
    245: (0xFEE0, 5, 4, 0.125, "km"),
}


@pytest.mark.parametrize("quantity", j1939.QUANTITIES, ids=lambda each: str(each.spn))
def test_groups_bytes_and_scales(quantity: j1939.Quantity) -> None:
    """Each as published."""
    row = (quantity.pgn, quantity.at + 1, quantity.size, quantity.per_bit, quantity.unit)
    assert row == PUBLISHED[quantity.spn]


def test_worked_values() -> None:
    """Raw 276 at SPN 168 is 13.80 V, raw 0x0F00 192 V; raw 5200 at SPN 190 is 650 rpm; all ones are none."""
    assert j1939.BATTERY_V.value(b"\xff" * 4 + (276).to_bytes(2, "little")) == 13.8
    assert j1939.BATTERY_V.value(b"\xff" * 4 + (0x0F00).to_bytes(2, "little")) == 192.0
    assert j1939.ENGINE_SPEED.value(b"\xff" * 3 + (5200).to_bytes(2, "little")) == 650.0
    assert all(quantity.value(b"\xff" * 8) is None for quantity in j1939.QUANTITIES)


def test_control_bytes_of_the_transport_protocol() -> None:
    """Request to send, clear to send, end of message, to all, abort."""
    assert (RTS, CTS, END_OF_MESSAGE, BAM, ABORT) == (16, 17, 19, 32, 255)


def test_groups_that_carry_them() -> None:
    """TP.CM 0xEC00, TP.DT 0xEB00; VIN 65260, time and date 65254."""
    assert (j1939.TP_CM, j1939.TP_DT, j1939.VIN, j1939.TIME_DATE) == (0xEC00, 0xEB00, 65260, 65254)

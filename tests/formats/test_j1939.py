"""Identifiers and quantities of a heavy vehicle's bus."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from backprobe.formats.j1939 import (
    BATTERY_V,
    GLOBAL,
    MOST_RAW,
    QUANTITIES,
    Quantity,
    destination_of,
    group_of,
    source_of,
    time_date_s,
    vin_text,
)

BUSY = settings(deadline=None, suppress_health_check=[HealthCheck.too_slow])  # other work may hold the machine


def packed(quantity: Quantity, raw: int) -> bytes:
    """Eight bytes, all 'not available' but the quantity."""
    data = bytearray(b"\xff" * 8)
    data[quantity.at : quantity.at + quantity.size] = raw.to_bytes(quantity.size, "little")
    return bytes(data)


@BUSY
@given(st.integers(0, 7), st.integers(0, 1), st.integers(0, 0xEF), st.integers(0, 255), st.integers(0, 253))
def test_a_message_to_one_node_has_its_address_apart(
    priority: int, page: int, group: int, to: int, source: int
) -> None:
    """Below 240 the second byte is the receiver, and no part of the group's number."""
    can_id = priority << 26 | page << 24 | group << 16 | to << 8 | source
    assert group_of(can_id) == page << 16 | group << 8
    assert (destination_of(can_id), source_of(can_id)) == (to, source)


@BUSY
@given(st.integers(0, 7), st.integers(0, 1), st.integers(0xF0, 0xFF), st.integers(0, 255), st.integers(0, 253))
def test_a_message_to_all_has_a_longer_number(priority: int, page: int, group: int, low: int, source: int) -> None:
    """From 240 on the second byte belongs to the group's number."""
    can_id = priority << 26 | page << 24 | group << 16 | low << 8 | source
    assert group_of(can_id) == page << 16 | group << 8 | low
    assert (destination_of(can_id), source_of(can_id)) == (GLOBAL, source)


@pytest.mark.parametrize("quantity", QUANTITIES, ids=lambda each: str(each.spn))
def test_no_value_is_made_of_what_is_none(quantity: Quantity) -> None:
    """Not available (all ones), error (0xFE…) and what is reserved above 0xFA… are absent, not numbers."""
    top = 1 << 8 * quantity.size
    for high in (0xFB, 0xFD, 0xFE, 0xFF):
        assert quantity.value(packed(quantity, high << 8 * (quantity.size - 1))) is None
    assert quantity.value(packed(quantity, top - 1)) is None
    assert quantity.value(packed(quantity, MOST_RAW[quantity.size])) == pytest.approx(
        MOST_RAW[quantity.size] * quantity.per_bit
    )
    assert quantity.value(packed(quantity, 0)) == 0.0


@pytest.mark.parametrize("quantity", QUANTITIES, ids=lambda each: str(each.spn))
def test_a_short_frame_holds_no_value(quantity: Quantity) -> None:
    """A frame that ends before the quantity, or within it, says nothing of it."""
    whole = packed(quantity, 1)
    for length in range(quantity.at + quantity.size):
        assert quantity.value(whole[:length]) is None


def test_the_byte_order_is_low_first() -> None:
    """Raw 0x0F00 at the battery potential is 3840 × 0.05 V = 192 V, however implausible."""
    assert BATTERY_V.value(packed(BATTERY_V, 0x0F00)) == 192.0


@pytest.mark.parametrize(
    ("data", "vin"),
    [
        (b"1M8GDM9AXKP042788*\xff\xff\xff", "1M8GDM9AXKP042788"),
        (b"1M8GDM9AXKP042788", "1M8GDM9AXKP042788"),
        (b" 1M8GDM9AXKP042788 *rest", "1M8GDM9AXKP042788"),
        (b"1M8GDM9AXKP042788\0\0", "1M8GDM9AXKP042788"),
        (b"\xff" * 17, None),
        (b"*", None),
        (b"1M8\x01GDM9*", None),
        (b"", None),
    ],
)
def test_a_vin_ends_at_its_star(data: bytes, vin: str | None) -> None:
    """Filling is left out; what is no text is no VIN."""
    assert vin_text(data) == vin


@BUSY
@given(st.datetimes(datetime(1985, 1, 1), datetime(2234, 12, 31)))
def test_a_clock_is_read_as_it_is_set(moment: datetime) -> None:
    """Quarters of a second and of a day, years from 1985."""
    whole = moment.replace(microsecond=0, tzinfo=UTC)
    data = bytes(
        (whole.second * 4, whole.minute, whole.hour, whole.month, whole.day * 4, whole.year - 1985, 0xFF, 0xFF)
    )
    assert time_date_s(data) == whole.timestamp()


@pytest.mark.parametrize(
    "data",
    [
        b"\xff" * 8,
        bytes((0, 0, 0, 13, 4, 39, 0, 0)),
        bytes((0, 0, 24, 1, 4, 39, 0, 0)),
        bytes((0, 60, 0, 1, 4, 39, 0, 0)),
        bytes((240, 0, 0, 1, 4, 39, 0, 0)),
        bytes((0, 0, 0, 2, 31 * 4, 39, 0, 0)),
        bytes((0, 0, 0, 1)),
        bytes((0, 0, 0, 1, 4, 0xFE, 0, 0)),
    ],
)
def test_a_clock_that_was_never_set_is_none(data: bytes) -> None:
    """Not available, no such month, hour, minute, second or day, or too short."""
    assert time_date_s(data) is None

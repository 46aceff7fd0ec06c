"""A recording finds its channels by name and by what they hold."""

from __future__ import annotations

from array import array

from backprobe.evidence.recording import Channel, Envelope, Quantity, Recording, Window


def channel(name: str, quantity: Quantity) -> Channel:
    """A channel of one row."""
    once = array("d", [12.0])
    return Channel(
        name=name, quantity=quantity, envelope=Envelope(once, once), rows=1,
        lowest=12.0, lowest_s=0.0, highest=12.0, highest_s=0.0, mean=12.0, digits=1,
    )  # fmt: skip


def recording(*channels: Channel) -> Recording:
    """A recording of one row."""
    return Recording(
        name="a.csv", rows=1, start_s=0.0, end_s=0.0, interval_s=0.0, widest_gap_s=0.0, time_known=True, time_note=None,
        bucket_start_s=array("d", [0.0]), channels=channels, keys=(), skipped=(), skipped_count=0,
        fine=lambda start_s, end_s: Window(array("d"), {}),
    )  # fmt: skip


def test_a_channel_is_found_by_its_name() -> None:
    """By its whole name, or not at all."""
    battery = channel("battery", Quantity.VOLTAGE)
    assert recording(battery).channel("battery") is battery
    assert recording(battery).channel("bat") is None


def test_engine_speed_is_no_voltage() -> None:
    """Only voltages are looked at as wires."""
    battery, speed = channel("battery", Quantity.VOLTAGE), channel("speed", Quantity.ENGINE_SPEED)
    assert recording(speed, battery).voltages == (battery,)

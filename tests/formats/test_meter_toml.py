"""A meter's own figures as TOML."""

from pathlib import Path

import pytest

from backprobe.errors import UnreadableError
from backprobe.evidence.keys import Capture
from backprobe.evidence.meter import DEFAULT_CAPTURES, Meter
from backprobe.formats.meter_toml import TAKEN_MIN_MS, TAKEN_PER_S, read_meter

SAMPLES = Path(__file__).resolve().parents[1] / "samples" / "meters"
DEFECTS = {
    "percent-missing": (None, "percent = 0.5"),
    "counts-missing": (None, "counts = 2"),
    "percent-with-unit": (1, "without quotation marks and unit"),
    "percent-negative": (1, "from 0 to 20"),
    "capture-in-seconds": (3, "did you mean min_capture_ms?"),
    "capture-of-nothing": (3, "from 0.001"),
    "captures-unknown": (3, "display, min, max, logged"),
    "counts-without-end": (2, "from 0 to 1000"),
}


def sample(name):
    """The text of a sample."""
    return (SAMPLES / f"{name}.toml").read_text(encoding="utf-8")


def test_a_fully_stated_meter():
    """Every figure as stated, with the basis that was given."""
    assert read_meter(sample("good-full"), "meter.toml") == Meter(
        name="bench meter in the blue case",
        percent=0.03,
        counts=1.0,
        min_capture_ms=0.25,
        display_per_s=5.0,
        captures=frozenset({Capture.DISPLAY, Capture.MIN, Capture.MAX}),
        basis="data sheet, direct voltage, 60 V range",
    )


def test_what_was_not_stated_is_said_in_the_basis():
    """Accuracy alone: speed is taken as that of a plain hand meter, and the basis tells."""
    meter = read_meter(sample("good-least"), "meter.toml")
    assert (meter.percent, meter.counts) == (0.5, 2.0)
    assert (meter.min_capture_ms, meter.display_per_s, meter.captures) == (100.0, 3.0, DEFAULT_CAPTURES)
    assert meter.basis == "as stated in meter.toml; MIN hold taken as 100 ms; display taken as 3 a second"


def test_what_is_taken_is_what_a_meter_is_by_default():
    """The figures that are taken here and the defaults of Meter are the same."""
    plain = Meter(name="", percent=0, counts=0)
    assert (plain.min_capture_ms, plain.display_per_s) == (TAKEN_MIN_MS, TAKEN_PER_S)


def test_a_display_can_always_be_read():
    """With captures = "min" it is a meter with a display and a MIN hold, and no MAX."""
    meter = read_meter('percent = 1\ncounts = 1\ncaptures = "min"', "meter.toml")
    assert meter.captures == {Capture.DISPLAY, Capture.MIN}


@pytest.mark.parametrize("name", DEFECTS)
def test_defects_are_refused_with_line_and_expectation(name):
    """Each sample that is named for its defect."""
    line, words = DEFECTS[name]
    with pytest.raises(UnreadableError) as caught:
        read_meter(sample(name), "meter.toml")
    assert caught.value.place.line == line
    assert words in caught.value.expected


def test_every_defective_sample_is_in_the_table():
    """No sample lies about unread."""
    assert {path.stem for path in SAMPLES.glob("*.toml") if not path.stem.startswith("good-")} == set(DEFECTS)

"""The unit sheet as TOML."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import UnreadableError
from backprobe.evidence.unit_sheet import Lead, Light, Pull, Purpose, Reporting, Supply, UnitInput
from backprobe.formats.unit_sheet import KEYS, read_unit_sheet

SAMPLES = Path(__file__).resolve().parents[1] / "samples" / "unit_sheets"
# each defect with the line that is named and words of what was expected there
DEFECTS = {
    "name-missing": (None, "name = "),
    "supply-missing": (None, "least_V = 9"),
    "supply-upside-down": (5, "more than least_V, which is 32"),
    "supply-in-millivolts": (4, "from 0 to 60"),
    "supply-not-a-number": (4, "from 0 to 60"),
    "decimal-comma": (4, "a decimal point"),
    "key-unknown": (6, "least_V, most_V"),
    "no-leads": (None, 'purpose = "supply"'),
    "no-ground-lead": (None, 'purpose = "ground"'),
    "lead-twice": (16, "'power' stands twice"),
    "purpose-misspelt": (17, "did you mean ignition?"),
    "lead-colour-in-words": (18, "YE yellow"),
    "lead-with-two-sizes": (19, "either mm2 or awg"),
    "fuse-of-nothing": (18, "from 0.1 to 100"),
    "input-without-lead": (20, "ignition or input: key"),
    "input-on-the-supply-lead": (20, "ignition or input: key"),
    "thresholds-upside-down": (22, "more than low_most_V, which is 7"),
    "threshold-missing": (19, "high_least_V = "),
    "pull-unknown": (23, "up, down, none"),
    "light-without-name": (15, "name = "),
    "interval-with-unit": (16, "without quotation marks and unit"),
}


def sample(name):
    """The text of a sample."""
    return (SAMPLES / f"{name}.toml").read_text(encoding="utf-8")


def test_the_least_unit_sheet():
    """Name, supply range, a supply and a ground lead are enough; nothing is made up for the rest."""
    unit = read_unit_sheet(sample("good-least"), "unit.toml")
    assert unit.name == "Ember 1"
    assert unit.supply == Supply(least_V=9.0, most_V=32.0)
    assert unit.leads == (Lead(name="power", purpose=Purpose.SUPPLY), Lead(name="ground", purpose=Purpose.GROUND))
    assert (unit.maker, unit.inputs, unit.lights, unit.reporting) == (None, (), (), Reporting())
    assert unit.ignition is None


def test_the_full_unit_sheet():
    """Every key comes out where it belongs."""
    unit = read_unit_sheet(sample("good-full"), "unit.toml")
    assert unit.maker == "Pell Signal Works"
    assert unit.supply == Supply(
        least_V=8.0, most_V=32.0, holdup_ms=20, peak_A=1.2, idle_mA=65, transmit_mA=180, sleep_mA=3.5
    )
    assert unit.leads[0] == Lead(name="power", purpose=Purpose.SUPPLY, colour="RD", mm2=0.75, fuse_A=3.0)
    assert unit.leads[1] == Lead(name="ground", purpose=Purpose.GROUND, colour="BK", awg=18)
    assert [lead.purpose for lead in unit.leads] == ["supply", "ground", "ignition", "input", "output", "data"]
    assert unit.ignition == UnitInput(name="ignition", low_most_V=3.0, high_least_V=7.0, debounce_s=2.0, pull=Pull.DOWN)
    assert unit.inputs[1] == UnitInput(name="door", low_most_V=1.0, high_least_V=4.0)
    assert unit.lights == (
        Light(name="network", colour="green", pattern="one flash a second", means="registered, sending"),
    )
    assert unit.reporting == Reporting(interval_s=60, stopped_interval_s=3600, debounce_on_s=2, debounce_off_s=20)


@pytest.mark.parametrize("name", DEFECTS)
def test_defects_are_refused_with_line_and_expectation(name):
    """Each sample that is named for its defect."""
    line, words = DEFECTS[name]
    with pytest.raises(UnreadableError) as caught:
        read_unit_sheet(sample(name), "unit.toml")
    assert caught.value.place.line == line
    assert words in caught.value.expected


def test_every_defective_sample_is_in_the_table():
    """No sample lies about unread."""
    assert {path.stem for path in SAMPLES.glob("*.toml") if not path.stem.startswith("good-")} == set(DEFECTS)


VALUES = ['"x"', '""', "12", "0.5", "true", "[1]", "{}", "nan", '"supply"', '"ground"', '"ignition"', '"RD"', '"up"']
LINES = [f"[{name}]" for name in (*KEYS, "other")] + [f"[[{name}]]" for name in ("lead", "input", "light")]
LINES += [f"{key} = {value}" for keys in KEYS.values() for key in keys for value in VALUES]


@given(st.lists(st.sampled_from(LINES), max_size=12).map("\n".join))
def test_any_sheet_is_read_or_refused(text):
    """Whatever lines are put together, nothing but the project's own error comes out; what is read makes sense."""
    try:
        unit = read_unit_sheet(sample("good-least") + text, "unit.toml")
    except UnreadableError:
        unit = read_unit_sheet(sample("good-least"), "unit.toml")
    assert unit.supply.least_V < unit.supply.most_V
    assert all(entry.low_most_V < entry.high_least_V for entry in unit.inputs)

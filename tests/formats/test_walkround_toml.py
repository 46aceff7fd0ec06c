"""The walkround as TOML."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import UnreadableError
from backprobe.evidence.photo import NamedPhoto, Shows
from backprobe.evidence.walkround import (
    Authority,
    Bench,
    Condition,
    Fate,
    FoundDevice,
    Hazards,
    OnVehicle,
    SwitchSide,
    Walkround,
)
from backprobe.formats.walkround_toml import KEYS, read_walkround

SAMPLES = Path(__file__).resolve().parents[1] / "samples" / "walkrounds"
# each defect with the line that is named and words of what was expected there
DEFECTS = {
    "table-misspelt": (1, "did you mean authority?"),
    "key-misspelt": (2, "did you mean plate?"),
    "key-of-another-table": (3, "key_with under [vehicle]"),
    "authority-in-words": (2, "true or false"),
    "name-without-quotation-marks": (2, "text in quotation marks"),
    "plate-is-a-number": (2, "text in quotation marks"),
    "device-in-single-brackets": (1, "headed [[devices.found]]"),
    "device-without-what": (3, "[[devices.found]] number 1"),
    "device-fate-misspelt": (3, "did you mean removed?"),
    "odometer-with-unit": (2, "without quotation marks and unit"),
    "odometer-negative": (2, "from 0 to"),
    "odometer-twice": (3, "either odometer_km or odometer_mi"),
    "engine-hours-in-seconds": (2, "from 0 to 999999"),
    "lamps-hold-a-number": (2, "a list"),
    "lamps-none-and-one": (3, 'either "none" or what there was'),
    "before-explained": (2, "explained under [after]"),
    "backup-in-millivolts": (2, "from 0 to 60"),
    "activated-is-a-number": (2, "true or false"),
    "side-misspelt": (3, "did you mean negative?"),
    "after-run-in-seconds": (2, "from 0 to 240"),
    "hazard-maybe": (2, "true or false"),
    "hazards-in-double-brackets": (1, "a table, headed [hazards]"),
    "photo-without-file": (1, 'file = "photos/…"'),
    "photo-twice": (4, "'photos/a.jpg' stands twice"),
    "photo-shows-misspelt": (3, "did you mean dash_lamps?"),
}


def sample(name: str) -> str:
    """The text of a sample."""
    return (SAMPLES / f"{name}.toml").read_text(encoding="utf-8")


def test_an_empty_walkround_says_nothing():
    """No key must be there, and what is not there is neither yes nor no."""
    assert read_walkround(sample("good-empty"), "walkround.toml") == Walkround()


def test_the_full_walkround():
    """Every key comes out where it belongs."""
    assert read_walkround(sample("good-full"), "walkround.toml") == Walkround(
        authority=Authority(work=True, work_by="Maud Linden", crank=False, crank_by="Dov Castellan"),
        vehicle=OnVehicle(vin="1M8GDM9AXKP042788", plate="HV 204", fleet_number="0204", key_with="Ines Okafor"),
        looked_for_devices=True,
        devices=(
            FoundDevice(what="a tracker behind the glovebox", fate=Fate.REMOVED, consent="Maud Linden"),
            FoundDevice(what="an alarm under the seat"),
        ),
        before=Condition(odometer_km=184220.5, engine_h=7011.5, lamps=("ABS", "tyre pressure"), codes=()),
        after=Condition(
            odometer_mi=114470.0,
            engine_h=7012.0,
            lamps=(),
            codes=("SPN 168 FMI 1",),
            explained="the workshop put the ABS right",
        ),
        bench=Bench(
            serial="LN2-00417",
            activated=True,
            firmware="4.2.1",
            firmware_wanted="4.2.2",
            backup=True,
            backup_V=3.94,
            backup_least_V=3.6,
            lights=("network: one flash a second", "sky: steady"),
        ),
        hazards=Hazards(
            high_voltage=True,
            high_voltage_by="Petra Lund, licensed for vehicles",
            restraint_near_work=True,
            restraint_procedure="body manual, section 12",
            dual_batteries=True,
            battery_switch=True,
            battery_switch_side=SwitchSide.NEGATIVE,
            after_run_min=5.0,
            dangerous_goods=True,
            dangerous_goods_consent="the carrier's safety adviser",
            trailer=True,
            system_48V=False,
        ),
        photos=(
            NamedPhoto(file="photos/dash-before.jpg", shows=Shows.DASH_LAMPS, note="key on"),
            NamedPhoto(file="photos/gate.jpg"),
        ),
    )


def test_what_was_left_empty_is_not_said():
    """An empty text is no answer; 'none' in any capitals is one."""
    read = read_walkround(sample("good-left-empty"), "walkround.toml")
    assert read.authority == Authority()
    assert read.devices == (FoundDevice(what="a tracker"),)
    assert (read.before.lamps, read.before.codes) == (None, ())
    assert read.hazards == Hazards()
    assert read.after is None


@pytest.mark.parametrize("name", DEFECTS)
def test_defects_are_refused_with_line_and_expectation(name: str):
    """Each sample that is named for its defect."""
    line, words = DEFECTS[name]
    with pytest.raises(UnreadableError) as caught:
        read_walkround(sample(name), "walkround.toml")
    assert caught.value.place.line == line
    assert caught.value.place.file == "walkround.toml"
    assert words in caught.value.expected


def test_every_defective_sample_is_in_the_table():
    """No sample lies about unread."""
    assert {path.stem for path in SAMPLES.glob("*.toml") if not path.stem.startswith("good-")} == set(DEFECTS)


VALUES = ['"x"', '""', "12", "true", "[1]", '["a"]', "[]", "{}", "nan", "1e400", "2026-03-31", '"none"']
VALUES += ['["none", "a"]']
LINES = [f"[{name}]" for name in (*KEYS, "other")] + ["[[photo]]", "[[devices.found]]", "= 3", "other = 1", '"""']
LINES += [f"{key} = {value}" for keys in KEYS.values() for key in keys for value in VALUES]


@given(st.lists(st.sampled_from(LINES), max_size=12).map("\n".join))
def test_any_walkround_is_read_or_refused(text: str):
    """Whatever lines are put together, nothing but the project's own error comes out, with a line that exists."""
    try:
        read = read_walkround(text, "walkround.toml")
    except UnreadableError as error:
        line = error.place.line
        assert line is None or 1 <= line <= text.count("\n") + 1
    else:
        assert read == read_walkround(text, "walkround.toml")

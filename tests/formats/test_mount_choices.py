"""A place described by choices: the parts they stand for, and how sure these are."""

from __future__ import annotations

import copy
import json
import math
import tomllib
from pathlib import Path

import jsonschema
import pytest
from tests.samples.mount import thin_sky

from backprobe.errors import UnreadableError
from backprobe.evidence.mount_sheet import MountPlace, Side
from backprobe.findings import Verdict
from backprobe.formats.mount_choices import CHOICES
from backprobe.formats.mount_toml import read_mount
from backprobe.limits.cab import SEATS
from backprobe.stages.mount.mask import materials_met
from backprobe.stages.mount.predict import PlacePrediction, goodness, predict_place

SCHEMA = Path(__file__).resolve().parents[2] / "schemas" / "mount.schema.json"
HEAD = '[[place]]\nname = "there"\n'
UP = (0.0, 0.0, 1.0)


def place(choices: str) -> MountPlace:
    """The place that choices describe."""
    return read_mount(HEAD + choices, "mount.toml").places[0]


def predicted(choices: str) -> PlacePrediction:
    """What it hears under a thinned day."""
    sheet = read_mount(HEAD + choices, "mount.toml")
    return predict_place(sheet.places[0], sheet, sky=thin_sky())


def ray(up_deg: float, *, ahead: bool = True) -> tuple[float, float, float]:
    """A ray straight ahead or behind, so many degrees up."""
    flat = math.cos(math.radians(up_deg))
    return (flat if ahead else -flat, 0.0, math.sin(math.radians(up_deg)))


def test_a_hand_above_is_150_mm_and_80_to_220() -> None:
    """The middle of the choice for the figure, its ends for the doubt; how far it reaches 25 % more or less."""
    found = place('sits = "lining"\nabove = "fibreglass"\nabove_near = "hand"\n')
    assert found.supposed is not None
    roofs = [parts[0] for parts in (found.parts, found.supposed.worst, found.supposed.best)]
    assert [roof.away_mm for roof in roofs] == [150, 220, 80]
    assert [roof.ahead_mm for roof in roofs] == [500, 375, 625]  # 500, 500 · 0.75, 500 · 1.25
    assert found.supposed.figures == (
        "in the roof lining",
        "above: fibreglass, 150 (80 to 220) mm from the unit",
    )


def test_a_measured_distance_goes_before_a_choice() -> None:
    """160 mm by a tape: no doubt is left in it."""
    found = place('sits = "lining"\nabove = "fibreglass"\nabove_near = "arm"\nabove_away_mm = 160\n')
    assert found.supposed is not None
    assert {parts[0].away_mm for parts in (found.parts, found.supposed.worst, found.supposed.best)} == {160}


def test_what_is_not_told_is_metal() -> None:
    """A seat alone, with nothing said of what is round it, hears nothing."""
    for seat in SEATS:
        found = predicted(f'sits = "{seat}"\n')
        assert (found.verdict, found.kind.share) == (Verdict.FAILS, 0.0), seat


def test_behind_the_dash_the_windscreen_comes_on_top_of_the_panel() -> None:
    """Ahead and up a ray meets plastic and glass; straight up it meets the roof, beside the panel the dash's metal.

    A steep windscreen, 350 mm ahead at 62°, ends at 700 mm, 350 - 700 / tan 62° = -22 mm: just behind the unit.
    """
    found = place('sits = "behind_dash"\nabove = "plastic"\nabove_near = "hand"\nahead = "glass"\nrake = "steep"\n')
    assert materials_met(found, ray(80)) == ("plastic", "plastic", "glass")
    assert materials_met(found, ray(80, ahead=False)) == ("plastic", "plastic", "metal")
    assert "metal" in materials_met(found, ray(20))
    roof = found.parts[-1]
    assert (roof.material, roof.away_mm, roof.ahead_mm) == ("metal", 700, pytest.approx(-22.2, abs=0.05))


def test_a_roof_of_metal_stands_over_a_shelf() -> None:
    """The roof's material is what is met straight up."""
    assert materials_met(place('sits = "shelf"\nabove = "metal"\nabove_near = "hand"\n'), UP)[-1] == "metal"
    assert materials_met(place('sits = "shelf"\nabove = "fibreglass"\nabove_near = "hand"\n'), UP)[-1] == "fibreglass"


@pytest.mark.parametrize("seat", sorted(SEATS))
@pytest.mark.parametrize("material", ["glass", "fibreglass", "coated_glass"])
@pytest.mark.parametrize("near", ["hand", "arm"])
def test_the_figure_lies_within_its_doubt(seat: str, material: str, near: str) -> None:
    """With the same on all sides: never worse than the worst, never better than the best."""
    sides = "".join(f'{side} = "{material}"\n{side}_near = "{near}"\n' for side in Side)
    found = predicted(f'sits = "{seat}"\nrake = "car"\n{sides}')
    assert goodness(found.hard) <= goodness(found.usual) <= goodness(found.kind)


def test_a_high_roof_of_glass_fibre_holds() -> None:
    """A shelf a hand below a shell of glass fibre on all sides: even at the worst of the figures it holds."""
    sides = "".join(f'{side} = "fibreglass"\n' for side in Side)
    found = predicted(f'sits = "shelf"\nabove_near = "hand"\n{sides}')
    assert (found.verdict, found.hard.share) == (Verdict.HOLDS, 1.0)


@pytest.mark.parametrize(
    ("choices", "line", "says"),
    [
        ('sits = "roof"\n', 3, "one of: shelf"),
        ('above = "glass"\n', 1, "sits = one of shelf"),
        ('sits = "dash"\nahead = "glas"\n', 4, "did you mean glass?"),
        ('sits = "dash"\nahead_near = "foot"\n', 4, "one of: hand, forearm, arm"),
        ('sits = "dash"\nbehind_away_mm = "far"\n', 4, "a number from 1 to 5000"),
        ('sits = "dash"\nelsewhere = "glass"\n', 3, "or one that was measured part by part"),
    ],
)
def test_faults_are_named_with_their_line(choices: str, line: int, says: str) -> None:
    """Also in a choice for which the seat has no use."""
    with pytest.raises(UnreadableError) as caught:
        place(choices)
    assert f"line {line}" in caught.value.message
    assert says in caught.value.message


@pytest.mark.parametrize("key", CHOICES)
def test_reader_and_schema_agree_on_odd_choices(key: str) -> None:
    """Each choice in turn is given values of every kind, and left out."""
    schema = jsonschema.Draft202012Validator(json.loads(SCHEMA.read_text(encoding="utf-8")))
    full = {"place": [{"name": "there", "sits": "dash", "ahead": "glass", "rake": "car"}]}
    for value in [None, "", " ", "word", "glass", "hand", "car", "dash", 0, 1, 45, 12.5, 6000, True, [], ["glass"], {}]:
        sheet = copy.deepcopy(full)
        sheet["place"][0].pop(key, None)
        if value is not None:
            sheet["place"][0][key] = value  # type: ignore[assignment]
        lines = (f"{name} = {json.dumps(held)}\n" for name, held in sheet["place"][0].items())
        text = "[[place]]\n" + "".join(lines)
        assert tomllib.loads(text) == sheet
        try:
            read_mount(text, "mount.toml")
            reads = True
        except UnreadableError:
            reads = False
        assert reads == schema.is_valid(sheet), (key, value)

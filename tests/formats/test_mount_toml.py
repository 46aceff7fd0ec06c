"""mount.toml: places and parts, and what is refused with its line."""

from __future__ import annotations

import pytest
from tests.samples.mount import DASH, DASH_TOML, ROOF, ROOF_TOML

from backprobe.errors import UnreadableError
from backprobe.formats.mount_toml import MOST_PLACES, read_mount


def test_the_sample_is_read() -> None:
    """Two places with their parts, as they are written."""
    sheet = read_mount(DASH_TOML + ROOF_TOML, "mount.toml")
    assert sheet.places == (DASH, ROOF)
    assert sheet.heading_deg is None


def test_heading_choice_and_wishes() -> None:
    """A heading is taken round the circle; the choice must be a place of the sheet; wishes are read."""
    more = 'heading = -90\nchosen = "on the roof"\n[wanted]\nshare_percent = 95\nhdop_most = 2.5\n'
    sheet = read_mount(more + ROOF_TOML, "mount.toml")
    assert (sheet.heading_deg, sheet.chosen) == (270.0, "on the roof")
    assert (sheet.share_percent, sheet.pdop_most, sheet.hdop_most) == (95.0, None, 2.5)


def bad(change: tuple[str, str], text: str = DASH_TOML) -> str:
    """What is said of the sample with one thing changed."""
    assert change[0] in text
    with pytest.raises(UnreadableError) as caught:
        read_mount(text.replace(*change, 1), "mount.toml")
    return caught.value.message


@pytest.mark.parametrize(
    ("change", "line", "says"),
    [
        (('of = "glass"', 'of = "glas"'), 9, "'glas' is none of them"),
        (('cover = "plastic"', 'cover = "tin"'), 6, "a material: open, plastic"),
        (('where = "ahead"', 'where = "front"'), 10, "one of: above, ahead, behind, left, right"),
        (("away_mm = 250", "away_mm = 0"), 11, "a number from 1 to 30000"),
        (("rake_deg = 60", "rake_deg = 5"), 12, "a number from 10 to 170"),
        (("to_mm = 750", "ahead_mm = 750"), 13, "a part ahead reaches left_mm, right_mm, from_mm, to_mm"),
        (("right_mm = 900", "right_mm = -1300"), 14, "left_mm + right_mm above 0"),
        (("to_mm = 650", "to_mm = 40"), 22, "to_mm above from_mm"),
        (("left_mm", "lft_mm"), 14, "did you mean left_mm?"),
        (('heading = "any"', 'heading = "north"'), 2, 'heading = "any"'),
        (('heading = "any"', 'chosen = "roof"'), 2, "one of: on the dash"),
        (('name = "on the dash"', ""), 4, "name = "),
    ],
)
def test_faults_are_named_with_their_line(change: tuple[str, str], line: int, says: str) -> None:
    """Each slip is refused with the line in which it stands and with what was expected."""
    message = bad(change)
    assert f"line {line}" in message
    assert says in message


def test_a_part_above_lies_flat() -> None:
    """A rake belongs to parts that stand; one above has none."""
    assert "lies flat" in bad(('where = "ahead"\naway_mm = 250', 'where = "above"\naway_mm = 250'))


def test_no_place_too_many_and_two_alike() -> None:
    """A sheet without a place, one with too many, and two places of one name are refused."""
    with pytest.raises(UnreadableError, match="there is none"):
        read_mount('heading = "any"\n', "mount.toml")
    many = "".join(f'[[place]]\nname = "p{k}"\n' for k in range(MOST_PLACES + 1))
    with pytest.raises(UnreadableError, match=f"at most {MOST_PLACES} places"):
        read_mount(many, "mount.toml")
    with pytest.raises(UnreadableError, match="no other place has"):
        read_mount(ROOF_TOML + ROOF_TOML.replace("on the roof", "On the Roof"), "mount.toml")

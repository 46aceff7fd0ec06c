"""What the body of each kind holds."""

from __future__ import annotations

import pytest
from tests.samples.journals import GOOD, reading

from backprobe.job.kinds import KINDS, content, identity, misfit, table, text, texts, whole


def test_the_examples_cover_every_kind_of_evidence():
    """No kind without an example."""
    assert set(KINDS) == set(GOOD) - {"correction", "withdrawn", "erased", "rows_moved", "sign_off"}


@pytest.mark.parametrize("kind", GOOD)
def test_a_good_body_fits(kind):
    """The example of each kind is understood; surplus fields do no harm."""
    assert misfit(kind, GOOD[kind]) is None
    assert misfit(kind, GOOD[kind] | {"remark": "x"}) is None


@pytest.mark.parametrize("kind", GOOD)
def test_a_body_of_the_wrong_types_is_named(kind):
    """Every field of each example, made a nested table, no longer fits and is named."""
    for name in GOOD[kind]:
        wrong = "wrong" if name in ("body", "heard", "figures") else {"of": "wrong"}
        if name != "stored" or kind == "recording":
            assert (misfit(kind, GOOD[kind] | {name: wrong}) or "").startswith(f"{name}: expected")


def test_an_unknown_kind_is_named():
    """A kind nobody knows is said to be unknown."""
    assert misfit("hologram", {}) == "the kind 'hologram' is not known to this version"


def test_a_row_is_known_by_file_wire_key_and_capture():
    """The figure does not make it another row, the key does."""
    one = reading("Red", "on", "12.30") | {"file": "readings.csv", "line": 2}
    assert identity("reading", one) == ("reading", "readings.csv", "Red", "on", "display")
    assert identity("reading", one | {"volts": "1", "line": 9}) == identity("reading", one)
    assert identity("reading", one | {"key": "off"}) != identity("reading", one)


def test_a_row_that_moved_says_the_same():
    """Line and wording of what was expected are no content; figures as typed are: 12.30 is not 12.3."""
    one = reading("Red", "on", "12.30")
    assert content("reading", one | {"line": 2, "after_min": None}) == content("reading", one | {"line": 9})
    assert content("reading", one) != content("reading", reading("Red", "on", "12.3"))


def test_of_an_unknown_kind_everything_is_content():
    """What is not understood is compared whole."""
    assert content("hologram", {"of": "the dash"}) == {"of": "the dash"}


def test_fields_are_taken_only_in_their_type():
    """Text, texts, whole numbers and tables; anything else counts as not there."""
    body = {"t": "a", "n": 3, "yes": True, "list": ["a", 1, "b"], "table": {"x": 1}}
    assert (text(body, "t"), text(body, "n"), text(body, "none")) == ("a", None, None)
    assert (whole(body, "n"), whole(body, "yes"), whole(body, "t")) == (3, None, None)
    assert (texts(body, "list"), texts(body, "t"), texts(body, "n")) == (("a", "b"), ("a",), ())
    assert (table(body, "table"), table(body, "t")) == ({"x": 1}, {})

"""Findings in words."""

import math
from collections.abc import Callable

from backprobe.drawings.margin_words import described, finite, limit_text, margin_text, range_text
from backprobe.findings import Finding, Side

Build = Callable[..., Finding]


def test_a_whole_finding_is_said_in_one_paragraph(finding: Build) -> None:
    """Value, range, limit, margin, verdict, basis and reason: 9.62 − 9 = 0.62 inside."""
    said = described(finding(9.62, 9.4, 9.71, because="lowest of three cranks."))
    assert said == (
        "Supply while cranking: 9.62 V, the evidence allows 9.40 to 9.71 V. Limit: at least 9 V. "
        "Margin: 0.62 V inside. Verdict: holds. Basis: measured at the wire (common practice, no source). "
        "lowest of three cranks."
    )


def test_a_finding_without_value_says_so(finding: Build) -> None:
    """No figure is made up."""
    said = described(finding(None))
    assert said.startswith("Supply while cranking: no value. Limit: at least 9 V. Verdict: open.")
    assert said.endswith("no reading was taken while the starter turned")


def test_a_limit_is_shown_as_it_is_set(finding: Build) -> None:
    """A limit of 0.35 stays 0.35 though the value has one decimal; the value does not."""
    drop = finding(0.1, limit=0.35, side=Side.AT_MOST, digits=1)
    assert limit_text(drop) == "at most 0.35 V"
    assert limit_text(finding(1.0, limit=None)) == ""


def test_the_margin_says_on_which_side(finding: Build) -> None:
    """0.3 outside, nothing, 0.3 inside."""
    shown = finding(9.0)
    texts = [margin_text(shown, margin) for margin in (-0.3, 0.0, 0.3)]
    assert texts == ["0.30 V outside", "on the limit", "0.30 V inside"]


def test_a_range_needs_both_ends(finding: Build) -> None:
    """Half a range is not shown."""
    assert range_text(finding(9.5, 9.4, 9.6)) == "9.40 to 9.60 V"
    assert range_text(finding(9.5, 9.4, None)) == ""


def test_what_is_no_number_is_not_shown() -> None:
    """NaN and infinity count as nothing measured."""
    assert [finite(value) for value in (1.0, None, math.nan, math.inf)] == [1.0, None, None, None]

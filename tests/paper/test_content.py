"""The content of a record."""

from collections.abc import Callable
from dataclasses import FrozenInstanceError

import pytest

from backprobe.paper.content import ChoiceRow, RecordContent


def test_content_does_not_change(record: Callable[..., RecordContent]) -> None:
    """What is to be printed cannot be changed under way."""
    with pytest.raises(FrozenInstanceError):
        record().title = "other"  # type: ignore[misc]


def test_a_choice_may_be_none() -> None:
    """A lead without a wire is a row like any other."""
    assert ChoiceRow(lead="Ignition", wire=None).place is None

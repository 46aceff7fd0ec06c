"""The Spanish catalogue as a whole."""

from __future__ import annotations

from backprobe.tongues.spanish.book import BOOKS, pairs
from backprobe.tongues.template import HOLE


def test_every_book_has_sentences() -> None:
    """Each book gives its sentences, and each sentence has its Spanish."""
    assert all(book.SENTENCES.strip() for book in BOOKS)
    assert all(said and other for said, other in pairs())


def test_holes_are_those_of_the_sentence() -> None:
    """A Spanish sentence has no hole that the English one lacks, and names none twice."""
    for said, other in pairs():
        names = [name for _, name in HOLE.findall(said)]
        assert len(names) == len({*names}), said
        assert {name for _, name in HOLE.findall(other)} <= {*names}, said

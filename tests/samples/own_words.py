"""What somebody wrote, where a page or a picture shows it in pieces."""

from __future__ import annotations


def runs_of(own: list[str]) -> list[str]:
    """Two and more words that follow each other in what somebody wrote, the longest first.

    >>> runs_of(["bared and greased"])
    ['bared and greased', 'and greased', 'bared and']
    """
    found = set()
    for words in (written.split() for written in own):
        found |= {" ".join(words[at:end]) for at in range(len(words)) for end in range(at + 2, len(words) + 1)}
    return sorted(found, key=lambda run: (-len(run), run))

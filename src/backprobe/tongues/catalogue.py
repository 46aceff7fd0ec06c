r"""A catalogue as text: a line with the sentence as the engine writes it, then a line `= ` with it in other words.

An empty line means nothing, and a line that begins with `# ` is a remark. ``\n`` stands for a new line within a
sentence. What stands at the edges of a sentence, spaces, commas, colons and semicolons, is left off.
"""

from __future__ import annotations

from collections.abc import Iterator

OTHER = "= "
REMARK = "# "
NEW_LINE = "\\n"


def pairs_in(text: str) -> Iterator[tuple[str, str]]:
    r"""The pairs of a catalogue's text.

    >>> list(pairs_in("# of the key\nkey off; wait\n= llave quitada; espere\n"))
    [('key off; wait', 'llave quitada; espere')]
    """
    said = ""
    for line in text.splitlines():
        if line.startswith(OTHER):
            yield said, line.removeprefix(OTHER).replace(NEW_LINE, "\n")
        elif line and not line.startswith(REMARK):
            said = line.replace(NEW_LINE, "\n")

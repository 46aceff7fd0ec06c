"""What can go wrong, and whose fault it is.

::

    BackprobeError
    ├── InputError            something the technician gave cannot be used
    │   ├── UnreadableError   a file, or one place in it, cannot be read
    │   ├── OptionError       an option or a combination of options makes no sense
    │   └── JobError          the job folder does not fit together
    ├── JournalError          the journal itself was damaged or contradicts itself
    ├── StoreError            the server's database cannot be used just now
    └── RefusedError          the server does not do what was asked; `code` says why

Every message is written for the technician: what was found, where, and what was expected. `Place` and
`Skipped` carry the same for lines that are passed over while reading goes on.
"""

from __future__ import annotations

from dataclasses import dataclass

SHOWN_TEXT_MAX = 80


@dataclass(frozen=True, slots=True)
class Place:
    """Where in the evidence something stands: file, line (from 1) and the text found there."""

    file: str
    line: int | None = None
    text: str | None = None

    def __str__(self) -> str:
        where = self.file if self.line is None else f"{self.file}, line {self.line}"
        return where if self.text is None else f"{where}: {shortened(self.text)}"


@dataclass(frozen=True, slots=True)
class Skipped:
    """One line that was passed over: where it stands and what was expected there."""

    place: Place
    expected: str

    def __str__(self) -> str:
        return f"{self.place} ({self.expected})"


class BackprobeError(Exception):
    """The root of all errors that this package raises on purpose."""

    code = "error"

    def __init__(self, message: str) -> None:
        super().__init__(message)
        self.message = message


class InputError(BackprobeError):
    """Something that was given cannot be used as it is."""

    code = "input"


class UnreadableError(InputError):
    """A file, or a place in it, cannot be read.

    Example: ``UnreadableError(Place("readings.csv", 3, "red,onn,12.4"), "a key position: off, accessory, on …")``.
    """

    code = "unreadable"

    def __init__(self, place: Place, expected: str) -> None:
        super().__init__(f"{place}\nexpected: {expected}")
        self.place = place
        self.expected = expected


class OptionError(InputError):
    """An option, or a combination of options, makes no sense."""

    code = "option"


class JobError(InputError):
    """The parts of a job folder do not fit together."""

    code = "job"


class JournalError(BackprobeError):
    """The journal was damaged or contradicts itself; nothing is written until that is settled."""

    code = "journal"


class StoreError(BackprobeError):
    """The server's database cannot be used just now: full, held by something else, or not there."""

    code = "store"


class RefusedError(BackprobeError):
    """The server does not do what was asked: `code` is then one of those in docs/api.md."""

    code = "refused"

    def __init__(self, message: str, *, code: str) -> None:
        super().__init__(message)
        self.code = code


def error_json(error: BackprobeError) -> dict[str, object]:
    """The one shape of errors: ok, error, code, and the place of the fault where there is one."""
    answer: dict[str, object] = {"ok": False, "error": error.message, "code": error.code}
    if isinstance(error, UnreadableError):
        answer["place"] = {"file": error.place.file, "line": error.place.line, "text": error.place.text}
    return answer


def shortened(text: str, most: int = SHOWN_TEXT_MAX) -> str:
    """The text on one line, cut to `most` characters, control characters shown as spaces."""
    plain = "".join(c if c.isprintable() else " " for c in text).strip()
    return plain if len(plain) <= most else plain[: most - 1] + "…"

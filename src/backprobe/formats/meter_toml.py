"""A meter's own figures as TOML, for those who have its data sheet at hand."""

from __future__ import annotations

from backprobe.evidence.keys import Capture
from backprobe.evidence.meter import DEFAULT_CAPTURES, Meter
from backprobe.formats.toml_text import TomlTable, parse_toml

KEYS: dict[str, tuple[str, ...]] = {
    "": ("name", "percent", "counts", "min_capture_ms", "display_per_s", "captures", "basis"),
}
PERCENT_MOST = 20
COUNTS_MOST = 1000
CAPTURE_MS = (0.001, 10_000)
DISPLAY_PER_S = (0.1, 1000)
TAKEN_MIN_MS = 100.0
TAKEN_PER_S = 3.0


def read_meter(text: str, file: str) -> Meter:
    r"""The meter that the TOML `text` describes; `file` is the name shown in messages.

    `percent` and `counts` of its accuracy on direct voltage must be there. What is not stated of its speed is taken
    as that of a plain hand meter, and the basis says so. Raises UnreadableError, with the line, for anything else.

    >>> read_meter("percent = 0.3\ncounts = 1\nmin_capture_ms = 5\ndisplay_per_s = 4", "my-meter.toml").basis
    'as stated in my-meter.toml'
    """
    sheet = parse_toml(text, file=file)
    sheet.only(KEYS)
    percent = sheet.number_of("percent", least=0, most=PERCENT_MOST)
    counts = sheet.number_of("counts", least=0, most=COUNTS_MOST)
    min_capture_ms = sheet.number_of("min_capture_ms", least=CAPTURE_MS[0], most=CAPTURE_MS[1])
    display_per_s = sheet.number_of("display_per_s", least=DISPLAY_PER_S[0], most=DISPLAY_PER_S[1])
    taken = []
    if min_capture_ms is None:
        taken.append(f"MIN hold taken as {TAKEN_MIN_MS:g} ms")
    if display_per_s is None:
        taken.append(f"display taken as {TAKEN_PER_S:g} a second")
    stated = sheet.text_of("basis") or f"as stated in {file}"
    return Meter(
        name=sheet.text_of("name") or file,
        percent=sheet.must("percent", percent, expected="0.5, for ±(0.5 % + counts)"),
        counts=sheet.must("counts", counts, expected="2, for ±(percent + 2 counts)"),
        min_capture_ms=TAKEN_MIN_MS if min_capture_ms is None else min_capture_ms,
        display_per_s=TAKEN_PER_S if display_per_s is None else display_per_s,
        captures=_captures(sheet),
        basis="; ".join([stated, *taken]),
    )


def _captures(sheet: TomlTable) -> frozenset[Capture]:
    """What the meter can hold; the display can always be read."""
    words = sheet.texts_of("captures")
    if not set(words) <= set(Capture):
        raise sheet.refuse("captures", f"a list of: {', '.join(Capture)}")
    return frozenset({Capture.DISPLAY, *(Capture(word) for word in words)}) if words else DEFAULT_CAPTURES

"""The unit's lights: what its sheet says each pattern means, what was seen, and how long it took."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from backprobe.evidence.light_seen import LightSeen
from backprobe.evidence.unit_sheet import Light


@dataclass(frozen=True, slots=True)
class LightOutcome:
    """A light of the sheet, or one that only the technician names, with what was seen of it.

    `as_stated` is True where the pattern of the sheet was seen, False where another was, None where nothing was.
    """

    light: str
    pattern: str | None
    means: str | None
    seen: LightSeen | None
    as_stated: bool | None

    def as_json(self) -> dict[str, object]:
        """The light as answered."""
        return {
            "light": self.light,
            "pattern": self.pattern,
            "means": self.means,
            "seen": None if self.seen is None else self.seen.pattern,
            "after_s": None if self.seen is None else self.seen.after_s,
            "as_stated": self.as_stated,
        }


def lights_of(sheet: Sequence[Light], seen: Iterable[LightSeen]) -> tuple[LightOutcome, ...]:
    """Each light of the sheet in its order, the last look at it first; then those that the sheet does not name."""
    by_name = {_plain(each.light): each for each in seen}
    found = [_outcome(light, by_name.pop(_plain(light.name), None)) for light in sheet]
    return (*found, *(LightOutcome(each.light, None, None, each, None) for each in by_name.values()))


def _outcome(light: Light, seen: LightSeen | None) -> LightOutcome:
    stated = None if seen is None or light.pattern is None else _plain(seen.pattern) == _plain(light.pattern)
    return LightOutcome(light.name, light.pattern, light.means, seen, stated)


def _plain(text: str) -> str:
    return " ".join(text.split()).casefold()

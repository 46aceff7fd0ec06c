"""A receiver's log in NMEA 0183, read line by line into moments: the log may be larger than memory.

Sentences of all talkers are put together by their time; what bears no time (satellites in view, satellites used, speed)
belongs to the moment it stands in. What cannot be believed is passed over, counted by reason, and the first of each
reason kept with its place.

Why an own reader: pynmeagps 1.1.8, pure Python, was tried on the desk and in the browser's Python (Pyodide 314). It
loads in both and agrees on every good sentence (tests/against/test_nmea_readers.py), but knows no line numbers, so that
a fault could not be placed; loses the whole sentence behind one that broke off; and takes twice as long to
read a log as it takes here to read and judge it (docs/reception.md).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from backprobe.errors import SHOWN_TEXT_MAX, Place, Skipped, UnreadableError
from backprobe.evidence.epoch import Epoch
from backprobe.formats.nmea_clock import LogClock, Odd
from backprobe.formats.nmea_fields import MOMENTS, FieldError, said_of
from backprobe.formats.nmea_moment import Moment
from backprobe.formats.nmea_sentence import EXPECTED, Fault, Sentence, sentences_in

PLACES_SHOWN = 3  # of each reason
GIVEN_UP_AFTER = 200_000  # lines without one good sentence: no log, however long it goes on
RECENT = 64  # sentences that are remembered, to know them again
_OF_SATELLITES = frozenset(("GSV", "GSA", "VTG"))

ODD_WORDS = {
    Odd.CLOCK_JUMP: "the receiver's clock jumps here",
    Odd.WEEK_ROLLOVER: "the receiver's date jumps by 1,024 weeks here",
    Odd.CLOCK_STOOD: "the receiver's clock stands still here",
    Odd.GAP: "the log has a gap before this",
}


@dataclass(frozen=True, slots=True)
class NmeaTally:
    """What a log held besides its moments.

    `skipped` counts what was passed over by reason, `odd` what happened to the clock by kind; `places` are the first of
    each of both. `usual_step_s` is the time from one moment to the next, `gap_s` what is missing between them.
    """

    file: str
    sentences: int
    skipped: Mapping[str, int]
    odd: Mapping[str, int]
    places: tuple[Skipped, ...]
    usual_step_s: float
    gap_s: float


class NmeaReader:
    """Reads one log, once: first all `moments`, then the `tally`."""

    def __init__(self, file: str) -> None:
        self._file, self._sentences = file, 0
        self._skipped: Counter[str] = Counter()
        self._odd: Counter[str] = Counter()
        self._places: list[Skipped] = []
        self._clock = LogClock()
        self._moment = Moment()
        self._recent: dict[tuple[str, ...], None] = {}
        self._last: dict[str, tuple[str, ...]] = {}

    def moments(self, lines: Iterable[str]) -> Iterator[Epoch]:
        """The moments in their order. Raises UnreadableError where there is not one good sentence."""
        read = 0
        for read, line in enumerate(lines, start=1):
            for item in sentences_in(line):
                if isinstance(item, Fault):
                    self._pass_over(item, at=(read, line))
                    continue
                self._sentences += 1
                ended = self._taken(item, at=(read, line))
                if ended is not None:
                    yield self._epoch(ended)
            if read >= GIVEN_UP_AFTER and not self._sentences:
                break
        if not self._sentences:
            raise UnreadableError(
                Place(self._file), f"NMEA 0183 sentences ($GPGGA,…*47); none is good in the {read} lines that were read"
            )
        if self._moment.kinds:
            yield self._epoch(self._moment)

    @property
    def tally(self) -> NmeaTally:
        """What was counted while reading."""
        return NmeaTally(
            file=self._file,
            sentences=self._sentences,
            skipped={fault.value: self._skipped[fault.value] for fault in Fault if self._skipped[fault.value]},
            odd={odd.value: self._odd[odd.value] for odd in Odd if self._odd[odd.value]},
            places=tuple(self._places),
            usual_step_s=self._clock.usual_s,
            gap_s=round(self._clock.gap_s, 3),
        )

    def _taken(self, sentence: Sentence, *, at: tuple[int, str]) -> Moment | None:
        """Take a sentence in; the moment that it ended, if it begins another."""
        try:
            if sentence.kind in MOMENTS:
                return self._timed(sentence, at=at)
            if sentence.kind in _OF_SATELLITES:
                self._moment.add_satellites(sentence)
        except FieldError:
            self._pass_over(Fault.BAD_FIELD, at=at)
        return None

    def _timed(self, sentence: Sentence, *, at: tuple[int, str]) -> Moment | None:
        said, current = said_of(sentence), self._moment
        if sentence.kind == "ZDA":
            current.add_date(said)
            return None
        if said.tod_s is not None and self._was_said(sentence, valid=bool(said.valid)):
            self._pass_over(Fault.DOUBLED, at=at)
            return None
        ended = None
        if current.kinds and current.has_other_time(said, sentence):
            ended, self._moment = current, Moment()
        if not self._moment.kinds:
            self._moment.line = at[0]
        self._moment.add(said, sentence)
        return ended

    def _was_said(self, sentence: Sentence, *, valid: bool) -> bool:
        """Whether a logger wrote a sentence again, as those do that lose their place in a buffer.

        A receiver without a fix whose clock stands still says the same again and again: that is no repetition of a log.
        """
        name = sentence.talker + sentence.kind
        key = (name, *sentence.fields)
        stands, self._last[name] = self._last.get(name) == key, key
        if key in self._recent:
            return valid or not stands
        self._recent[key] = None
        if len(self._recent) > RECENT:
            self._recent.pop(next(iter(self._recent)))
        return False

    def _epoch(self, moment: Moment) -> Epoch:
        odd = self._clock.advance(moment.tod_s, moment.day, fixed=moment.fixed)
        if odd is not None:
            self._odd[odd.value] += 1
            if self._odd[odd.value] <= PLACES_SHOWN:
                self._places.append(Skipped(Place(self._file, moment.line), ODD_WORDS[odd]))
        return moment.epoch(self._clock)

    def _pass_over(self, fault: Fault, *, at: tuple[int, str]) -> None:
        self._skipped[fault.value] += 1
        if self._skipped[fault.value] <= PLACES_SHOWN:
            self._places.append(Skipped(Place(self._file, at[0], at[1][:SHOWN_TEXT_MAX]), EXPECTED[fault]))

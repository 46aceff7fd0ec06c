"""What a blade fuse resists: as read in data sheets, else by our own model; what is from memory is only shown."""

from __future__ import annotations

import math

from backprobe.findings import Standing
from backprobe.limits.fuses import COLD_MOHM
from backprobe.physics.span import Span
from backprobe.stages.given import said
from backprobe.stages.join.fuse_opening import Fuse

FUSE_SPREAD = 1.5  # our own model: a fuse in use has up to half more than its data sheet's figure, contacts and all
MODEL_TYPE = "C"  # the one type of which ratings far enough apart were read


def fuse_ohm(fuse: Fuse) -> Span:
    """The resistance of a fuse in use [Ω]: nothing at best, its cold figure likely, half more at most.

    >>> from backprobe.stages.join.fuse_opening import fuse_of
    >>> round(fuse_ohm(fuse_of(10)).likely, 6)
    0.00769
    """
    cold = cold_mohm(fuse) / 1000.0
    return Span(0.0, cold, cold * FUSE_SPREAD)


def cold_mohm(fuse: Fuse) -> float:
    """The cold resistance [mΩ]: as read for this type and rating, else from the line through those that were read.

    The line is straight on a log-log sheet, our own model: the one type with three ratings gives its slope, a type with
    fewer its height.
    """
    own = _read(fuse.type)
    if fuse.rating_A in own:
        return own[fuse.rating_A]
    near = min(own, key=lambda rating_A: (abs(math.log(rating_A / fuse.rating_A)), rating_A))
    return own[near] * _line_mohm(fuse.rating_A) / _line_mohm(near)


def fuse_words(fuse: Fuse) -> str:
    """What the figure of a fuse rests on, in words; empty where it was read in a data sheet.

    >>> from backprobe.stages.join.fuse_opening import fuse_of
    >>> fuse_words(fuse_of(10))
    ''
    """
    if fuse.rating_A in _read(fuse.type):
        return ""
    mohm, standing = COLD_MOHM.get((fuse.type, fuse.rating_A), (None, None))
    beside = "" if mohm is None else f" ({said(mohm)} mΩ {standing}: not used)"
    return f"the fuse's {said(cold_mohm(fuse))} mΩ by our own model{beside}"


def _read(kind: str) -> dict[float, float]:
    """The cold resistances that were read, by rating."""
    rows = COLD_MOHM.items()
    return {rating: mohm for (each, rating), (mohm, standing) in rows if each == kind and standing is _READ}


_READ = Standing.PUBLISHED


def _line_mohm(rating_A: float) -> float:
    """The line through the least and the largest rating that were read [mΩ]."""
    rows = sorted(_read(MODEL_TYPE).items())
    (least_A, least), (most_A, most) = rows[0], rows[-1]
    slope = math.log(most / least) / math.log(most_A / least_A)
    return least * math.exp(slope * math.log(rating_A / least_A))

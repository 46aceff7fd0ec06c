"""How often somebody may try: a bucket of tries for each address that fills again with time. It lives in memory."""

from __future__ import annotations

import threading
import time
from collections.abc import Callable
from dataclasses import dataclass, field

from backprobe.errors import RefusedError

MOST_KNOWN = 10_000  # addresses; beyond that the oldest are forgotten


class TooManyError(RefusedError):
    """Too many tries: `headers` say when to come again."""

    def __init__(self, wait_s: int, what: str = "too many tries") -> None:
        super().__init__(f"{what}; again in {wait_s} s", code="too_many")
        self.headers = {"Retry-After": str(wait_s)}


@dataclass(slots=True)
class Rate:
    """`tries` at once, then one every `each_s` seconds, for each key."""

    tries: int
    each_s: float
    clock_s: Callable[[], float] = time.monotonic
    _full_at: dict[str, float] = field(default_factory=dict)
    _turn: threading.Lock = field(default_factory=threading.Lock)

    def must_wait(self, key: str) -> None:
        """Count a try; raise TooManyError where there are none left."""
        now = self.clock_s()
        with self._turn:
            full_at = max(self._full_at.pop(key, now), now) + self.each_s
            over_s = full_at - now - self.tries * self.each_s
            if over_s > 0:
                self._full_at[key] = full_at - self.each_s
                raise TooManyError(int(over_s) + 1)
            self._full_at[key] = full_at
            while len(self._full_at) > MOST_KNOWN:
                self._full_at.pop(next(iter(self._full_at)))

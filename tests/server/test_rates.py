"""So many tries at once, then one every so often; each address by itself."""

from __future__ import annotations

import pytest

from backprobe.server import rates
from backprobe.server.rates import Rate, TooManyError


def test_tries_come_back_with_time() -> None:
    """3 at once, 1 every 10 s: the fourth waits 10 s; after 10 s there is one, after a minute three again."""
    clock = [0.0]
    rate = Rate(3, 10.0, clock_s=lambda: clock[0])

    waits: list[int] = []

    def tries() -> int:
        for done in range(99):
            try:
                rate.must_wait("a")
            except TooManyError as refusal:
                waits.append(int(refusal.headers["Retry-After"]))
                return done
        return 99

    assert tries() == 3
    clock[0] = 10.0
    assert tries() == 1
    clock[0] = 70.0
    assert tries() == 3
    assert set(waits) == {11}
    rate.must_wait("b")


def test_waiting_is_not_made_longer_by_trying(monkeypatch: pytest.MonkeyPatch) -> None:
    """1000 tries too many change nothing; the oldest addresses are forgotten beyond a limit."""
    clock = [0.0]
    rate = Rate(1, 10.0, clock_s=lambda: clock[0])
    rate.must_wait("a")
    for _ in range(1000):
        with pytest.raises(TooManyError):
            rate.must_wait("a")
    clock[0] = 10.0
    rate.must_wait("a")
    monkeypatch.setattr(rates, "MOST_KNOWN", 2)
    for name in ("b", "c", "d"):
        rate.must_wait(name)
    rate.must_wait("a")

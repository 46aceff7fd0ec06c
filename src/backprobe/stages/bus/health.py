"""How the bus itself does: errors, computers that fall silent, how full it is, and what the log lacks."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.findings import Finding, Limit, Side, Stage, Standing, Verdict, judge
from backprobe.formats.bus_faults import CLOCK_LEAPT, CLOCK_SET_BACK, READER_FAULT, TORN_LINE
from backprobe.stages.bus.caution import minded
from backprobe.stages.bus.heard import Health, Heard, SilentNode

MOST_ERRORS = Limit(
    "bus_errors", 1.0, "per 1000 frames", Side.AT_MOST, "a bus without a fault", Standing.COMMON_PRACTICE
)
MOST_LOAD = Limit(
    "bus_load", 70.0, "%", Side.AT_MOST, "a bus on which late messages still arrive in time", Standing.COMMON_PRACTICE
)
LEAST_S = 10.0  # a shorter log does not show who falls silent
SHOWN = 4
WHAT = {
    "bus_silent": "computers that fall silent",
    "bus_quantities": "quantities on the bus",
    "bus_lost": "lost packets",
    "bus_log": "what the log lacks",
}
LOST_WORDS = {
    TORN_LINE: "lines that hold no whole frame",
    CLOCK_SET_BACK: "times that fall back",
    CLOCK_LEAPT: "times that leap ahead",
    READER_FAULT: "places that cannot be read",
}


def health_findings(heard: Heard) -> Iterator[Finding]:
    """The findings on the bus and on the log."""
    health = heard.health
    if health.nodes or health.eleven_bit:
        yield _errors(heard)
        if health.busiest is not None:
            yield _load(health, health.busiest)
        if health.nodes and heard.length_s >= LEAST_S:
            yield _silent(health)
    if not health.nodes and health.eleven_bit:
        yield _eleven_bit(health)
    if heard.lost_messages:
        yield _lost(heard)
    torn = {reason: heard.skipped[reason] for reason in LOST_WORDS if reason in heard.skipped}
    if torn:
        yield _torn(heard, torn)


def _finding(name: str, verdict: Verdict, *, because: str, then: str | None = None) -> Finding:
    what = WHAT[name]
    return Finding(id=name, stage=Stage.WALKROUND, what=what, verdict=verdict, because=because, next=then)


def _errors(heard: Heard) -> Finding:
    health = heard.health
    share = round(1000 * health.errors_between / heard.frames, 3)
    because = f"{health.errors_between} error frames among {heard.frames} good ones"
    if health.errors_before:
        because += f"; {health.errors_before} before the first good one, as when a logger wakes before the bus does"
    verdict = judge(MOST_ERRORS, share, low=share, high=share)
    then = "leave the bus alone and tell the fleet: a bus with a fault is the workshop's, before anything is fitted"
    return Finding(
        id="bus_errors",
        stage=Stage.WALKROUND,
        what="error frames on the bus",
        verdict=verdict,
        because=because,
        next=None if verdict is Verdict.HOLDS else minded(then),
        value=share,
        low=share,
        high=share,
        unit="per 1000 frames",
        digits=3,
        limit=MOST_ERRORS,
    )


def _load(health: Health, busiest: tuple[float, float]) -> Finding:
    low, high = (round(100 * share, 1) for share in busiest)
    verdict = judge(MOST_LOAD, low, low=low, high=high)
    mean = "" if health.average is None else f"; {100 * health.average[0]:.0f} % on average"
    because = (
        f"{low:.0f} to {high:.0f} % in the busiest second, without stuffed bits and with the most of them{mean}; "
        f"{health.bit_rate_kbit} kbit/s is assumed, a log does not say it"
    )
    then = "do not add a device that sends; tell the fleet"
    return Finding(
        id="bus_load",
        stage=Stage.WALKROUND,
        what="load of the bus in its busiest second",
        verdict=verdict,
        because=because,
        next=None if verdict is Verdict.HOLDS else minded(then),
        value=low,
        low=low,
        high=high,
        unit="%",
        digits=1,
        limit=MOST_LOAD,
    )


def _silent(health: Health) -> Finding:
    if not health.silent:
        talking = "the one computer that talks" if health.nodes == 1 else f"none of {health.nodes} computers"
        because = f"{talking} fell silent while the key was on"
        if health.nodes == 1:
            because = f"{talking} did not fall silent while the key was on"
        return _finding("bus_silent", Verdict.HOLDS, because=because)
    named = "; ".join(_words(each) for each in health.silent[:SHOWN])
    more = len(health.silent) - SHOWN
    because = named + (f"; and {more} more times" if more > 0 else "")
    then = "look whether its fuse, plug or ground was touched; where none was, tell the fleet before anything is fitted"
    return _finding("bus_silent", Verdict.OPEN, because=because, then=minded(then))


def _words(node: SilentNode) -> str:
    after = "and did not come back" if node.back_s is None else f"until {node.back_s:.1f} s"
    return f"computer {node.address} was silent from {node.silent_s:.1f} s {after}, with the key on"


def _eleven_bit(health: Health) -> Finding:
    because = f"all {health.eleven_bit} frames have 11-bit identifiers, each maker's own: they are counted, not guessed"
    then = "log the diagnostic quantities with an adapter that writes them as CSV, or a heavy vehicle's J1939 bus"
    return _finding("bus_quantities", Verdict.OPEN, because=because, then=minded(then))


def _lost(heard: Heard) -> Finding:
    many = heard.lost_messages
    because = (
        f"{many} long {'message lacks' if many == 1 else 'messages lack'} packets: the log does not hold all frames"
    )
    then = "log again with a logger that keeps up, or a shorter lead to it"
    return _finding("bus_lost", Verdict.THIN, because=because, then=minded(then))


def _torn(heard: Heard, torn: dict[str, int]) -> Finding:
    counted = ", ".join(f"{count} {LOST_WORDS[reason]}" for reason, count in torn.items())
    first = f"; the first: {heard.places[0]}" if heard.places else ""
    return _finding("bus_log", Verdict.THIN, because=f"passed over: {counted}{first}")

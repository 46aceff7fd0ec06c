"""The answer to one receiver's log: its figures, findings and notes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from backprobe.evidence.reception import Reception
from backprobe.findings import Finding, Verdict, rounded, worst
from backprobe.formats.nmea_0183 import ODD_WORDS
from backprobe.formats.nmea_clock import Odd
from backprobe.formats.nmea_sentence import EXPECTED, Fault
from backprobe.stages.mount.reception import figures
from backprobe.stages.mount.reception.findings import reception_findings
from backprobe.stages.mount.reception.sector import Sector, blocked_sectors


@dataclass(frozen=True, slots=True)
class ReceptionAnswer:
    """A log with what it came to."""

    log: Reception
    findings: tuple[Finding, ...]
    sectors: tuple[Sector, ...]
    heading_deg: float | None = None

    @property
    def verdict(self) -> Verdict:
        """The worst of the findings."""
        return worst(finding.verdict for finding in self.findings)

    def as_json(self) -> dict[str, object]:
        """The answer as plain JSON values."""
        log, used, hdop = self.log, figures.used(self.log), figures.hdop(self.log)
        scatter = figures.scatter(log)
        return {
            "ok": True,
            "sentences": log.sentences,
            "skipped": dict(log.skipped),
            "epochs": log.epochs,
            "fix_share": rounded(figures.fix_share(log), 4),
            "first_fix_s": rounded(figures.first_fix_s(log), 1),
            "used": {"median": None if used is None else rounded(used[0], 1)},
            "hdop": {
                "median": None if hdop is None else rounded(hdop[0], 2),
                "p95": rounded(figures.hdop_p95(log), 2),
            },
            "cn0_top4_dBHz": rounded(figures.cn0_top4_dBHz(log), 1),
            "scatter_m": None
            if scatter is None
            else {"r50": rounded(scatter.r50_m[0], 2), "r95": rounded(scatter.r95_m[0], 2)},
            "blocked": [
                {"from_deg": each.from_deg, "to_deg": each.to_deg, "strength": each.strength} for each in self.sectors
            ],
            "verdict": str(self.verdict),
            "findings": [finding.as_json() for finding in self.findings],
            "notes": list(notes_of(log)),
        }


def answer_of(log: Reception, *, heading_deg: float | None = None) -> ReceptionAnswer:
    """Judge a log."""
    found = reception_findings(log, heading_deg=heading_deg)
    sectors = () if figures.moved(log) or not log.told else blocked_sectors(log.bins)
    return ReceptionAnswer(log, found, sectors, heading_deg)


def notes_of(log: Reception) -> Iterator[str]:
    """What else must be known of a log: what is missing in it, what was passed over, and where first."""
    if figures.begins_fixed(log):
        yield "The log begins with a position: how long the first one takes does not show."
    if log.rest is None:
        yield "No minute of rest in it: no scatter."
    elif figures.held_still(log.rest):
        yield "The receiver holds its position while it rests: no scatter shows."
    yield from passed_over(log)


def passed_over(log: Reception) -> Iterator[str]:
    """What of a log could not be believed, in numbers, and where first."""
    for odd, words in _ODD.items():
        if odd in log.odd:
            times = "once" if log.odd[odd] == 1 else f"{log.odd[odd]} times"
            yield f"{words} {times}{_first_lines(log, ODD_WORDS[odd])}."
    for fault, words in _SKIPPED.items():
        if fault in log.skipped:
            yield f"{log.skipped[fault]} {words}{_first_lines(log, EXPECTED[fault])}."


def _first_lines(log: Reception, expected: str) -> str:
    """Where something happened first: ', first in lines 199, 1175, 1575'."""
    lines = [str(each.place.line) for each in log.places if each.expected == expected and each.place.line is not None]
    return f", first in line{'s' if len(lines) > 1 else ''} {', '.join(lines)}" if lines else ""


_SKIPPED = {
    Fault.BAD_CHECKSUM: "with a wrong checksum (letters were lost, or one sentence runs into another)",
    Fault.CUT_OFF: "broken off",
    Fault.NOT_A_SENTENCE: "lines, or parts of lines, that are no sentence",
    Fault.BAD_FIELD: "with figures that cannot be",
    Fault.DOUBLED: "written twice by the logger",
}
_ODD = {
    Odd.CLOCK_JUMP: "The receiver's clock jumped",
    Odd.WEEK_ROLLOVER: "The receiver's date jumped by 1,024 weeks",
    Odd.CLOCK_STOOD: "The receiver's clock stood still",
    Odd.GAP: "The log has a gap",
}

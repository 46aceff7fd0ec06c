"""How each lead of the unit was joined to the vehicle, as the technician wrote it down."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Method(StrEnum):
    """How two wires were joined, or a lead was fixed to the frame."""

    WRAPPED_SPLICE = "wrapped_splice"
    CRIMPED_BUTT = "crimped_butt"
    SOLDERED_SLEEVE = "soldered_sleeve"
    TAP_CONNECTOR = "tap_connector"
    FUSE_TAP = "fuse_tap"
    RING_TERMINAL = "ring_terminal"
    TWISTED_LEADS = "twisted_leads"

    @property
    def words(self) -> str:
        """The method as it is said.

        >>> Method.FUSE_TAP.words
        'fuse tap'
        """
        return _WORDS[self]


_WORDS = {
    Method.WRAPPED_SPLICE: "wrapped and tied splice",
    Method.CRIMPED_BUTT: "crimped butt connector",
    Method.SOLDERED_SLEEVE: "soldered sleeve",
    Method.TAP_CONNECTOR: "tap connector",
    Method.FUSE_TAP: "fuse tap",
    Method.RING_TERMINAL: "ring terminal",
    Method.TWISTED_LEADS: "pair of leads twisted together",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Joint:
    """What became of one lead of the unit.

    `lead` is a lead of the unit's sheet. `wire` is the vehicle's wire, named as in the readings; None for a ground at
    the frame and for an unused lead. `place` is where the joint or the ground is, `length_m` how long the lead is from
    there to the unit, `fuse_A` the fuse at the joint. `end` says what was done with the end of an unused lead, `undo`
    how the joint is taken out again. `strip_mm` is how much was stripped, `overlap_mm` how far the new insulation goes
    over the old on each side, `pull_N` what a sample crimp stood, `drop_mV` the drop across the joint at `drop_A`.
    `bare_mm` is the bare wire between insulation and barrel, `turns` how often a wrapped splice goes round.
    Of a fuse tap `right_way` says whether the live terminal feeds both fuses, `tap_most_A` what it may carry in all; of
    a splice `near_module` whether it is near the module that the wire feeds.
    `fuse_type` is C, E or F of ISO 8820-3, `hottest_C` how hot it gets at the joint. Of an unused lead `cut_mm` says
    how long it was left, `capped` whether its end is insulated, `tied_back` whether it is held.
    """

    lead: str
    wire: str | None = None
    method: Method | None = None
    fuse_A: float | None = None
    fuse_type: str | None = None
    right_way: bool | None = None
    tap_most_A: float | None = None
    near_module: bool | None = None
    place: str | None = None
    length_m: float | None = None
    end: str | None = None
    undo: str | None = None
    strip_mm: float | None = None
    overlap_mm: float | None = None
    bare_mm: float | None = None
    turns: float | None = None
    strain_relief: bool | None = None
    damp: bool | None = None
    drip_loop: bool | None = None
    hottest_C: float | None = None
    pull_N: float | None = None
    tugged: bool | None = None
    drop_mV: float | None = None
    drop_A: float | None = None
    cut_mm: float | None = None
    capped: bool | None = None
    tied_back: bool | None = None

    @property
    def left(self) -> str | None:
        """How the end of a lead that is not used was left, in words; None where it is used, or nothing was said.

        >>> Joint(lead="door", cut_mm=60, capped=True, tied_back=True).left
        'cut to 60 mm, capped, tied back'
        """
        if self.wire:
            return None
        cut = "" if self.cut_mm is None else f"cut to {self.cut_mm:g} mm"
        said = self.end or ", ".join(
            word for word in (cut, _done(self.capped, "capped"), _done(self.tied_back, "tied back")) if word
        )
        return said or None


def _done(flag: bool | None, word: str) -> str:
    return "" if flag is None else word if flag else f"not {word}"

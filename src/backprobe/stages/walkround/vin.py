"""Is the vehicle identification number right? Length, characters, check digit, model year (49 CFR 565.15)."""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.findings import Finding, Stage, Verdict
from backprobe.limits.vin import VALUES
from backprobe.stages.walkround.vin_number import (
    CHECK_AT,
    LENGTH,
    YEAR_AT,
    check_digit,
    has_right_check_digit,
    is_north_american,
    is_well_formed,
    model_years,
    tidied,
)
from backprobe.stages.walkround.vin_repair import Repair, repairs

WHAT = {"vin_form": "form of the VIN", "vin_check_digit": "check digit of the VIN", "vin_model_year": "model year"}
SHOWN_REPAIRS = 3
READ_AGAIN = "Read the VIN again, from the plate at the windscreen or the door frame."


@dataclass(frozen=True, slots=True, kw_only=True)
class VinCheck:
    """What was found of a VIN: as `typed`, tidied (`vin`), and in words what was `tidied`.

    `judged` says whether check digit and model year were judged: only for well-formed VINs of North America.
    `years` are the model years that remain possible; `repairs` the misreadings that would make it right.
    """

    typed: str
    vin: str
    tidied: tuple[str, ...]
    judged: bool
    years: tuple[int, ...]
    repairs: tuple[Repair, ...]
    findings: tuple[Finding, ...]


def check_vin(
    typed: str, *, heavy: bool | None = None, stated_year: int | None = None, job_year: int | None = None
) -> VinCheck:
    """The findings on a VIN as typed: its form, and for North America its check digit and model year.

    `heavy` is True for vehicles over 4536 kg, None where that is not known; `stated_year` is the model year that
    the papers give; `job_year` the year of the work. Nothing is ever corrected, only proposed.

    >>> [str(finding.verdict) for finding in check_vin("1M8GDM9AXKP042788", heavy=False).findings]
    ['holds', 'holds', 'holds']
    """
    vin, said = tidied(typed)
    proposed = repairs(vin)
    judged = is_well_formed(vin) and is_north_american(vin)
    years = model_years(vin, heavy=heavy, job_year=job_year) if judged else ()
    findings = [_form(vin, proposed, said=said)]
    if judged:
        findings += [_check_digit(vin, proposed), _model_year(vin, years, stated=stated_year)]
    return VinCheck(
        typed=typed, vin=vin, tidied=said, judged=judged, years=years, repairs=proposed, findings=tuple(findings)
    )


def _finding(name: str, verdict: Verdict, *, because: str, then: str | None = None) -> Finding:
    return Finding(id=name, stage=Stage.WALKROUND, what=WHAT[name], verdict=verdict, because=because, next=then)


def _form(vin: str, proposed: tuple[Repair, ...], *, said: tuple[str, ...]) -> Finding:
    """Whether the VIN has the right length and only characters that may stand in one."""
    if not vin:
        return _finding("vin_form", Verdict.OPEN, because="no VIN was given", then=READ_AGAIN)
    fault = _fault(vin)
    if fault is not None:
        return _finding("vin_form", Verdict.FAILS, because=fault, then=_look_again(proposed))
    notes = list(said)
    if not is_north_american(vin):
        notes.append(f"check digit and model year are not judged: it begins with {vin[0]}, North America with 1 to 5")
    because = "; ".join(["17 characters, each one that may stand in a VIN", *notes])
    return _finding("vin_form", Verdict.HOLDS, because=because)


def _fault(vin: str) -> str | None:
    """What is wrong with the form of the VIN, in words; None where nothing is."""
    if len(vin) != LENGTH:
        old = "; vehicles from before 1981 may have shorter ones" if len(vin) < LENGTH else ""
        return f"it has {len(vin)} characters, a VIN has {LENGTH}{old}"
    wrong = [f"{c} in position {at + 1}" for at, c in enumerate(vin) if c not in VALUES]
    if not wrong:
        return None
    hint = " (I is mostly a 1, O and Q a 0)" if set(vin) & set("IOQ") else ""
    return f"{', '.join(wrong)}: a VIN has digits and the letters A to Z without I, O and Q{hint}"


def _check_digit(vin: str, proposed: tuple[Repair, ...]) -> Finding:
    """Whether position 9 is what the other sixteen characters ask for."""
    if has_right_check_digit(vin):
        because = f"position 9 is {vin[CHECK_AT]}, as the other 16 characters ask for (49 CFR 565.15)"
        return _finding("vin_check_digit", Verdict.HOLDS, because=because)
    because = f"position 9 is {vin[CHECK_AT]}, the other 16 characters ask for {check_digit(vin)} (49 CFR 565.15)"
    return _finding("vin_check_digit", Verdict.FAILS, because=because, then=_look_again(proposed))


def _look_again(proposed: tuple[Repair, ...]) -> str:
    """The next thing to do about a wrong VIN: where on the plate to look, the likeliest misreading first."""
    if not proposed:
        return READ_AGAIN
    likely = "; or ".join(f"{repair.words} ({repair.vin})" for repair in proposed[:SHOWN_REPAIRS])
    more = len(proposed) - SHOWN_REPAIRS
    rest = f"; {more} less likely {'misreading' if more == 1 else 'misreadings'} would fit too" if more > 0 else ""
    return f"{READ_AGAIN} It would check out if {likely}{rest}."


def _model_year(vin: str, years: tuple[int, ...], *, stated: int | None) -> Finding:
    """Which model year position 10 says, and whether the papers agree."""
    code = vin[YEAR_AT]
    if not has_right_check_digit(vin):
        return _finding(
            "vin_model_year", Verdict.OPEN, because="the VIN itself is in doubt", then="Settle the VIN first."
        )
    if not years:
        because = f"{code} in position 10 stands for no model year that is possible here (49 CFR 565.15)"
        return _finding("vin_model_year", Verdict.FAILS, because=because, then=READ_AGAIN)
    possible = " or ".join(str(year) for year in years)
    because = f"{code} in position 10 stands for {possible} (49 CFR 565.15)"
    if stated is None and len(years) > 1:
        then = f"State which, {possible}, from the maker's plate or the papers."
        return _finding("vin_model_year", Verdict.OPEN, because=because, then=then)
    if stated is not None and stated not in years:
        then = f"Compare VIN and papers: {stated} was stated."
        return _finding("vin_model_year", Verdict.FAILS, because=because, then=then)
    agreed = f"; {stated} was stated" if stated is not None else ""
    return _finding("vin_model_year", Verdict.HOLDS, because=because + agreed)

"""May a wire of the right role be tapped on this evidence? It is left alone when anything stands against it."""

from __future__ import annotations

from enum import StrEnum

from backprobe.evidence.keys import Key
from backprobe.findings import Verdict
from backprobe.stages.probe.belief import Belief, answered
from backprobe.stages.probe.likelihood import is_loaded
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.slots import ROLE_OF, Fitness, choosable

SURE = 0.98  # a wire is chosen from this probability on; the slot's requirements must be met besides (slots.py)
SURE_WITHOUT_CRANK = 0.95  # an electric or hybrid vehicle has one telling position fewer: lamps look more alike
HALF_MOST = 0.01  # the most that it may look like a converter or a centre tap
CHARGING_V = 13.5  # a battery that is being charged beyond doubt (12 V system); common practice, no source


class Obstacle(StrEnum):
    """What stands against tapping a wire, in words."""

    CONTRADICTED = "one figure contradicts the others: not to be tapped before it was measured again"
    UNSURE = "not sure enough to tap it"
    NOT_COMPARED = "its level with the engine running is low for a charged battery: measure another live wire there too"
    UNFIT = "the limits are not met"
    NOT_MEASURED = "not everything was measured"
    TOO_THIN = "too thin to tap it: a better capture may be had, or the range ends too far below the limit"


def obstacle(belief: Belief, fit: Fitness, *, setup: Setup) -> Obstacle | None:
    """The first thing that stands against tapping the wire for the slot of `fit`, or None."""
    if fit.verdict is Verdict.FAILS:
        return Obstacle.UNFIT
    if _contradicted(belief):
        return Obstacle.CONTRADICTED
    if fit.verdict is Verdict.OPEN:
        return Obstacle.NOT_MEASURED
    if not choosable(fit, belief, setup=setup):
        return Obstacle.TOO_THIN
    sure = SURE if setup.has_crank else SURE_WITHOUT_CRANK
    if belief.roles[ROLE_OF[fit.slot]] < sure or belief.half_voltage > HALF_MOST:
        return Obstacle.UNSURE
    return None if _follows_charging(belief, setup) else Obstacle.NOT_COMPARED


def _follows_charging(belief: Belief, setup: Setup) -> bool:
    """Whether its level with the engine running is the battery's: beyond doubt, or beside another wire's.

    A pulled-up line rests a little under the battery, and an alternator may charge little: without another wire to
    compare with, a low level there cannot be told from either, unless the wire stays live under a load.
    """
    found = belief.at(Key.RUNNING)
    enough_V = CHARGING_V * setup.system_V / 12.0
    return Key.RUNNING in belief.compared or any(is_loaded(r) or r.volts >= enough_V for r in found)


def _contradicted(belief: Belief) -> bool:
    """Whether a doubtful reading still stands unanswered by later ones that agree with the rest."""
    return any(not answered(belief, reading) for reading in belief.doubtful)

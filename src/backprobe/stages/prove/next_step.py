"""The one thing to do next."""

from __future__ import annotations

from backprobe.findings import Verdict
from backprobe.stages.prove.patterns import WORDS
from backprobe.stages.prove.proof import Proof
from backprobe.stages.prove.turns import Outcome, TurnState

START_CIRCUIT = (
    "Take the ignition lead off at once and find the wire again: it seems to sit on the start circuit, which must "
    "never be tapped."
)
NOTHING = "Look for the ignition lead: connected at its tap, in its pin, and the unit's ignition setting."


def next_step(proof: Proof) -> str | None:
    """What to do now, the most pressing first; None where nothing is left."""
    if proof.alignment is not None and not proof.patterns:
        wiring = proof.alignment.fit.wiring.name
        if wiring == "start" and proof.alignment.fit.match.pairs:
            return START_CIRCUIT
        if wiring == "nothing" and _with(proof, TurnState.MISSING):
            return NOTHING
    if proof.patterns:
        return WORDS[proof.patterns[0].id].look_at
    missing = _with(proof, TurnState.MISSING)
    if missing:
        return f"Turn the key through the script again: {_named(missing)} was not reported."
    if proof.position.verdict is Verdict.FAILS:
        return WORDS_POSITION
    unclear = _with(proof, TurnState.OPEN)
    if unclear:
        return f"Turn the key through the script again (backprobe prove --plan): {_named(unclear)} cannot be told."
    return _last(proof)


WORDS_POSITION = "Look at the antenna and its view of the sky: the unit reports another place than the vehicle's."


def _last(proof: Proof) -> str | None:
    """What is left where every turn was reported."""
    if proof.false_events:
        return "Turn the key through the script again: the unit reported an ignition event for which there is no turn."
    if proof.supply.verdict in (Verdict.FAILS, Verdict.THIN):
        return "Look at the supply's tap, fuse, joints and ground: the voltage falls too far when the unit transmits."
    if proof.position.verdict is Verdict.OPEN:
        return "Give the place where the vehicle stands, and wait until the unit reports a position."
    if proof.position.verdict is Verdict.THIN:
        return "Fetch the reports again once the unit has had a clear sky for ten minutes."
    if not proof.parked.night:
        return "Leave the vehicle parked overnight and fetch the reports again: that proves constant and off fully."
    return None


def _with(proof: Proof, state: TurnState) -> list[Outcome]:
    return [outcome for outcome in proof.turns if outcome.state is state]


def _named(turns: list[Outcome]) -> str:
    first = turns[0].row.turn
    more = f" and {len(turns) - 1} more" if len(turns) > 1 else ""
    return f"'{first.key}' at {first.written}{more}"

"""Single samples that no flywheel can follow, taken out of an engine speed."""

from __future__ import annotations

from dataclasses import dataclass

QUICK_S = 0.1  # samples closer than this are neighbours; an engine takes longer to stop and run again


@dataclass(slots=True)
class Despiker:
    """Gives each sample back when the next one is there: of neighbours the middle of it and those beside it.

    An edge stays where it is; one sample that leaps and comes back is another sender's, or a bit that fell over.
    """

    _before: float | None = None
    _held: tuple[float, float] | None = None

    def take(self, time_s: float, value: float) -> tuple[tuple[float, float], ...]:
        """The sample that is ready now that the next one has come; nothing after the first.

        >>> despiker = Despiker()
        >>> [despiker.take(i / 50, value) for i, value in enumerate((700.0, 0.0, 690.0, 695.0))]
        [(), ((0.0, 700.0),), ((0.02, 690.0),), ((0.04, 690.0),)]
        """
        held, before = self._held, self._before
        self._held = time_s, value
        if held is None:
            return ()
        if time_s - held[0] > QUICK_S:
            self._before = None
            return (held,)
        self._before = held[1]
        return ((held[0], held[1] if before is None else sorted((before, held[1], value))[1]),)

    def rest(self) -> tuple[tuple[float, float], ...]:
        """The last sample, which has no neighbour behind it."""
        held, self._held, self._before = self._held, None, None
        return () if held is None else (held,)

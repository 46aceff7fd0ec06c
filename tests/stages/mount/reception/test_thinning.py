"""Positions are thinned evenly."""

from backprobe.stages.mount.reception.thinning import MOST, Thinned


def test_few_are_kept_whole() -> None:
    """Up to 1,024 all of them."""
    kept = Thinned()
    for n in range(MOST):
        kept.add(float(n), -float(n))
    assert list(kept.east_m) == [float(n) for n in range(MOST)]
    assert len(kept) == MOST


def test_many_are_thinned_evenly() -> None:
    """Of 100,000 every 128th: 100,000 / 128 = 781.25, so 782 with the first; none twice, none out of step."""
    kept = Thinned()
    for n in range(100_000):
        kept.add(float(n), 0.0)
    assert list(kept.east_m) == [128.0 * n for n in range(782)]
    assert len(kept) == 100_000

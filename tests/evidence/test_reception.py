"""What is kept of a receiver's log."""

from tests.samples.receptions import sky_bins

from backprobe.evidence.reception import SkyBin


def test_means_of_a_piece_of_the_sky() -> None:
    """Three times at 100°, 101°, 102° and once unheard at 105°: 102° on average; 40, 41, 42 dB-Hz while heard: 41."""
    one = SkyBin("G01", 6, 4, 3, 1, 3, 1230, 408, 180)
    assert (one.times, one.az_deg, one.el_deg, one.cn0_dBHz) == (4, 102.0, 45.0, 41.0)


def test_never_heard_has_no_strength() -> None:
    """None, not 0 dB-Hz."""
    assert sky_bins({100: 0})[0].cn0_dBHz is None

"""Copper against NBS Handbook 100 (1966), as quoted by others; the handbook itself was not read."""

import pytest

from backprobe.physics.wire import IACS_OHM_MM2_PER_M, at_temperature_ohm


def test_mass_and_volume_resistivity_agree():
    """0.15328 Ω·g/m² over 8.89 g/cm³ is 0.017242 Ω·mm²/m; 1 / 58 S is 0.017241 (zmVault note of 2026)."""
    assert pytest.approx(0.15328 / 8.89, rel=1e-4) == IACS_OHM_MM2_PER_M
    assert pytest.approx(1 / 58, rel=1e-4) == IACS_OHM_MM2_PER_M


@pytest.mark.parametrize("temperature_C", [-40.0, 0.0, 60.0, 75.0, 105.0])
def test_the_temperature_coefficient(temperature_C):
    """1 + 0.00393 (T - 20), from memory and in a mailing list (si-list 2000); ours is 1 / 254.5 = 0.0039293."""
    assert at_temperature_ohm(1.0, temperature_C) == pytest.approx(1 + 0.00393 * (temperature_C - 20), rel=1e-4)


@pytest.mark.parametrize(("temperature_C", "factor"), [(5, 1.064), (25, 0.980), (50, 0.893), (75, 0.820), (100, 0.758)])
def test_correction_factors_to_20_degrees(temperature_C, factor):
    """Factors that turn a resistance at T to 20 °C, as uecables.com prints them after IEC 60228: within 0.4 %.

    Its factors are those of 0.004 per kelvin.
    """
    assert 1 / at_temperature_ohm(1.0, temperature_C) == pytest.approx(factor, rel=4e-3)


def test_the_aircraft_makers_ratio():
    """FAA AC 43.13-1B 11-66: a wire at T2 may be 254.5 / (234.5 + T2) as long as at 20 °C."""
    assert 1 / at_temperature_ohm(1.0, 105.0) == pytest.approx(254.5 / (234.5 + 105.0))

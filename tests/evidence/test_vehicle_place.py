"""Where the vehicle stands."""

from __future__ import annotations

import pytest

from backprobe.evidence.vehicle_place import VehiclePlace


def test_a_place_need_not_say_how_well_it_is_known():
    """Without an accuracy none is made up; degrees are given by name, so that they cannot be mixed up."""
    place = VehiclePlace(lat_deg=-33.1, lon_deg=151.2)
    assert (place.lat_deg, place.lon_deg, place.accuracy_m) == (-33.1, 151.2, None)
    with pytest.raises(TypeError):
        VehiclePlace(-33.1, 151.2)

"""Moisture of wood outdoors, 1998: places it tells of, reckoned again from the normals that are held."""

from __future__ import annotations

import pytest

from speclint.science.wood_moisture import equilibrium_moisture
from speclint.tables.stations import find_station
from tests.published.printed import printed
from tests.published.printed_rows import cases, rows

Row = dict[str, str]


@pytest.mark.published("fpl-rn-0268", "outdoor places")
@pytest.mark.parametrize("row", cases("fpl-rn-0268_places"))
def test_a_month_outdoors_has_the_printed_moisture(row: Row) -> None:
    assert printed(row["printed"]) == _end(row)


@pytest.mark.published("fpl-rn-0268", "outdoor places")
def test_later_normals_come_within_a_percent_or_so_of_every_place() -> None:
    apart = [abs(float(row["printed"]) - _end(row)) for row in rows("fpl-rn-0268_places")]
    assert (8, True) == (len(apart), max(apart) < 1.25)


def _end(row: Row) -> float:
    """Moisture content of the driest or the wettest month. [%]"""
    station = find_station(row["station"])
    assert station.humidity is not None
    months = [equilibrium_moisture(t, h) for t, h in zip(station.mean_temperature, station.humidity, strict=True)]
    return min(months) if row["end"] == "driest" else max(months)

"""Wood Handbook, 2010: moisture in air, movement, life of finishes."""

from __future__ import annotations

import pytest

from speclint.science.finish import finish_life, finish_life_on_decking, finish_life_on_wood
from speclint.science.wood_moisture import change_coefficient, equilibrium_moisture, width_change, width_change_wide
from tests.published.convert import INCH, celsius
from tests.published.printed import printed
from tests.published.printed_rows import cases

Row = dict[str, str]


@pytest.mark.published("fpl-gtr-190", "Table 4-2")
@pytest.mark.parametrize("row", cases("fpl-gtr-190_table-4-2"))
def test_wood_comes_to_rest_at_the_printed_moisture(row: Row) -> None:
    computed = equilibrium_moisture(celsius(float(row["temperature_f"])), float(row["humidity"]))
    assert printed(row["printed"]) == computed


@pytest.mark.published("fpl-gtr-190", "Table 13-5")
@pytest.mark.parametrize("row", cases("fpl-gtr-190_table-13-5"))
def test_shrinkage_gives_the_printed_change_coefficient(row: Row) -> None:
    assert printed(row["printed"]) == change_coefficient(float(row["shrinkage"]), float(row["start"]))


@pytest.mark.published("fpl-gtr-190", "Eq. 13-2")
@pytest.mark.parametrize("row", cases("fpl-gtr-190_eq-13-2"))
def test_a_board_changes_width_as_printed(row: Row) -> None:
    computed = width_change(
        float(row["width_mm"]) / 1000, float(row["coefficient"]), float(row["before"]), float(row["after"])
    )
    assert printed(row["printed"]) == computed * 1000


@pytest.mark.published("fpl-gtr-190", "Eq. 13-3")
@pytest.mark.parametrize("row", cases("fpl-gtr-190_eq-13-3"))
def test_a_board_dried_from_wet_changes_width_as_worked_by_hand(row: Row) -> None:
    width = float(row["width_in"]) * INCH
    computed = width_change_wide(width, float(row["shrinkage"]), float(row["before"]), float(row["after"]))
    assert printed(row["printed"]) == computed / INCH


@pytest.mark.published("fpl-gtr-190", "Table 16-5")
@pytest.mark.parametrize("row", cases("fpl-gtr-190_table-16-5"))
def test_a_finish_lasts_the_printed_years(row: Row) -> None:
    shortest, longest = finish_life(row["family"])
    assert printed(row["printed"]) == (shortest if row["end"] == "shortest" else longest)


@pytest.mark.published("fpl-gtr-190", "Table 16-4")
@pytest.mark.parametrize("row", cases("fpl-gtr-190_table-16-4"))
def test_a_finish_lasts_the_recalled_years_on_its_wood(row: Row) -> None:
    if row["wood"] == "decking":
        shortest, longest = finish_life_on_decking(row["family"], row["texture"])
    else:
        shortest, longest = finish_life_on_wood(row["family"], row["wood"], row["texture"])
    assert printed(row["printed"]) == (shortest if row["end"] == "shortest" else longest)

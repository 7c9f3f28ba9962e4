"""Log standard, 2007: fibre saturation, shrinkage of a stack, compaction."""

from __future__ import annotations

import pytest

from speclint.science.settlement import compaction_allowance, stack_shrinkage
from speclint.science.wood_moisture import fibre_saturation, width_change_wide
from tests.published.convert import INCH
from tests.published.printed import printed
from tests.published.printed_rows import cases, rows

Row = dict[str, str]


@pytest.mark.published("icc-400-2007", "Section 304, fibre saturation by species")
@pytest.mark.parametrize("row", cases("icc-400-2007_fibre-saturation"))
def test_a_species_has_the_listed_fibre_saturation(row: Row) -> None:
    assert printed(row["printed"]) == fibre_saturation(row["species"])


@pytest.mark.published("icc-400-2007", "Section 304, shrinkage of stacked logs")
@pytest.mark.parametrize("row", cases("icc-400-2007_shrinkage"))
def test_a_stack_of_logs_loses_the_height_worked_by_hand(row: Row) -> None:
    assert printed(row["printed"]) == _shrinkage(row) / INCH


@pytest.mark.published("icc-400-2007", "Section 304, shrinkage of stacked logs")
def test_the_log_standard_and_the_wood_handbook_agree_on_shrinkage_from_green() -> None:
    green = [row for row in rows("icc-400-2007_shrinkage") if row["saturation"] == "30"]
    by_handbook = [
        -width_change_wide(float(r["height_in"]), float(r["shrinkage"]), float(r["design"]), float(r["service"]))
        for r in green
    ]
    assert green
    assert by_handbook == pytest.approx([_shrinkage(row) / INCH for row in green])


@pytest.mark.published("icc-400-2007", "compaction of coped logs")
@pytest.mark.parametrize("row", cases("icc-400-2007_compaction"))
def test_coped_logs_compact_by_the_printed_share(row: Row) -> None:
    assert printed(row["printed"]) == 100 * compaction_allowance(row["scribed"] == "yes")


def _shrinkage(row: Row) -> float:
    return stack_shrinkage(
        float(row["height_in"]) * INCH,
        float(row["design"]),
        float(row["service"]),
        float(row["shrinkage"]),
        float(row["saturation"]),
    )

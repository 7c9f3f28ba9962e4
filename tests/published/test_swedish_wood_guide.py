"""The factor method of decay design, in its web edition: the worked deck, forward and back, and every factor."""

from __future__ import annotations

import math

import pytest

from speclint.science.decay_design import (
    STANDINGS,
    consequence_factor,
    detail_factor,
    exposure_index,
    exposure_over_resistance,
    ground_factor,
    local_exposure_factor,
    resistance,
    resistance_between,
    shelter_factor,
)
from tests.published.printed import printed
from tests.published.printed_rows import cases

Row = dict[str, str]
HALMSTAD = 1.26
FACTORS = {
    "local": local_exposure_factor,
    "detail": detail_factor,
    "consequence": consequence_factor,
    "resistance": resistance,
}


def exposure(row: Row) -> float:
    ground = ground_factor(float(row["ground"]))
    return exposure_index(local_exposure_factor("moderate"), 1.0, ground, detail_factor(row["detail"]), HALMSTAD)


@pytest.mark.published("swedish-wood-guide", "example of a deck")
@pytest.mark.parametrize("row", cases("swedish-wood-guide_deck"))
def test_a_detail_of_the_deck_has_the_printed_exposure(row: Row) -> None:
    weighed = consequence_factor(row["consequence"]) * exposure(row)
    assert (printed(row["characteristic"]), printed(row["printed"])) == (exposure(row), weighed)


@pytest.mark.published("swedish-wood-guide", "example of a deck, from the printed exposure back")
@pytest.mark.parametrize("row", cases("swedish-wood-guide_deck"))
def test_the_factor_of_a_detail_comes_back_from_the_printed_exposure(row: Row) -> None:
    weighed = float(row["printed"]) / consequence_factor(row["consequence"])
    back = weighed / (HALMSTAD * ground_factor(float(row["ground"])))
    assert detail_factor(row["detail"]) == pytest.approx(back, rel=0.006)


def test_the_last_exposure_of_the_deck_is_printed_cut_off_and_not_rounded() -> None:
    last = exposure({"ground": "0.5", "detail": "poor"})
    assert (2.01, 2.02) == (math.floor(100 * last) / 100, round(last, 2))


@pytest.mark.published("swedish-wood-guide", "example of a deck, verdicts")
@pytest.mark.parametrize("row", cases("swedish-wood-guide_verdicts"))
def test_larch_is_enough_or_too_little_as_the_example_says(row: Row) -> None:
    classes = row["wood"].split()
    resists = resistance(classes[0]) if len(classes) == 1 else resistance_between(*classes)
    ratio = exposure_over_resistance(float(row["exposure"]), 1.0, resists)
    assert row["printed"] == ("enough" if ratio <= 1 else "too little")


@pytest.mark.published("swedish-wood-guide", "factors and classes")
@pytest.mark.parametrize("row", cases("swedish-wood-guide_factors"))
def test_a_word_stands_for_the_printed_factor(row: Row) -> None:
    assert printed(row["printed"]) == FACTORS[row["factor"]](row["word"])


@pytest.mark.parametrize("row", cases("swedish-wood-guide_factors"))
def test_a_word_says_how_far_its_factor_was_read(row: Row) -> None:
    assert row["standing"] == ("published" if row["factor"] == "consequence" else STANDINGS[row["word"]])


@pytest.mark.published("swedish-wood-guide", "shelter and distance to the ground")
@pytest.mark.parametrize("row", cases("swedish-wood-guide_distances"))
def test_a_distance_has_the_printed_factor(row: Row) -> None:
    depth = float(row["depth"])
    found = ground_factor(depth) if row["factor"] == "ground" else shelter_factor(float(row["reach"]), depth)
    assert printed(row["printed"]) == found


def test_an_unknown_word_is_refused_with_the_known_ones() -> None:
    with pytest.raises(ValueError, match=r"^detail: wanted one of excellent, good, medium, fair, poor; got 'neat'$"):
        detail_factor("neat")

"""What is promised of deck tables: printed cells, entered upwards, refused beyond their ends."""

from __future__ import annotations

import pytest

from speclint.tables import decks
from speclint.tables.rows import UnknownRow
from speclint.units import FOOT, INCH, PSF


def feet_inches(written: str) -> float:
    feet, inches = written.split("-")
    return round(int(feet) * FOOT + int(inches) * INCH, 4)


@pytest.mark.parametrize(
    ("size", "species", "spacing", "load", "span"),
    [
        ("2x8", "southern pine", 16, 60, "10-4"),
        ("2x6", "hem-fir", 24, 40, "6-10"),
        ("2x6", "Douglas-fir", 16, 40, "8-4"),
        ("2x12", "spruce-pine-fir", 12, 40, "18-0"),
        ("2x8", "western red cedar", 16, 40, "10-7"),
        ("2x12", "redwood", 24, 70, "10-5"),
    ],
)
def test_joist_spans_are_the_printed_ones(size: str, species: str, spacing: int, load: int, span: str) -> None:
    limit = decks.joist_span_limit(size, species, spacing * INCH, load * PSF)
    assert feet_inches(span) == round(limit.value, 4)


def test_a_limit_says_what_was_read_and_how_far() -> None:
    limit = decks.joist_span_limit("2x8", "southern pine", 16 * INCH, 55 * PSF)
    assert ("2x8 at 16 in, 60 psf, southern pine", "irc-2021", "irc-2021", "Table R507.6", "second-hand") == (
        limit.entry,
        limit.edition,
        limit.citation.key,
        limit.citation.place,
        limit.citation.standing,
    )


def test_a_metric_spacing_is_read_in_the_column_that_it_is_sold_as() -> None:
    assert "2x8 at 16 in, 40 psf, southern pine" == decks.joist_span_limit("2x8", "southern pine", 0.407, 1900).entry


def test_every_40_psf_joist_span_of_2021_is_that_of_the_older_guide() -> None:
    sizes, spacings = ("2x6", "2x8", "2x10", "2x12"), (12, 16, 24)
    pairs = [
        [
            decks.joist_span_limit(size, species, spacing * INCH, 40 * PSF, edition).value
            for edition in ("irc-2021", "awc-dca6-2012")
        ]
        for size in sizes
        for spacing in spacings
        for species in ("southern pine", "hem-fir", "redwood")
    ]
    assert (36, []) == (len(pairs), [pair for pair in pairs if pair[0] != pair[1]])


def test_joist_spans_never_grow_with_load_or_spacing() -> None:
    def span(size: str, species: str, spacing: int, load: int) -> float:
        return decks.joist_span_limit(size, species, spacing * INCH, load * PSF).value

    wrong = [
        (size, species, spacing, load)
        for size in ("2x6", "2x8", "2x10", "2x12")
        for species in ("southern pine", "hem-fir", "redwood")
        for spacing, wider in ((12, 16), (16, 24))
        for load in (40, 50, 60)
        if span(size, species, wider, load) > span(size, species, spacing, load)
        or span(size, species, spacing, load + 10) > span(size, species, spacing, load)
    ]
    assert [] == wrong


@pytest.mark.parametrize(
    ("size", "species", "spacing", "load", "message"),
    [
        (
            "2x8",
            "southern pine",
            16,
            80,
            "wanted a row of decks/joist_spans.csv; got 'load 80 psf'; nearest: load 70 psf",
        ),
        (
            "2x8",
            "southern pine",
            30,
            40,
            "wanted a row of decks/joist_spans.csv; got 'spacing 30 in'; nearest: spacing 24 in",
        ),
    ],
)
def test_what_a_table_does_not_reach_is_refused(size: str, species: str, spacing: int, load: int, message: str) -> None:
    with pytest.raises(UnknownRow) as refused:
        decks.joist_span_limit(size, species, spacing * INCH, load * PSF)
    assert message == str(refused.value)


@pytest.mark.parametrize(("size", "species"), [("3x8", "southern pine"), ("2x8", "white oak"), ("2x8", "plastic")])
def test_a_size_or_species_outside_the_tables_is_refused(size: str, species: str) -> None:
    with pytest.raises(UnknownRow):
        decks.joist_span_limit(size, species, 16 * INCH, 40 * PSF)


def test_an_unknown_edition_names_the_known_ones() -> None:
    with pytest.raises(UnknownRow) as refused:
        decks.joist_span_limit("2x8", "southern pine", 16 * INCH, 40 * PSF, "irc-2012")
    assert "irc-2021" == refused.value.nearest[0]


@pytest.mark.parametrize(
    ("size", "species", "joist_span", "overhang", "span"),
    [
        ("2-2x10", "southern pine", 12, 0, "9-0"),
        ("2-2x12", "southern pine", 12, 0, "10-7"),
        ("3-2x10", "southern pine", 12, 0, "11-2"),
        ("2-2x10", "southern pine", 12, 3, "7-4"),
        ("2-2x12", "southern pine", 16, 4, "7-5"),
        ("3-2x6", "southern pine", 6, 1.5, "8-6"),
        ("3-2x6", "southern pine", 18, 4.5, "4-11"),
        ("3-2x8", "southern pine", 6, 1.5, "10-11"),
        ("2-2x6", "hem-fir", 6, 1.5, "6-1"),
        ("2-2x12", "Douglas-fir", 6, 1.5, "11-7"),
    ],
)
def test_beams_of_2021_are_entered_with_the_joist_span_times_its_factor(
    size: str, species: str, joist_span: float, overhang: float, span: str
) -> None:
    limit = decks.beam_span_limit(size, species, joist_span * FOOT, 40 * PSF, overhang * FOOT)
    assert feet_inches(span) == round(limit.value, 4)


@pytest.mark.parametrize(
    ("size", "species", "joist_span", "edition", "span"),
    [
        ("3-2x10", "southern pine", 12, "awc-dca6-2012", "9-2"),
        ("2-2x12", "western redcedar", 10, "awc-dca6-2012", "7-6"),
        ("4x8", "ponderosa pine", 6, "awc-dca6-2012", "8-5"),
        ("4x8", "ponderosa pine", 6, "awc-dca6-2015", "8-2"),
    ],
)
def test_older_beam_tables_are_entered_with_the_joist_span_itself(
    size: str, species: str, joist_span: float, edition: str, span: str
) -> None:
    limit = decks.beam_span_limit(size, species, joist_span * FOOT, 40 * PSF, edition=edition)
    assert feet_inches(span) == round(limit.value, 4)


def test_a_beam_that_2021_does_not_hold_names_the_editions_that_do() -> None:
    with pytest.raises(UnknownRow) as refused:
        decks.beam_span_limit("2-2x10", "western redcedar", 10 * FOOT, 40 * PSF)
    assert ("awc-dca6-2012", "awc-dca6-2015") == refused.value.nearest


@pytest.mark.parametrize(
    ("ratio", "factor"), [(0, 0.66), (1 / 12, 0.72), (0.09, 0.80), (1 / 8, 0.84), (1 / 6, 0.90), (0.25, 1.0)]
)
def test_the_overhang_of_the_joists_sets_the_factor(ratio: float, factor: float) -> None:
    assert factor == decks.beam_joist_factor(ratio)


def test_joists_that_overhang_more_than_a_quarter_are_refused() -> None:
    with pytest.raises(UnknownRow):
        decks.beam_joist_factor(0.3)


def test_beams_under_snow_are_not_held() -> None:
    with pytest.raises(UnknownRow):
        decks.beam_span_limit("2-2x10", "southern pine", 10 * FOOT, 60 * PSF)


@pytest.mark.parametrize(
    ("fastener", "joist_span", "load", "spacing"),
    [
        ("lag", 16, 70, 8),
        ("lag screw", 10, 40, 18),
        ("bolt", 12, 40, 29),
        ("bolt with washers", 18, 40, 16),
        ("lag screw", 14, 60, 10),
        ("bolt", 6, 70, 36),
    ],
)
def test_ledger_spacings_are_the_printed_ones(fastener: str, joist_span: int, load: int, spacing: int) -> None:
    limit = decks.ledger_spacing(fastener, joist_span * FOOT, load * PSF)
    assert spacing == round(limit.value / INCH, 6)


@pytest.mark.parametrize(("fastener", "joist_span"), [("nail", 10), ("lag", 19)])
def test_ledgers_outside_the_table_are_refused(fastener: str, joist_span: int) -> None:
    with pytest.raises(UnknownRow):
        decks.ledger_spacing(fastener, joist_span * FOOT, 40 * PSF)


def test_ledger_spacings_shrink_with_joist_span() -> None:
    spacings = [decks.ledger_spacing("lag", span * FOOT, 50 * PSF).value for span in range(6, 20, 2)]
    assert sorted(spacings, reverse=True) == spacings


@pytest.mark.parametrize(("size", "height"), [("4x4", "6-9"), ("4x6", "8-0"), ("6x6", "14-0"), ("8x8", "14-0")])
def test_posts_without_an_area_follow_the_2018_table(size: str, height: str) -> None:
    limit = decks.post_height_limit(size, 40 * PSF)
    assert (feet_inches(height), "irc-2018") == (round(limit.value, 4), limit.edition)


@pytest.mark.parametrize(("area", "height"), [(20, "14-0"), (41, "11-0"), (100, "8-4"), (160, "6-2")])
def test_posts_with_an_area_follow_the_2021_table(area: float, height: str) -> None:
    limit = decks.post_height_limit("4x4", 40 * PSF, area * FOOT**2, "southern pine")
    assert feet_inches(height) == round(limit.value, 4)


def test_posts_that_the_tables_do_not_hold_are_refused() -> None:
    with pytest.raises(UnknownRow):
        decks.post_height_limit("6x6", 70 * PSF)


@pytest.mark.parametrize(
    ("breadth", "depth", "size"),
    [
        (4, 4, "4x4"),
        (5.8, 12, "4x6"),
        (6, 4, "4x6"),
        (7.5, 7.5, "6x6"),
        (24, 8, "8x8"),
        (150 / 25.4, 150 / 25.4, "6x6"),
    ],
)
def test_a_section_holds_the_largest_post_that_fits_in_it(breadth: float, depth: float, size: str) -> None:
    assert size == decks.post_size_within(breadth * INCH, depth * INCH)


def test_a_section_thinner_than_the_smallest_post_is_refused() -> None:
    with pytest.raises(UnknownRow) as refused:
        decks.post_size_within(3 * INCH, 12 * INCH)
    wanted = "wanted a row of decks/post_heights.csv; got 'post of 3 by 12 in'; nearest: 4x4"
    assert wanted == str(refused.value)


@pytest.mark.parametrize(
    ("board", "diagonal", "continuous", "spacing"),
    [("2 in", True, True, 24), ("2 in", True, False, 18), ("5/4", False, True, 16), ("5/4", True, False, 8)],
)
def test_deck_boards_rest_on_joists_as_printed(board: str, diagonal: bool, continuous: bool, spacing: int) -> None:
    limit = decks.decking_spacing_limit(board, diagonal=diagonal, continuous=continuous)
    assert spacing == round(limit.value / INCH, 6)


def test_ledger_fasteners_keep_their_distance_from_edges() -> None:
    assert 1.625 == round(decks.ledger_edge_distance("ledger", "between rows").value / INCH, 6)


def test_joists_overhang_as_the_guide_prints() -> None:
    limit = decks.joist_overhang_limit("2x10", "southern pine", 16 * INCH)
    assert (feet_inches("3-5"), "awc-dca6-2012") == (round(limit.value, 4), limit.edition)


@pytest.mark.parametrize(
    ("species", "group"),
    [
        ("lodgepole pine", "Douglas fir-larch, hem-fir, spruce-pine-fir"),
        ("southern yellow pine", "southern pine"),
        ("Alaska cedar", "redwood, western cedars, ponderosa pine, red pine"),
        ("red pine", "redwood, western cedars, ponderosa pine, red pine"),
    ],
)
def test_a_species_belongs_to_one_group_of_the_deck_tables(species: str, group: str) -> None:
    assert group == decks.species_group(species)

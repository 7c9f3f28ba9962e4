"""What is promised of wood species."""

from __future__ import annotations

import pytest

from speclint.tables.rows import UnknownRow
from speclint.tables.species import RESISTANCES, all_species, find_species


def test_every_species_is_held() -> None:
    assert 49 == len(all_species())


def test_no_alias_stands_for_two_species() -> None:
    names = [name.casefold() for species in all_species() for name in (species.name, *species.aliases)]
    assert sorted(set(names)) == sorted(names)


def test_every_alias_finds_its_species() -> None:
    assert [] == [
        alias for species in all_species() for alias in species.aliases if find_species(alias).name != species.name
    ]


@pytest.mark.parametrize(
    ("asked", "found"),
    [
        ("Eastern White Pine", "eastern white pine"),
        ("western red cedar", "western redcedar"),
        ("northern white cedar", "northern white-cedar"),
        ("douglas fir", "Douglas-fir, coast"),
        ("Douglas-fir coast", "Douglas-fir, coast"),
        ("redwood", "redwood, young-growth"),
        ("southern yellow pine", "loblolly pine"),
    ],
)
def test_a_species_is_found_as_people_write_it(asked: str, found: str) -> None:
    assert found == find_species(asked).name


def test_an_unknown_species_gives_the_nearest_names() -> None:
    with pytest.raises(UnknownRow) as missing:
        find_species("eastrn white pine")
    assert "eastern white pine" == missing.value.nearest[0]


def test_a_bare_white_pine_is_not_guessed() -> None:
    with pytest.raises(UnknownRow) as missing:
        find_species("white pine")
    assert {"eastern white pine", "western white pine"} < set(missing.value.nearest)


def test_tangential_shrinkage_is_above_radial_and_below_volumetric() -> None:
    assert [] == [
        species.name
        for species in all_species()
        if not species.radial_shrinkage < species.tangential_shrinkage < (species.volumetric_shrinkage or 99)
    ]


# Groups of hardwoods whose printed coefficients are not those of the one species.
COMMERCIAL = {"white oak", "northern red oak"}
# Shrinkage of these is counted from 22 % moisture content.
EARLY = {"western redcedar", "northern white-cedar", "redwood, old-growth", "redwood, young-growth"}


def test_change_coefficients_follow_from_the_shrinkage() -> None:
    def coefficient(shrinkage: float, start: float) -> float:
        part = shrinkage / 100
        return part / start / (1 - part * (start - 10) / start)

    kinds = [species for species in all_species() if species.name not in COMMERCIAL]
    differences = [
        abs(coefficient(shrinkage, 22 if species.name in EARLY else 30) - printed)
        for species in kinds
        for shrinkage, printed in (
            (species.radial_shrinkage, species.radial_coefficient),
            (species.tangential_shrinkage, species.tangential_coefficient),
        )
    ]
    assert (94, True) == (len(differences), max(differences) < 1.01e-5)


@pytest.mark.parametrize(
    ("name", "gravity"),
    [("longleaf pine", (0.54, 0.59)), ("Pacific silver fir", (0.40, 0.43)), ("California red fir", (0.36, 0.38))],
)
def test_corrected_and_added_specific_gravities_are_held(name: str, gravity: tuple[float, float]) -> None:
    species = find_species(name)
    assert gravity == (species.specific_gravity_green, species.specific_gravity_dry)


def test_white_spruce_shrinks_as_its_coefficients_say_and_says_that_it_is_in_doubt() -> None:
    species = find_species("white spruce")
    assert (3.8, 7.8, None, True) == (
        species.radial_shrinkage,
        species.tangential_shrinkage,
        species.volumetric_shrinkage,
        "4.7" in species.doubt,
    )


@pytest.mark.parametrize(
    ("name", "saturation"),
    [
        ("yellow-poplar", 31),
        ("Engelmann spruce", 30),
        ("western larch", 28),
        ("slash pine", 26),
        ("western redcedar", 18),
        ("eastern white pine", 30),
    ],
)
def test_fibre_saturation_follows_the_log_standard(name: str, saturation: float) -> None:
    assert saturation == find_species(name).fibre_saturation


@pytest.mark.parametrize(
    ("name", "group"),
    [
        ("black locust", "exceptional"),
        ("western redcedar", "resistant"),
        ("Douglas-fir, coast", "moderately resistant"),
        ("lodgepole pine", "slightly resistant"),
        ("redwood, young-growth", "moderately resistant"),
    ],
)
def test_decay_resistance_is_one_of_four_groups(name: str, group: str) -> None:
    assert group == find_species(name).decay_resistance


def test_present_stock_is_never_reckoned_more_resistant_than_the_list() -> None:
    lower = {
        species.name
        for species in all_species()
        if RESISTANCES.index(species.second_growth_resistance) < RESISTANCES.index(species.decay_resistance)
    }
    higher = {
        species.name
        for species in all_species()
        if RESISTANCES.index(species.second_growth_resistance) > RESISTANCES.index(species.decay_resistance)
    }
    assert ({"eastern white pine", "longleaf pine", "slash pine"}, set()) == (lower, higher)


@pytest.mark.parametrize(
    ("name", "standing"),
    [("lodgepole pine", "second-hand"), ("western redcedar", "published"), ("eastern white pine", "memory")],
)
def test_shrinkage_says_how_far_it_was_read(name: str, standing: str) -> None:
    assert standing == find_species(name).citation.standing


def test_green_moisture_is_cited_exactly_where_it_is_held() -> None:
    assert [] == [
        species.name
        for species in all_species()
        if (species.moisture_citation is None)
        != (species.green_moisture_heartwood is None and species.green_moisture_sapwood is None)
    ]

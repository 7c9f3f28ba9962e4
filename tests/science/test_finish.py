"""Laws of the life of a coat: weather, wood, moisture."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from speclint.science.finish import (
    CEDAR,
    COLUMNS,
    SMOOTH,
    SOFTWOOD,
    TEXTURED,
    finish_life,
    finish_life_in_place,
    finish_life_on_decking,
    finish_life_on_wood,
)
from speclint.science.finish_factors import (
    COLOUR_HEAT,
    MIDDLE_SUN,
    SURFACES,
    coats_factor,
    first_coat_factor,
    rain_by_cover,
    sheen_factor,
    surface_factor,
    top_factor,
    ultraviolet_by_bearing,
    weather_wear,
)

COVERS = st.floats(0, 4)
BEARINGS = st.floats(0, 360)
SUNS, RAINS = st.floats(0, 2), st.floats(0, 4)
COLOURS = st.sampled_from(["light", "medium", "dark"])


def life(orientation: float, cover: float, colour: str = "medium") -> float:
    """Shortest life of a stain by bearing and cover alone. [years]"""
    sun = ultraviolet_by_bearing(orientation, cover) / MIDDLE_SUN
    return finish_life_in_place(4.0, 8.0, weather_wear(sun, rain_by_cover(cover), colour))[0]


@given(BEARINGS, COVERS, st.floats(0, 4), COLOURS)
def test_more_cover_never_shortens_the_life(orientation: float, cover: float, more: float, colour: str) -> None:
    assert life(orientation, cover, colour) <= life(orientation, cover + more, colour)


@given(SUNS, RAINS, st.floats(0, 1), st.floats(0, 1), COLOURS)
def test_more_sun_or_rain_never_wears_less(sun: float, rain: float, light: float, wet: float, colour: str) -> None:
    assert weather_wear(sun, rain, colour) <= weather_wear(sun + light, rain + wet, colour)


@given(SUNS, RAINS)
def test_a_darker_colour_never_wears_less(sun: float, rain: float) -> None:
    wears = [weather_wear(sun, rain, colour) for colour in ("light", "medium", "dark")]
    assert sorted(wears) == wears


def test_a_dark_colour_tells_nothing_where_no_sun_comes() -> None:
    assert 1 == len({weather_wear(0.0, 0.5, colour) for colour in COLOUR_HEAT})


@given(BEARINGS, COVERS)
def test_east_and_west_are_alike(orientation: float, cover: float) -> None:
    other = ultraviolet_by_bearing(360 - orientation, cover)
    assert ultraviolet_by_bearing(orientation, cover) == pytest.approx(other)


def test_an_open_east_wall_keeps_the_life_of_the_table() -> None:
    assert 4.0 == pytest.approx(life(90.0, 0.0), rel=0.01)


def test_open_walls_rank_as_finishers_tell() -> None:
    open_walls = [life(orientation, 0.0) for orientation in (0.0, 90.0, 180.0)]
    assert (True, True) == (open_walls == sorted(open_walls, reverse=True), open_walls[0] > 1.3 * open_walls[2])


def test_a_deep_porch_about_doubles_the_life_on_the_noon_side() -> None:
    assert 1.8 < life(180.0, 1.5) / life(180.0, 0.0) < 2.6


@pytest.mark.parametrize("wood", [CEDAR, SOFTWOOD])
@pytest.mark.parametrize("texture", [SMOOTH, TEXTURED])
def test_lives_rank_by_finish_as_fourteen_years_outdoors_ranked_them(wood: str, texture: str) -> None:
    order = ("tinted clear", "semitransparent stain", "solid stain", "paint")
    middles = [sum(finish_life_on_wood(family, wood, texture)) for family in order]
    assert sorted(middles) == middles


@pytest.mark.parametrize("family", COLUMNS)
def test_textured_wood_and_cedar_never_shorten_the_life(family: str) -> None:
    lives = {(w, t): finish_life_on_wood(family, w, t) for w in (CEDAR, SOFTWOOD) for t in (SMOOTH, TEXTURED)}
    assert all(lives[wood, SMOOTH] <= lives[wood, TEXTURED] for wood in (CEDAR, SOFTWOOD))
    assert all(lives[SOFTWOOD, texture] <= lives[CEDAR, texture] for texture in (SMOOTH, TEXTURED))


@given(st.booleans(), st.floats(0, 150), st.floats(0, 50))
def test_wetter_wood_never_lengthens_the_first_coat(film: bool, moisture: float, more: float) -> None:
    assert first_coat_factor(film, moisture + more) <= first_coat_factor(film, moisture)


@given(st.floats(19, 150))
def test_wet_wood_hurts_a_film_more_than_a_stain(moisture: float) -> None:
    assert first_coat_factor(True, moisture) < first_coat_factor(False, moisture)


def test_round_faces_and_flat_tops_shorten_the_life() -> None:
    assert all(surface_factor(surface, True) < surface_factor(surface, False) for surface in SURFACES)
    assert [1.0, 0.7, 0.5] == [top_factor(top) for top in ("metal", "bevel", "none")]


@given(st.lists(st.floats(0.1, 1.5), max_size=5), st.floats(0.3, 3))
def test_the_ends_of_a_range_are_moved_alike(factors: list[float], wear: float) -> None:
    low, high = finish_life_in_place(4.0, 8.0, wear, tuple(factors))
    assert 2.0 == pytest.approx(high / low)


@pytest.mark.parametrize(
    ("refused", "message"),
    [
        (lambda: finish_life("varnish"), "family: wanted one of water repellent, tinted clear, semitransparent stain, "
         "solid stain, paint; got 'varnish'"),
        (lambda: finish_life_on_wood("paint", "oak", SMOOTH), "wood: wanted one of cedar or redwood, pine, fir or "
         "spruce; got 'oak'"),
        (lambda: finish_life_on_decking("paint", "rough"), "texture: wanted one of smooth, saw-textured; got 'rough'"),
        (lambda: finish_life_in_place(8.0, 4.0, 1.0), "high: wanted 8 or more; got 4"),
        (lambda: finish_life_in_place(4.0, 8.0, 0.0), "wear: wanted a number above 0; got 0"),
        (lambda: finish_life_in_place(4.0, 8.0, 1.0, (1.0, 0.0)), "least factor: wanted a number above 0; got 0"),
        (lambda: weather_wear(-1.0, 0.0), "sun: wanted 0 or more; got -1"),
        (lambda: weather_wear(1.0, 0.0, "red"), "colour: wanted one of light, medium, dark; got 'red'"),
        (lambda: coats_factor(0), "coats: wanted 1 or more; got 0"),
        (lambda: sheen_factor(True, "dull"), "sheen: wanted one of flat, satin, gloss; got 'dull'"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_refused(refused: object, message: str) -> None:
    assert callable(refused)
    with pytest.raises(ValueError, match=f"^{message}$"):
        refused()

"""What is impossible is refused by its own name; what lies on the bound of the possible is taken."""

from __future__ import annotations

import ast
import doctest
import inspect
from collections.abc import Callable, Iterator
from importlib import import_module
from pathlib import Path
from typing import Any

import pytest

import speclint.science
from speclint.science import (
    decay_climate,
    decay_dose,
    overhang,
    settlement,
    settling_time,
    sky,
    sun,
    sun_on_walls,
    upkeep,
    wood_moisture,
)

Function = Callable[..., Any]
MODULES = sorted(path.stem for path in Path(speclint.science.__file__).parent.glob("*.py") if path.stem != "__init__")

# function, its inputs but one, that one, the least and the greatest that can be
BOUNDS: list[tuple[Function, dict[str, Any], str, float, float]] = [
    (decay_climate.decay_hazard_class, {}, "index", 0, 1000),
    (decay_dose.moisture_dose, {}, "moisture", 0, 400),
    (settlement.headspace_need, {"opening_height": 2.0, "margin": 0.01}, "rate", 0, 1),
    (settlement.jack_travel_need, {"height": 2.0, "margin": 0.01}, "rate", 0, 1),
    (settling_time.settlement_at, {"height": 2.0}, "rate", 0, 1),
    (sky.air_mass, {}, "altitude", 0, 90),
    (sky.extraterrestrial_normal, {}, "day", 1, 367),
    (sky.clear_sky, {"day": 80}, "altitude", -90, 90),
    (sky.ultraviolet, {"day": 80}, "altitude", -90, 90),
    (sky.ultraviolet, {"altitude": 30.0, "day": 80}, "albedo", 0, 1),
    (sky.sunshine_share_to_global, {}, "sunshine", 0, 1),
    (sun.days_since_2000, {"year": 2020}, "day", 1, 367),
    (sun.sun_position, {"days": 8000.0}, "latitude", -90, 90),
    (sun.sun_position, {"days": 8000.0, "latitude": 45.0}, "longitude", -360, 360),
    (sun.refraction, {}, "altitude", -90, 90),
    (sun.refraction, {"altitude": 5.0}, "temperature", -90, 60),
    (sun.year_of_sun, {"days": 12, "step_minutes": 240.0}, "latitude", -90, 90),
    (sun_on_walls.incidence_cosine, {"azimuth": 180.0, "faces": 170.0}, "altitude", -90, 90),
    (sun_on_walls.shadow_depth, {"projection": 1.0, "azimuth": 180.0, "faces": 170.0}, "altitude", -90, 90),
    (wood_moisture.equilibrium_moisture, {"temperature": 20.0}, "humidity", 0, 100),
    (wood_moisture.equilibrium_moisture, {"humidity": 60.0}, "temperature", -273.15, 1000),
]


@pytest.mark.parametrize(
    ("function", "others", "name", "low", "high"), BOUNDS, ids=lambda value: getattr(value, "__name__", None)
)
def test_the_bounds_of_the_possible_are_taken_and_what_is_past_them_refused(
    function: Function, others: dict[str, Any], name: str, low: float, high: float
) -> None:
    for bound in (low, high):
        function(**others, **{name: bound})
    for beyond in (low - 0.5, high + 0.5):
        with pytest.raises(ValueError, match=f"^{name}: wanted {low:g} to {high:g}; got "):
            function(**others, **{name: beyond})


@pytest.mark.parametrize(
    ("temperature", "days", "refused"),
    [
        (-100, 0, ""),
        (70, 31, ""),
        (-101, 0, "mean temperature"),
        (71, 0, "mean temperature"),
        (0, 32, "wet days"),
        (0, -1, "wet days"),
    ],
)
def test_the_months_of_a_climate_are_possible(temperature: float, days: float, refused: str) -> None:
    months = [temperature] * 12, [days] * 12
    if refused:
        with pytest.raises(ValueError, match=f"^{refused}: "):
            decay_climate.decay_hazard_index(*months)
    else:
        assert 0.0 <= decay_climate.decay_hazard_index(*months)


def test_rain_falls_aslant_and_no_more_than_level() -> None:
    assert 0.0 == overhang.sheltered_height(0.6, 90)
    for angle, words in ((0, "a number above 0"), (90.5, "0 to 90")):
        with pytest.raises(ValueError, match=f"^angle: wanted {words}; got "):
            overhang.sheltered_height(0.6, angle)


def test_shrinkage_begins_above_ten_percent() -> None:
    assert 0.0025 == pytest.approx(wood_moisture.change_coefficient(2.5, 10))
    for start in (9.5, 100.5):
        with pytest.raises(ValueError, match=r"^start: wanted 10 to 100"):
            wood_moisture.change_coefficient(2.5, start)


def test_a_course_is_no_higher_than_its_log() -> None:
    assert 1.5707963 == pytest.approx(upkeep.log_surface_factor(0.25, 0.25))
    with pytest.raises(ValueError, match=r"^course: wanted 0 to 0.25; got 0.26"):
        upkeep.log_surface_factor(0.25, 0.26)


def _examples() -> Iterator[tuple[str, Function, dict[str, Any]]]:
    """Every function of science with the inputs of the first call in its example that are numbers and words."""
    for module in map(import_module, (f"speclint.science.{name}" for name in MODULES)):
        for name, function in vars(module).items():
            if not hasattr(function, "source") or function.__module__ != module.__name__:
                continue
            source = "\n".join(example.source for example in doctest.DocTestParser().get_examples(function.__doc__))
            calls = [
                node
                for node in ast.walk(ast.parse(source))
                if isinstance(node, ast.Call) and ast.unparse(node.func) == name
            ]
            if not calls:
                continue
            try:
                words = [ast.literal_eval(one) for one in calls[0].args]
                named = {str(one.arg): ast.literal_eval(one.value) for one in calls[0].keywords}
            except ValueError:
                continue
            bound = inspect.signature(function).bind(*words, **named)
            yield f"{module.__name__.rpartition('.')[2]}.{name}", function, dict(bound.arguments)


EXAMPLES = list(_examples())


def test_most_functions_have_an_example_in_plain_numbers() -> None:
    functions = [
        name
        for module in MODULES
        for name, value in vars(import_module(f"speclint.science.{module}")).items()
        if getattr(value, "__module__", "") == f"speclint.science.{module}" and hasattr(value, "source")
    ]
    assert len(EXAMPLES) > 0.8 * len(functions) > 50


@pytest.mark.parametrize(("function", "inputs"), [pytest.param(*rest, id=name) for name, *rest in EXAMPLES])
def test_an_impossible_number_is_refused_by_its_own_name_or_not_at_all(
    function: Function, inputs: dict[str, Any]
) -> None:
    function(**inputs)
    names = {name.replace("_", " ") for name in inspect.signature(function).parameters}
    for name, value in inputs.items():
        bounds_another = name in ("temperature_low", "temperature_high")
        if isinstance(value, float | int) and not isinstance(value, bool) and not bounds_another:
            refused = []
            for wrong in (-1e9, float("nan")):
                try:
                    function(**inputs | {name: wrong})
                except (ValueError, OverflowError) as trouble:
                    refused.append(str(trouble).split(":")[0])
            told = name.replace("_", " ")
            assert [] == [other for other in refused if other in names and other != told]

"""Rain below roof edges: worked numbers, laws, and what a slow count of drops gives.

The worked numbers were computed once with another program, from the same published pieces: drop sizes of best-1950,
fall speeds of gunn-kinzer-1949, the hourly index of iso-15927-3. They hold our code to that, not to nature.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from itertools import pairwise
from statistics import fmean

import pytest

from speclint.science.driving_rain import (
    ALL_SIDES,
    hourly_driving_rain,
    lacy_driving_rain,
    linear_driving_rain,
    mean_wall_driving_rain,
    power_law_wind,
    terrain_roughness,
)
from speclint.science.overhang import sheltered_height
from speclint.science.raindrops import (
    DIAMETERS,
    FASTEST,
    SPEEDS,
    diameter_falling_at,
    fall_speed,
    median_diameter,
    rayleigh_share,
    share_falling_past_edge,
    share_past_edge,
    size_scale,
    water_in_air,
)

Share = Callable[[float, float], float]
SHARES = (share_past_edge, share_falling_past_edge, rayleigh_share)
RATES = (0.01, 0.1, 0.5, 2.0, 10.0, 50.0, 200.0)
SLANTS = tuple(step / 10 for step in range(121))

# rate: share at a slant of 1, 2 ... 9 m/s
PAST_EDGE = {
    0.5: (0.038, 0.145, 0.326, 0.542, 0.783, 0.941, 0.993, 1.000, 1.000),
    1.0: (0.027, 0.104, 0.240, 0.419, 0.655, 0.861, 0.968, 0.998, 1.000),
    2.0: (0.019, 0.073, 0.174, 0.315, 0.523, 0.747, 0.910, 0.988, 1.000),
    5.0: (0.012, 0.046, 0.112, 0.209, 0.368, 0.574, 0.774, 0.935, 0.999),
    10.0: (0.008, 0.032, 0.079, 0.151, 0.274, 0.448, 0.645, 0.850, 0.992),
}
MEAN_SLANTS = (0.5, 1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 20.0, 30.0)
# rate: share at each of the mean slants; made with 2000 speeds and 181 angles
RAYLEIGH = {
    0.5: (0.013, 0.048, 0.105, 0.180, 0.268, 0.357, 0.517, 0.637, 0.723, 0.828, 0.884, 0.917, 0.946, 0.969, 0.986),
    1.0: (0.009, 0.034, 0.076, 0.134, 0.207, 0.287, 0.443, 0.571, 0.666, 0.788, 0.856, 0.897, 0.932, 0.961, 0.982),
    1.5: (0.008, 0.028, 0.062, 0.112, 0.176, 0.249, 0.401, 0.531, 0.632, 0.763, 0.838, 0.883, 0.923, 0.956, 0.980),
    3.0: (0.005, 0.019, 0.044, 0.081, 0.132, 0.193, 0.332, 0.463, 0.570, 0.718, 0.805, 0.858, 0.906, 0.946, 0.975),
}


def band(share: Share, wind: float, reach: float, rate: float, top: float, bottom: float, points: int = 2000) -> float:
    """Mean share over a band of wall between two depths below the edge."""
    step = (bottom - top) / points
    return fmean(share(wind * (top + step * (number + 0.5)) / reach, rate) for number in range(points))


@pytest.mark.parametrize("rate", PAST_EDGE)
def test_the_share_past_an_edge_is_as_worked(rate: float) -> None:
    assert PAST_EDGE[rate] == pytest.approx([share_past_edge(slant, rate) for slant in range(1, 10)], abs=0.0006)


@pytest.mark.parametrize(
    ("depth", "slant", "diameter", "share"),
    [(0.5, 2.7778, 0.6769, 0.1482), (1.0, 5.5556, 1.5606, 0.6503), (1.5, 8.3333, 3.2815, 0.9963)],
)
def test_the_steps_from_depth_to_share_are_as_worked(depth: float, slant: float, diameter: float, share: float) -> None:
    own = 5.0 * depth / 0.9
    computed = (own, diameter_falling_at(own), share_past_edge(own, 2.0))
    assert (slant, diameter, share) == pytest.approx(computed, abs=1e-4)


# wind, rate and reach of three houses, bands in metres below the edge
@pytest.mark.parametrize(
    ("wind", "rate", "reach", "top", "bottom", "share"),
    [
        (5.0, 2.0, 0.9, 0.0, 0.5, 0.0482),
        (5.0, 2.0, 0.9, 0.5, 1.0, 0.3664),
        (5.0, 2.0, 0.9, 1.0, 1.5, 0.8762),
        (5.0, 2.0, 0.9, 1.5, 2.0, 0.9997),
        (5.0, 2.0, 0.9, 0.0, 3.0, 0.7151),
        (2.8896, 1.0, 0.6, 0.0, 0.6, 0.0735),
        (2.8896, 1.0, 0.6, 0.6, 1.2, 0.5071),
        (2.8896, 1.0, 0.6, 1.2, 1.8, 0.9573),
        (2.8896, 1.0, 0.6, 1.8, 2.4, 1.0),
        (2.8896, 1.0, 0.6, 0.0, 2.4, 0.6345),
    ],
)
def test_the_share_of_a_band_is_as_worked(
    wind: float, rate: float, reach: float, top: float, bottom: float, share: float
) -> None:
    assert share == pytest.approx(band(share_past_edge, wind, reach, rate, top, bottom), abs=1e-4)


# wind, direction it comes from, rain of seven hours; the wall faces south, the edge is 5 m up and reaches 0.75 m
HOURS = ((5, 180, 1.0), (8, 200, 2.5), (3, 150, 0.4), (10, 225, 6.0), (6, 270, 3.0), (4, 90, 2.0), (7, 180, 0.0))
SUBURB = 0.7224


def test_the_hours_of_a_record_drive_the_rain_worked_for_each() -> None:
    rain = [hourly_driving_rain(speed, rate, direction - 180) for speed, direction, rate in HOURS]
    assert [1.1111, 3.7721, 0.2557, 7.7261, 0, 0, 0] == pytest.approx(rain, abs=1e-4)


def load(low: float, high: float) -> float:
    """Rain of the record on a band of the wall between two heights. [L/m2]"""
    total = 0.0
    for speed, direction, rate in HOURS:
        free = hourly_driving_rain(speed, rate, direction - 180) * SUBURB
        if free:
            wind = speed * SUBURB * math.cos(math.radians(direction - 180))
            total += free * band(share_past_edge, wind, 0.75, rate, 5 - high, 5 - low)
    return total


@pytest.mark.parametrize(
    ("low", "high", "rain"),
    [(0, 1, 9.2937), (1, 2, 9.2937), (2, 3, 9.2851), (3, 4, 8.9185), (4, 5, 2.2554), (0, 5, 7.8093)],
)
def test_a_record_wets_the_bands_of_a_wall_as_worked(low: float, high: float, rain: float) -> None:
    assert rain == pytest.approx(load(low, high), abs=2e-4)


@pytest.mark.parametrize(("height", "share"), [(4.5, 0.0653), (4.0, 0.2922), (3.0, 0.9895), (2.5, 1.0), (1.0, 1.0)])
def test_one_hour_aslant_to_the_wall_is_as_worked(height: float, share: float) -> None:
    wind = 6.0 * math.cos(math.radians(30)) * terrain_roughness("III", 5.0)
    assert share == pytest.approx(share_past_edge(wind * (5.0 - height) / 0.9, 3.0), abs=1e-4)


def test_the_median_drop_of_that_hour_strikes_below_the_worked_depth() -> None:
    wind = 6.0 * math.cos(math.radians(30)) * terrain_roughness("III", 5.0)
    assert 1.254 == pytest.approx(0.9 * fall_speed(median_diameter(3.0)) / wind, abs=0.001)


@pytest.mark.parametrize("rate", RAYLEIGH)
def test_the_share_over_many_winds_is_as_worked(rate: float) -> None:
    assert RAYLEIGH[rate] == pytest.approx([rayleigh_share(slant, rate) for slant in MEAN_SLANTS], abs=0.0006)


def test_the_share_over_many_winds_equals_a_plain_average() -> None:
    """Speeds by Rayleigh, directions even, both weighed by the wind towards the wall, without the short cut."""
    slant, rate, total, passed = 3.0, 1.5, 0.0, 0.0
    for angle in (math.radians(2 * step + 1 - 90) for step in range(90)):
        for speed in (0.02 * step + 0.01 for step in range(250)):
            towards = speed * math.cos(angle)
            weight = speed * math.exp(-math.pi / 4 * speed**2) * towards
            total += weight
            passed += weight * share_past_edge(slant * towards, rate)
    assert passed / total == pytest.approx(rayleigh_share(slant, rate), abs=5e-4)


# wind 2, 3 and 4 m/s; height of wall below the edge and reach of the edge in metres; rain of 1.5 mm/h
@pytest.mark.parametrize(
    ("height", "reach", "shares"),
    [
        (2.4, 0.3, (0.626, 0.735, 0.795)),
        (2.4, 0.6, (0.380, 0.531, 0.626)),
        (2.4, 0.9, (0.230, 0.380, 0.488)),
        (2.4, 1.2, (0.144, 0.272, 0.380)),
        (2.4, 1.8, (0.066, 0.144, 0.230)),
        (5.0, 0.3, (0.803, 0.865, 0.897)),
        (5.0, 0.6, (0.638, 0.745, 0.803)),
        (5.0, 0.9, (0.503, 0.638, 0.717)),
        (5.0, 1.2, (0.395, 0.545, 0.638)),
        (5.0, 1.8, (0.244, 0.395, 0.503)),
    ],
)
def test_the_mean_of_a_wall_over_many_winds_is_as_worked(
    height: float, reach: float, shares: tuple[float, ...]
) -> None:
    computed = [band(rayleigh_share, wind, reach, 1.5, 0.0, height, 200) for wind in (2.0, 3.0, 4.0)]
    assert shares == pytest.approx(computed, abs=0.0015)


def test_a_month_known_by_its_means_is_as_worked() -> None:
    wind = 4.0 * SUBURB
    free = linear_driving_rain(80.0, wind)
    metres = [band(rayleigh_share, wind, 0.9, 1.5, top, top + 1.0, 200) for top in (0.0, 1.0, 2.0)]
    wanted = (15.158, 0.096, 0.497, 0.759, 6.83)
    assert wanted == pytest.approx((free, *metres, free * fmean(metres)), rel=0.001, abs=0.0006)


def test_winds_from_all_sides_have_a_cosine_of_one_over_pi() -> None:
    plain = fmean(max(0.0, math.cos(math.radians(angle + 0.5))) for angle in range(360))
    assert (0.31831, ALL_SIDES) == pytest.approx((plain, plain), abs=2e-5)


@pytest.mark.parametrize(
    ("category", "height", "factor"),
    [
        ("I", 2, 0.9007), ("I", 5, 1.0565), ("I", 10, 1.1743),
        ("II", 3, 0.8326), ("II", 4, 0.8326), ("II", 5, 0.8750), ("II", 8, 0.9643), ("II", 10, 1.0067),
        ("III", 5, 0.7224), ("III", 8, 0.7224), ("III", 10, 0.7714), ("III", 16, 0.8748),
        ("IV", 6, 0.6654), ("IV", 16, 0.6654), ("IV", 20, 0.7190),
    ],
)  # fmt: skip
def test_the_terrain_leaves_the_wind_that_was_worked(category: str, height: float, factor: float) -> None:
    assert factor == pytest.approx(terrain_roughness(category, height), abs=5e-5)


# rate: scale, median and its fall speed; driving rain for 1 m/s by the hourly index, by water in the air, by its speed
@pytest.mark.parametrize(
    ("rate", "scale", "median", "speed", "index", "water", "drop"),
    [
        (0.5, 1.107, 0.941, 3.82, 0.1200, 0.1342, 0.1310),
        (1.0, 1.300, 1.105, 4.35, 0.2222, 0.2412, 0.2299),
        (2.0, 1.527, 1.297, 4.90, 0.4115, 0.4336, 0.4083),
        (5.0, 1.888, 1.605, 5.66, 0.9292, 0.9413, 0.8834),
        (10.0, 2.218, 1.885, 6.26, 1.7206, 1.6919, 1.5977),
        (20.0, 2.605, 2.213, 6.92, 3.1861, 3.0412, 2.8883),
    ],
)
def test_three_ways_to_free_driving_rain_are_as_worked(
    rate: float, scale: float, median: float, speed: float, index: float, water: float, drop: float
) -> None:
    falls = fall_speed(median_diameter(rate))
    sizes = (size_scale(rate), median_diameter(rate), falls)
    rains = (hourly_driving_rain(1.0, rate, 0.0), 0.0036 * water_in_air(rate), rate / falls)
    assert [scale, median, speed, index, water, drop] == [
        *(pytest.approx(value, abs=0.006) for value in sizes),
        *(pytest.approx(value, abs=6e-5) for value in rains),
    ]


@pytest.mark.parametrize("rate", [0.5, 1.0, 2.0, 5.0, 10.0, 20.0])
def test_independent_ways_to_free_driving_rain_agree_within_an_eighth(rate: float) -> None:
    index = hourly_driving_rain(1.0, rate, 0.0)
    others = (0.0036 * water_in_air(rate), rate / fall_speed(median_diameter(rate)), lacy_driving_rain(1.0, rate))
    assert [index] * 3 == [pytest.approx(other, rel=0.125) for other in others]


@pytest.mark.parametrize(("height", "wind"), [(50.0, 1.495), (10.0, 1.0), (2.7, 0.721)])
def test_the_wind_of_a_suburb_at_a_height_is_as_worked(height: float, wind: float) -> None:
    assert wind == pytest.approx(power_law_wind(1.0, height, 0.25), abs=0.0005)


# rain, mean wind, and the mean over eight walls of the index summed over the hours of three years; noaa-isd-lite
@pytest.mark.parametrize(
    ("rain", "wind", "walls"),
    [
        (881, 3.0, (82, 66, 84, 344, 546, 474, 196, 95)),
        (276, 3.6, (183, 137, 62, 43, 36, 33, 62, 146)),
        (906, 4.3, (328, 399, 357, 301, 280, 228, 164, 198)),
        (1326, 3.2, (398, 418, 356, 283, 253, 221, 224, 292)),
        (1133, 5.0, (595, 866, 786, 488, 283, 204, 162, 267)),
        (1222, 2.9, (402, 443, 355, 308, 301, 232, 158, 241)),
    ],
)
def test_the_fitted_mean_of_walls_is_within_two_deviations(rain: float, wind: float, walls: tuple[int, ...]) -> None:
    assert fmean(walls) == pytest.approx(mean_wall_driving_rain(rain, wind), rel=0.26)


def counted(slant: float, rate: float, falling: bool) -> float:
    """The share past an edge by a count of a great many drops."""
    scale, drops = size_scale(rate), 40000
    passed = total = 0.0
    for number in range(drops):
        # equal shares of the water, so that each drop stands for as much
        speed = fall_speed(scale * (-math.log1p(-(number + 0.5) / drops)) ** (1 / 2.25))
        weight = speed if falling else 1.0
        total += weight
        passed += weight if speed <= slant else 0.0
    return passed / total


@pytest.mark.parametrize(("share", "falling"), [(share_past_edge, False), (share_falling_past_edge, True)])
@pytest.mark.parametrize("rate", [0.05, 0.5, 2.0, 30.0, 150.0])
@pytest.mark.parametrize("slant", [0.1, 0.5, 2.87, 4.5, 7.0, 9.1])
def test_the_share_equals_a_count_of_drops(share: Share, falling: bool, rate: float, slant: float) -> None:
    assert counted(slant, rate, falling) == pytest.approx(share(slant, rate), abs=5e-5)


@pytest.mark.parametrize("share", SHARES)
@pytest.mark.parametrize("rate", RATES)
def test_no_rain_reaches_the_edge_itself_and_no_share_leaves_its_bounds(share: Share, rate: float) -> None:
    shares = [share(slant, rate) for slant in SLANTS]
    assert (shares[0], min(shares), max(shares) <= 1.0) == (0.0, 0.0, True)


@pytest.mark.parametrize("share", SHARES)
@pytest.mark.parametrize("rate", RATES)
def test_more_slant_never_leaves_less_rain(share: Share, rate: float) -> None:
    shares = [share(slant, rate) for slant in SLANTS]
    assert [] == [pair for pair in pairwise(shares) if pair[1] < pair[0] - 1e-12]
    assert shares[3] < shares[60]


@pytest.mark.parametrize("share", SHARES)
@pytest.mark.parametrize("slant", [0.2, 1.0, 3.0, 5.0, 8.0, 9.1])
def test_heavier_rain_falls_more_steeply(share: Share, slant: float) -> None:
    shares = [share(slant, rate) for rate in RATES]
    assert shares == sorted(shares, reverse=True)
    assert shares[-1] < shares[0]


@pytest.mark.parametrize("rate", RATES)
def test_a_level_surface_takes_a_smaller_share_than_a_wall(rate: float) -> None:
    pairs = [(share_falling_past_edge(slant, rate), share_past_edge(slant, rate)) for slant in SLANTS]
    assert [] == [pair for pair in pairs if pair[0] > pair[1] + 1e-12]
    assert any(level < 0.6 * wall for level, wall in pairs)


@pytest.mark.parametrize("slant", [FASTEST, 12.0, 1e6])
@pytest.mark.parametrize("share", [share_past_edge, share_falling_past_edge])
def test_wind_past_the_fastest_drops_leaves_nothing_dry(share: Share, slant: float) -> None:
    assert 1.0 == share(slant, 2.0)


@pytest.mark.parametrize("share", [share_past_edge, share_falling_past_edge])
@pytest.mark.parametrize("speed", SPEEDS[1:-1])
def test_the_share_does_not_jump_at_a_point_of_the_table(share: Share, speed: float) -> None:
    around = [share(speed * (1 + step), 2.0) for step in (-1e-9, 0.0, 1e-9)]
    assert around[1:] == pytest.approx(around[:-1], abs=1e-7)


@pytest.mark.parametrize("diameter", [0.03, 0.078, 0.31, 1.0, 2.77, 5.05, 5.799])
def test_a_speed_leads_back_to_its_diameter(diameter: float) -> None:
    assert diameter == pytest.approx(diameter_falling_at(fall_speed(diameter)), rel=1e-12)


def test_larger_drops_fall_faster_throughout_the_table() -> None:
    assert (sorted(set(SPEEDS)), sorted(set(DIAMETERS)), 36) == (list(SPEEDS), list(DIAMETERS), len(SPEEDS))


def test_drops_beyond_the_table_fall_as_the_largest() -> None:
    assert (FASTEST, math.inf) == (fall_speed(7.0), diameter_falling_at(FASTEST))


# the line at 60 degrees from the level leaves 1.73 m of wall for each metre of reach
@pytest.mark.parametrize(
    ("wind", "shares"),
    [(2.0, (0.32, 0.23, 0.15)), (3.0, (0.70, 0.57, 0.41)), (4.0, (0.96, 0.90, 0.76)), (6.0, (1.0, 1.0, 1.0))],
)
def test_the_line_at_60_degrees_is_dry_in_calm_air_only(wind: float, shares: tuple[float, ...]) -> None:
    slant = wind * sheltered_height(1.0, 30.0)
    # 0.41 was worked as 0.405 and seems to have been rounded twice
    assert shares == pytest.approx([share_past_edge(slant, rate) for rate in (1.0, 2.0, 5.0)], abs=0.006)


@pytest.mark.parametrize("share", SHARES)
@pytest.mark.parametrize(
    ("slant", "rate", "message"),
    [
        (-1.0, 2.0, "slant: wanted 0 or more; got -1"),
        (1.0, 0.0, "rate: wanted a number above 0; got 0"),
        (math.nan, 2.0, "slant: wanted 0 or more; got nan"),
    ],
)
def test_impossible_inputs_are_refused(share: Share, slant: float, rate: float, message: str) -> None:
    with pytest.raises(ValueError, match=f"^{message}$"):
        share(slant, rate)

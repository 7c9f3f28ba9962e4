"""The lot: weather, snow, frost, ground and insects."""

from __future__ import annotations

from typing import ClassVar

from speclint.model import settings as say
from speclint.model.element import Element, element
from speclint.model.settings import ByBearing
from speclint.units import PSF


@element
class Site(Element):
    """The lot and its weather. One to a plan."""

    kind: ClassVar[str] = "site"
    single: ClassVar[bool] = True

    weather: str | None = say.station(
        "the nearest station of the reference table, by name and state", '"Marquette, MI"'
    )
    latitude: float | None = say.number("ratio", "degrees north of the equator", "46.5", -90, 90)
    longitude: float | None = say.number("ratio", "degrees east of Greenwich; west is negative", "-87.4", -180, 180)
    elevation: float | None = say.length("height of the lot above the sea", "1,400 ft", low=-200, high=6000)
    terrain: str | None = say.choice(
        "what the wind crosses before it reaches the house",
        {
            "open water": "a lake, a bay or the sea",
            "open country": "fields or grass with few obstacles",
            "suburban": "villages, suburbs or scattered trees",
            "wooded": "forest on every side",
        },
    )
    hill_slope: float | None = say.slope(
        "slope of the ground that rises to the house, where it stands on the crest of a hill", "15%", low=0, high=2
    )
    rain_wind: float | None = say.bearing("the direction that driving rain comes from", "SW")
    rain_shares: ByBearing | None = say.shares(
        "shares of the driving rain by the direction it comes from", "S 30%, SW 45%, W 25%"
    )
    rain_record: str | None = say.record(
        "the hourly record of rain and wind of the lot: a shipped one by name, or a CSV file beside the plan",
        '"Boston, MA"',
    )
    skyline: ByBearing | None = say.skyline(
        "height of hills or woods on the horizon that hide the sun, by bearing; level where none is named",
        "S 12 deg, W 25 deg",
    )
    mean_wind: float | None = say.number(
        "speed", "mean wind speed of the year, 10 m above an open field near the lot", "9 mph", 0.447, 30
    )
    rain_intensity: float | None = say.number(
        "rain rate", "rain of the worst five minutes, that gutters are sized for", "4 in/h", 0, 500
    )
    ground_snow: float | None = say.number("pressure", "ground snow load of the local code", "70 psf", 0, 600 * PSF)
    frost_depth: float | None = say.length("frost line of the local code, below grade", '48"', high=5)
    ice_barrier: str | None = say.yes_no("whether the local code asks for an ice barrier at eaves")
    wind: float | None = say.number("speed", "design wind speed of the local code", "115 mph", 0, 120)
    termites: str | None = say.choice(
        "termite class of the local code",
        {
            "slight": "none to slight",
            "moderate": "slight to moderate",
            "heavy": "moderate to heavy",
            "very heavy": "very heavy",
        },
    )
    salt_water: float | None = say.length("distance to salt water", "2 mi", high=5_000_000)
    soil: str | None = say.choice(
        "the soil the footings stand on",
        {
            "clay or silt": "clay, sandy clay or silt",
            "sand": "sand or silty sand",
            "gravel": "gravel or sandy gravel",
            "rock": "bedrock",
            "expansive": "soil that swells when wet",
        },
    )


@element
class Foundation(Element):
    """What the house stands on."""

    kind: ClassVar[str] = "foundation"

    type: str | None = say.choice(
        "how the house meets the ground",
        {
            "crawl space": "walls round a low space over earth",
            "basement": "walls round a room below grade",
            "slab": "a slab on grade",
            "piers": "separate piers",
        },
    )
    top: float | None = say.length(
        "its top above the ground, at the place where it stands least above it", '18"', then=[("above grade", "")]
    )
    face: float | None = say.length(
        "how far the foundation stands out past the wall above it; negative where the wall overhangs",
        '-1/2"',
        low=-1,
        high=1,
    )
    ledge: str | None = say.choice(
        "what becomes of water on a foundation that stands out",
        {
            "none": "no ledge",
            "sloped": "beveled outward 15 degrees or more",
            "flashed": "metal with a drip",
            "flat": "bare",
        },
    )
    capillary_break: str | None = say.choice(
        "what keeps the damp of the masonry out of the wood on it",
        {"membrane": "a waterproof sheet", "gasket": "a sill gasket", "metal": "a metal shield", "none": "nothing"},
    )
    joists_above_earth: float | None = say.length("floor joists above the earth of a crawl space", '24"')
    girders_above_earth: float | None = say.length("girders above the earth of a crawl space", '16"')
    ground_cover: str | None = say.choice(
        "what covers the earth of a crawl space", {"vapour sheet": "a lapped sheet", "none": "bare earth"}
    )
    drain: str | None = say.choice(
        "the perimeter drain",
        {"daylight": "piped to daylight", "sump": "piped to a sump", "none": "no drain"},
    )
    foam: str | None = say.choice(
        "foam insulation outside",
        {"none": "none", "above grade": "held above grade", "below grade": "reaches into the ground"},
    )
    termite_barrier: str | None = say.choice(
        "what keeps termites from the wood unseen",
        {
            "soil treatment": "treated soil",
            "bait": "bait stations",
            "metal shield": "a continuous metal shield",
            "treated wood": "treated sill and posts",
            "none": "nothing",
        },
    )

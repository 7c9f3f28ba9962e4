"""Valid plans, drawn from the model itself: every element, setting, choice and unit that the language knows."""

from __future__ import annotations

import math

from hypothesis import strategies as st

from speclint.model.element import settings_of
from speclint.model.kinds import KINDS
from speclint.model.settings import Setting
from speclint.tables.species import all_species
from speclint.units import UNITS

# The units a value of a dimension may be written in, and what may stand between number and unit.
WRITTEN: dict[str, tuple[str, ...]] = {
    "length": ('"', "'", " mm", " cm", " m", " in", " ft"),
    "area": (" ft2", " m2"),
    "pressure": (" psf", " kPa", " psi"),
    "rain rate": (" in/h", " mm/h"),
    "speed": (" mph", " m/s", " km/h"),
    "percent": ("%",),
    "duration": (" days", " years"),
    "temperature": (" C",),
}
SPECIES = sorted(species.name for species in all_species())
STATIONS = ("Marquette, MI", "Duluth, MN", "Astoria, OR", "Boise, ID")
ON_LAND = {"latitude": ("40", "44.5"), "longitude": ("-90", "-104.2")}  # every pair of them lies among the stations
LINE_END = st.sampled_from(["\n", ";  ", "\n\n", "  # a note; with a semicolon\n"])


def bearing() -> st.SearchStrategy[str]:
    return st.one_of(
        st.sampled_from(["N", "SSW", "NW", "south", "north-east"]),
        st.integers(0, 360).map(lambda degrees: f"{degrees} deg"),
        st.builds(
            "{} {} {}".format, st.sampled_from(["N", "S"]), st.integers(0, 90), st.sampled_from(["E", "W"])
        ),
    )  # fmt: skip


def amount(setting: Setting, unit: str) -> st.SearchStrategy[str]:
    """A number in a unit, within the range of the setting; a tenth of the unit, or a thousandth, is the finest step."""
    scale = UNITS[unit.strip()][1]
    low, high = (setting.low or 0.0) / scale, (setting.high or 100.0) / scale
    finest = 10 if (high - low) * 10 > 2 else 1000
    steps = st.integers(math.ceil(low * finest + 1e-6), math.floor(min(high, 1e8) * finest - 1e-6))
    return steps.map(lambda parts: f"{parts / finest:.10g}{unit}")


def plain(setting: Setting, finest: int) -> st.SearchStrategy[str]:
    """A plain number within the range of the setting."""
    low, high = setting.low or 0.0, 100.0 if setting.high is None else setting.high
    steps = st.integers(math.ceil(low * finest), math.floor(high * finest))
    return steps.map(lambda parts: f"{parts / finest:.10g}")


def written(setting: Setting) -> st.SearchStrategy[str]:
    """A value of a setting other than a part, as text."""
    if setting.name in ON_LAND:
        return st.sampled_from(ON_LAND[setting.name])
    if setting.choices is not None:
        return st.sampled_from(sorted(setting.choices))
    match setting.dimension:
        case "text":
            return st.text("abc XY,;#{}'😀é", max_size=12).map('"{}"'.format)
        case "station":
            return st.sampled_from(STATIONS).map('"{}"'.format)
        case "species":
            return st.sampled_from(SPECIES)
        case "angle":
            return bearing()
        case "record":
            return st.sampled_from(["Boston, MA", "Eugene, OR"]).map('"{}"'.format)
        case "shares":
            return st.sampled_from(["S 100%", "N 25%, S 10 E 75%", "SW 33%, W 33%, NW 34%"])
        case "skyline":
            return st.sampled_from(["S 12 deg", "E 3 deg, S 20 W 40 deg"])
        case "slope":
            return plain(setting, 100).map(lambda ratio: f"{float(ratio) * 100:.10g}%")
        case "section":
            return st.sampled_from(["8x8", "2x12", "200x200 mm", '10"', "3x4"])
        case "count":
            return plain(setting, 1)
        case "ratio" | "index":
            return plain(setting, 10)
    if setting.dimension == "temperature":
        fahrenheit = st.integers(-20, 140).map("{} F".format)
        return st.one_of(fahrenheit, amount(setting, " C"))
    return st.sampled_from(WRITTEN[setting.dimension]).flatmap(lambda unit: amount(setting, unit))


def value(setting: Setting) -> st.SearchStrategy[str]:
    """A value, or `unknown`, or a value that is assumed."""
    return st.one_of(written(setting), written(setting), st.just("unknown"), written(setting).map("assumed {}".format))


@st.composite
def block(draw: st.DrawFn, kind: str, labels: list[str]) -> str:
    """Some settings of an element in a block; `labels` are the elements of the plan that it may name."""
    settings = settings_of(KINDS[kind])
    notes = []
    for name in draw(st.lists(st.sampled_from(sorted(settings)), unique=True, max_size=8)):
        setting = settings[name]
        if setting.dimension != "part":
            notes.append(f"{name} {draw(value(setting))}")
            continue
        known = [label for label in labels if label.split()[0] in setting.refers]
        if known:
            most = 3 if setting.many else 1
            parts = draw(st.lists(st.sampled_from(known), unique=True, min_size=1, max_size=most))
            notes.append(f"{name} {', '.join(parts)}")
    body = "".join(f"  {note}{draw(LINE_END)}" for note in notes)
    return f"{{ {body}}}"


@st.composite
def plans(draw: st.DrawFn) -> str:
    """A whole valid plan."""
    kinds = draw(st.lists(st.sampled_from(sorted(KINDS)), max_size=8))
    labels = dict.fromkeys(kind if KINDS[kind].single else f"{kind} k{number}" for number, kind in enumerate(kinds))
    parts = [f"{label} {draw(block(label.split()[0], list(labels)))}" for label in labels]
    for kind in draw(st.lists(st.sampled_from(sorted(set(kinds) or {"wall"})), unique=True, max_size=2)):
        parts.append(f"typical {kind} {draw(block(kind, list(labels)))}")
    if labels and draw(st.booleans()):
        label = draw(st.sampled_from(sorted(labels)))
        parts.append(f'alternate "another" {{ {label} {draw(block(label.split()[0], list(labels)))} }}')
    if draw(st.booleans()):
        parts.append('variance sill-too-near-grade { because "a {test}; of"; accepted by "A"; until 2027-06-30 }')
    return draw(st.sampled_from(["\n", "\n\n", " ; "])).join(draw(st.permutations(parts)))

"""Rain and sun on the walls of a plan, in one screen: who is in trouble, where, and what cover would help."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby
from operator import itemgetter

from speclint.exposure.climates import RainClimate
from speclint.measures.course_table import CourseTable, course_table
from speclint.measures.cover_options import Option, Options
from speclint.measures.exposure import EXPOSED, LIMITS, SHELTERED
from speclint.measures.facts import Facts, Sheet
from speclint.outputs.letter import Line, Part, Role
from speclint.quantity import Absent, Quantity, shown
from speclint.units import System

ROLES: dict[str, Role] = {"exposed": "hold", "partly": "revise", "sheltered": "good"}


@dataclass(frozen=True, slots=True)
class WallView:
    """What the screen tells of one wall."""

    wall: Facts
    found: dict[str, Quantity | Absent]
    table: CourseTable

    def value(self, name: str) -> object:
        """The value of a measure, or nothing where it is not known."""
        quantity = self.found[name]
        return quantity.value if isinstance(quantity, Quantity) else None

    def words(self, name: str, system: System) -> str:
        """The value of a measure as the reader writes it; a dash where it is not known."""
        quantity = self.found[name]
        return quantity.shown(system) if isinstance(quantity, Quantity) else "-"


WIDER_WORDS = {"imperial": ('+6"', '+12"', '+24"'), "metric": ("+150 mm", "+300 mm", "+600 mm")}
PORCH_WORDS = {"imperial": "8' porch", "metric": "2.4 m porch"}
MEASURES = (
    "faces", "free driving rain", "rain share", "rain exposure", "rain class", "rain on wall", "ultraviolet share",
    "sun class", "dries slowly", "cover options", "rain rank", "standard rain load", "sheltered height",
)  # fmt: skip


def wall_view(sheet: Sheet, wall: Facts) -> WallView:
    """Everything that the screen tells of a wall."""
    return WallView(wall, {name: sheet.quantity(wall, name) for name in MEASURES}, course_table(sheet, wall))


def exposure_lines(sheet: Sheet, system: System, only: Facts | None = None) -> list[Line]:
    """The screen of a plan, or of one wall of it."""
    walls = [only] if only else sheet.of_kind("wall")
    views = [wall_view(sheet, wall) for wall in walls]
    lines: list[Line] = [(Part(f"{sheet.home.name}: rain and sun on its walls", "title"),), ()]
    if not views:
        return [*lines, (Part("  the plan has no wall", "quiet"),)]
    lines += _weather(sheet, system)
    size = max(8, *(len(view.wall.element.name) + 2 for view in views))
    lines += _walls(views, size, system)
    lines += _strips(views, size)
    lines += _options(views, size, system)
    lines += _not_known(views)
    return [*lines, *_limits(sheet)]


def _weather(sheet: Sheet, system: System) -> list[Line]:
    site = sheet["site"] if "site" in sheet.facts else None
    if site is None:
        return []
    lines: list[Line] = []
    rain, sun = sheet.quantity(site, "rain climate"), sheet.quantity(site, "sun climate")
    if isinstance(rain, Quantity) and isinstance(rain.value, RainClimate):
        direction, steadiness = rain.value.direction
        came = sheet.quantity(site, "driving rain")
        amount = came.shown(system) if isinstance(came, Quantity) else "-"
        bearing = shown(float(round(direction)), "angle", system)
        steady = f"steadiness {steadiness:.2f}" + ("" if steadiness >= 0.3 else ": it changes from year to year")
        told = f"on the whole from {bearing} ({steady}); {amount} a year on an open wall, mean of all bearings"
        lines += [(Part("Rain  ", "label"), Part(told)), (Part(f"      {rain.value.title}", "quiet"),)]
    if isinstance(sun, Quantity):
        lines.append((Part("Sun   ", "label"), Part(str(sun.value), "quiet")))
    return [*lines, ()] if lines else []


def _cell(text: str, size: int, role: Role = "plain") -> list[Part]:
    """A text of a column, with its pad apart so that a mark covers the text alone."""
    return [Part(text, role), Part(" " * max(2, size - len(text)))]


def _name(view: WallView, size: int) -> list[Part]:
    return _cell(view.wall.element.name or view.wall.label, size, "element")


def _walls(views: list[WallView], size: int, system: System) -> list[Line]:
    heads = (("wall", size), ("faces", 9), ("driven at it", 24), ("strikes wood", 16), ("of open wall", 17), ("UV", 7))
    lines: list[Line] = [(Part("".join(f"{head:<{wide}}" for head, wide in heads) + "dries", "label"),)]
    for view in views:
        rain, sun = str(view.value("rain class") or "-"), str(view.value("sun class") or "-")
        slow = {"yes": "slowly", "no": "well"}.get(str(view.value("dries slowly")), "-")
        lines.append(
            (
                *_name(view, size),
                *_cell(view.words("faces", system), 9),
                *_cell(_bounded(view, "free driving rain", system), 24),
                *_cell(_bounded(view, "rain share", system), 16, "number"),
                *_cell(f"{view.words('rain exposure', system)} {rain}", 17, ROLES.get(rain, "quiet")),
                *_cell(view.words("ultraviolet share", system), 7, ROLES.get(sun, "quiet")),
                Part(slow, "revise" if slow == "slowly" else "plain"),
            )
        )
    for told in (
        "  of open wall: 1.00 is a bare wall, mean of all bearings; sheltered to 0.25, exposed above 0.60 (ours)",
        "  UV: ultraviolet light against a bare wall to the noon sun, the same bounds",
    ):
        lines.append((Part(told, "quiet"),))
    return [*lines, ()]


def _bounded(view: WallView, name: str, system: System) -> str:
    quantity = view.found[name]
    if not isinstance(quantity, Quantity):
        return "-"
    bounds = quantity.shown_range(system).replace(" to ", "-")
    for unit in ("%", " in", " mm"):  # one unit is enough
        if bounds.endswith(unit):
            bounds = bounds.replace(f"{unit}-", "-")
    return f"{quantity.shown(system)} ({bounds})" if bounds else quantity.shown(system)


def _strips(views: list[WallView], size: int) -> list[Line]:
    lines: list[Line] = []
    for view in views:
        shares = [float(row["rain share"] or 0.0) for row in view.table.rows]
        share, exposure = view.value("rain share"), view.value("rain exposure")
        known = isinstance(share, float) and isinstance(exposure, float) and share > 0
        driven = exposure / share if known else 1.0  # type: ignore[operator]
        marks = [(_mark(share * driven), str(min(9, int(share * 10)))) for share in shares]
        runs = [Part("".join(digit for _, digit in run), role) for role, run in groupby(marks, key=itemgetter(0))]
        if runs:
            wet = f"  {sum(share * driven > EXPOSED for share in shares)} of {len(shares)} courses exposed"
            lines.append((*_name(view, size), *runs, Part(wet, "quiet")))
    if not lines:
        return []
    title = "Share of the driving rain that strikes each course, in tenths"
    return [(Part(title, "label"), Part("  left the lowest, right the top", "quiet")), *lines, ()]


def _mark(exposure: float) -> Role:
    """By the rain on a course against the mean open wall, so that a lee wall is not marked for rain it never gets."""
    return "hold" if exposure > EXPOSED else "revise" if exposure > SHELTERED else "good"


def _options(views: list[WallView], size: int, system: System) -> list[Line]:
    found = [(view, view.value("cover options")) for view in views]
    known = [(view, options) for view, options in found if isinstance(options, Options)]
    if not known:
        return []
    wide, porch = WIDER_WORDS[system], PORCH_WORDS[system]
    heads = (("wall", size), ("as drawn", 11), (wide[0], 10), (wide[1], 10), (wide[2], 10), (porch, 13))
    lines: list[Line] = [
        (Part("What more cover would do", "label"), Part("  share of the driving rain that strikes the wood", "quiet")),
        (Part("".join(f"{head:<{width}}" for head, width in heads), "label"),),
    ]
    for view, options in known:
        cells = [f"{way.share * 100:.0f}%" for way in options.ways]
        cells += ["-"] * (5 - len(cells))
        told = "".join(f"{cell:<{width}}" for cell, (_, width) in zip(cells, heads[1:], strict=True))
        lines.append((*_name(view, size), Part(told), _advice(options, wide, porch)))
    return [*lines, ()]


def options_words(options: Options, system: System) -> str:
    """The ways to cover a wall better, each with the share of driving rain that strikes the wood then."""
    names = ("as drawn", *WIDER_WORDS[system], PORCH_WORDS[system])
    return ", ".join(f"{name} {way.share * 100:.0f}%" for name, way in zip(names, options.ways, strict=False))


def _advice(options: Options, wide: tuple[str, ...], porch: str) -> Part:
    enough = options.enough
    if options.ways[0].exposure <= EXPOSED:
        return Part("not exposed as drawn", "good")
    if enough is None:
        return Part("none of these is enough: clad it", "hold")
    return Part(f"enough: {_words(enough, options, wide, porch)}", "revise")


def _words(way: Option, options: Options, wide: tuple[str, ...], porch: str) -> str:
    if way.kind == "porch":
        return f"a {porch} along it"
    return f"a roof edge {wide[options.ways.index(way) - 1]}"


def _not_known(views: list[WallView]) -> list[Line]:
    lines: list[Line] = []
    for view in views:
        for found in view.table.absent[:1]:
            wants = ", ".join(f"{missing.setting} of {missing.element}" for missing in found.missing)
            why = found.reason or f"the plan does not say: {wants}"
            lines.append(
                (Part(f"{view.wall.label}  ", "element"), Part("not known", "revise"), Part(f": {why}", "quiet"))
            )
    return [*lines, ()] if lines else []


def _limits(sheet: Sheet) -> list[Line]:
    site = sheet["site"] if "site" in sheet.facts else None
    rain = sheet.quantity(site, "rain climate") if site else None
    notes = list(rain.notes) if isinstance(rain, Quantity) else []
    lines: list[Line] = [(Part("Read with care", "label"),)]
    for note in (*notes, LIMITS, "amounts are unsure by a factor of two; shares and the ranking of walls are surer"):
        lines.append((Part(f"  {note}", "quiet"),))
    return lines

"""Rain and sun on the walls of a plan, in one screen: who is in trouble, where, and what cover would help."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby
from operator import itemgetter

from speclint.exposure.climates import RainClimate
from speclint.measures.course_table import CourseTable, course_table
from speclint.measures.cover_options import Options
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


FULL = 100  # columns from which the bounds are shown beside the values
MEASURES = (
    "faces", "free driving rain", "rain share", "rain exposure", "rain class", "rain on wall", "mean open wall",
    "exposed courses", "ultraviolet share", "sun class", "dries slowly", "cover options", "rain rank",
    "standard rain load", "sheltered height",
)  # fmt: skip


def wall_view(sheet: Sheet, wall: Facts) -> WallView:
    """Everything that the screen tells of a wall."""
    return WallView(wall, {name: sheet.quantity(wall, name) for name in MEASURES}, course_table(sheet, wall))


def exposure_lines(sheet: Sheet, system: System, only: Facts | None = None, width: int = 110) -> list[Line]:
    """The screen of a plan, or of one wall of it."""
    walls = [only] if only else sheet.of_kind("wall")
    views = [wall_view(sheet, wall) for wall in walls]
    lines: list[Line] = [(Part(f"{sheet.home.name}: rain and sun on its walls", "title"),), ()]
    if not views:
        return [*lines, (Part("  the plan has no wall", "quiet"),)]
    lines += _weather(sheet, views, system)
    size = max(8, *(len(view.wall.element.name) + 2 for view in views))
    lines += _worst(views, system)
    lines += _walls(views, size, system, width >= FULL)
    lines += _strips(views, size)
    lines += _options(views, size, system)
    lines += _not_known(views)
    return [*lines, *_limits(sheet)]


def _weather(sheet: Sheet, views: list[WallView], system: System) -> list[Line]:
    site = sheet["site"] if "site" in sheet.facts else None
    if site is None:
        return []
    lines: list[Line] = []
    rain, sun = sheet.quantity(site, "rain climate"), sheet.quantity(site, "sun climate")
    if isinstance(rain, Quantity) and isinstance(rain.value, RainClimate):
        direction, steadiness = rain.value.direction
        bearing = shown(float(round(direction)), "angle", system)
        steady = f"steadiness {steadiness:.2f}" + ("" if steadiness >= 0.3 else ": it changes from year to year")
        open_wall = next((view.words("mean open wall", system) for view in views if view.value("mean open wall")), "-")
        told = f"on the whole from {bearing} ({steady}); {open_wall} a year on a bare wall of the lot, mean of bearings"
        lines += [(Part("Rain  ", "label"), Part(told)), (Part(f"      {rain.value.title}", "quiet"),)]
        lines += _hazard(sheet, site)
    if isinstance(sun, Quantity):
        lines.append((Part("Sun   ", "label"), Part(str(sun.value), "quiet")))
    return [*lines, ()] if lines else []


def _hazard(sheet: Sheet, site: Facts) -> list[Line]:
    """How well the climate suits decay, since walls are compared with each other and not with other places."""
    index, hazard = sheet.quantity(site, "decay hazard index"), sheet.quantity(site, "decay hazard")
    if not isinstance(index, Quantity) or not isinstance(hazard, Quantity):
        return []
    told = f"decay hazard {hazard.value} (index {index.value:.0f})"
    pressing = ": an exposed wall here weathers more than it rots" if hazard.value == "low" else ""
    return [(Part("Decay ", "label"), Part(told + pressing))]


def _worst(views: list[WallView], system: System) -> list[Line]:
    """The wall that takes most, and the cheapest cover that is enough for it."""
    known = [(found, view) for view in views if isinstance(found := view.value("rain exposure"), float)]
    if len(known) < 2:
        return []
    exposure, view = max(known, key=lambda pair: pair[0])
    options = view.value("cover options")
    if exposure <= EXPOSED or not isinstance(options, Options):
        return [(Part("No wall is exposed as drawn.", "good"),), ()]
    told = (
        f": {exposure:.2f} of a bare wall, {view.words('exposed courses', system)} of {len(view.table.rows)} courses; "
    )
    return [(Part("Worst ", "label"), Part(view.wall.label, "element"), Part(told), _advice(options, system)), ()]


def _cell(text: str, size: int, role: Role = "plain") -> list[Part]:
    """A text of a column, with its pad apart so that a mark covers the text alone."""
    return [Part(text, role), Part(" " * max(2, size - len(text)))]


def _name(view: WallView, size: int) -> list[Part]:
    return _cell(view.wall.element.name or view.wall.label, size, "element")


def _walls(views: list[WallView], size: int, system: System, full: bool) -> list[Line]:
    wide = (24, 16) if full else (11, 9)
    heads = (("wall", size), ("faces", 9), ("driven", wide[0]), ("strikes", wide[1]), ("of bare wall", 17), ("UV", 7))
    lines: list[Line] = [(Part("".join(f"{head:<{column}}" for head, column in heads) + "sun dries it", "label"),)]
    for view in views:
        rain, sun = str(view.value("rain class") or "-"), str(view.value("sun class") or "-")
        slow = {"yes": "slowly", "no": "yes"}.get(str(view.value("dries slowly")), "-")
        driven, strikes = ("free driving rain", "rain share")
        lines.append(
            (
                *_name(view, size),
                *_cell(view.words("faces", system), 9),
                *_cell(_bounded(view, driven, system) if full else view.words(driven, system), wide[0]),
                *_cell(_bounded(view, strikes, system) if full else view.words(strikes, system), wide[1], "number"),
                *_cell(f"{view.words('rain exposure', system)} {rain}", 17, ROLES.get(rain, "quiet")),
                *_cell(view.words("ultraviolet share", system), 7, ROLES.get(sun, "quiet")),
                Part(slow, "revise" if slow == "slowly" else "plain"),
            )
        )
    for told in (
        "  driven: rain a year at the open wall; strikes: the share of it that passes the roofs to the wood",
        "  of bare wall: against the mean bare wall of this lot; sheltered to 0.25, exposed above 0.75 (ours)",
        "  UV: ultraviolet light against a bare wall to the noon sun; exposed above 60% (ours)",
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
    title = "Share that strikes each course, in tenths"
    told = "  left the lowest, right the top; marked where it is exposed or partly so"
    return [(Part(title, "label"), Part(told, "quiet")), *lines, ()]


def _mark(exposure: float) -> Role:
    """By the rain on a course against the mean open wall, so that a lee wall is not marked for rain it never gets."""
    return "hold" if exposure > EXPOSED else "revise" if exposure > SHELTERED else "good"


def _options(views: list[WallView], size: int, system: System) -> list[Line]:
    found = [(view, view.value("cover options")) for view in views]
    known = [(view, options) for view, options in found if isinstance(options, Options)]
    if not known:
        return []
    heads = (("wall", size), *zip(way_words(system), (11, 9, 9, 9, 13, 15), strict=True))
    lines: list[Line] = [
        (Part("What more cover would do", "label"), Part("  share of the driving rain that strikes the wood", "quiet")),
        (Part("".join(f"{head:<{width}}" for head, width in heads), "label"),),
    ]
    for view, options in known:
        cells = [f"{way.share * 100:.0f}%" for way in options.ways]
        cells += ["-"] * (len(heads) - 1 - len(cells))
        told = "".join(f"{cell:<{width}}" for cell, (_, width) in zip(cells, heads[1:], strict=True))
        lines.append((*_name(view, size), Part(told), _advice(options, system)))
    return [*lines, ()]


def way_words(system: System) -> tuple[str, ...]:
    """The names of the ways to cover a wall, in the order of `Options`."""
    if system == "imperial":
        return ("as drawn", '+6"', '+12"', '+24"', "8' porch", 'porch, +24"')
    return ("as drawn", "+150", "+300", "+600 mm", "porch 2.4 m", "porch, +600")


def options_words(options: Options, system: System) -> str:
    """The ways to cover a wall better, each with the share of driving rain that strikes the wood then."""
    named = zip(way_words(system), options.ways, strict=False)
    return ", ".join(f"{name} {way.share * 100:.0f}%" for name, way in named)


def _advice(options: Options, system: System) -> Part:
    enough = options.enough
    if options.ways[0].exposure <= EXPOSED:
        return Part("not exposed", "good")
    if enough is None:
        return Part("none is enough: a belt roof higher up, or cladding", "hold")
    word = way_words(system)[options.ways.index(enough)]
    told = {"wider": f"{word} of roof edge", "porch": f"{word} along it"}.get(enough.kind, word)
    return Part(f"enough: {told}", "revise")


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
    notes = [note for note in rain.notes if not note[:4].isdigit()] if isinstance(rain, Quantity) else []
    lines: list[Line] = [(Part("Read with care", "label"),)]
    for note in (*notes, LIMITS, "amounts on walls are unsure by a factor of two to three; shares and ranks are surer"):
        lines.append((Part(f"  {note}", "quiet"),))
    return lines

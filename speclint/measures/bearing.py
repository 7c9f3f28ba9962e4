"""What carries each part down to the soil, what its load passes on the way, and whether its supports settle alike."""

from __future__ import annotations

from speclint.citation import Citation
from speclint.measures.facts import Facts, Sheet, Working
from speclint.measures.register import measure
from speclint.relations.bearing import NOT_DRAWN, PASSES, SOIL, bearing_web
from speclint.relations.web import Tie, Web, told

CARRIED = "roof, porch, post, beam, deck, ledger"
PLAN = Citation("", "what the plan says bears on what", "ours")


def bearing_of(sheet: Sheet) -> tuple[Web, list[tuple[str, ...]]]:
    """What bears on what in the home of a sheet without its circles, and the circles; drawn once."""
    if "bearing" not in sheet.drawn:
        sheet.drawn["bearing"] = bearing_web(sheet.home).unrolled()
    web, circles = sheet.drawn["bearing"]
    assert isinstance(web, Web)
    return web, circles


@measure(CARRIED, "bearing way", "text", "the way of its load to the soil, or to where the plan shows no more")
def bearing_way(part: Facts, work: Working) -> str:
    """The way that is worst: one the plan does not show to its end before one that passes what should not carry."""
    work.cite(PLAN)
    return told(_worst_way(part)) or part.label


@measure(
    CARRIED, "bears through", "choice", "what its load passes that should carry none: veneer, boards, a cantilever"
)
def bears_through(part: Facts, work: Working) -> str:
    """The first such stop on any of its ways down."""
    web, _ = bearing_of(part.sheet)
    return next((web.nodes[name].kind for name in web.reached(part.label) if web.nodes[name].kind in PASSES), "nothing")


@measure(CARRIED, "carried", "yes or no", "whether the plan shows what it bears on")
def carried(part: Facts, work: Working) -> str:
    """Whether its own next stops are drawn; what those bear on is asked of them."""
    web, _ = bearing_of(part.sheet)
    work.cite(PLAN)
    for tie in web.out_of(part.label):
        if web.nodes[tie.target].kind == NOT_DRAWN:
            work.text = tie.target
            return "no"
    return "yes"


@measure(CARRIED, "missing support", "text", "what should carry it and is not in the plan")
def missing_support(part: Facts, work: Working) -> str:
    """The first of its next stops that the plan lacks."""
    web, _ = bearing_of(part.sheet)
    missing = (tie.target for tie in web.out_of(part.label) if web.nodes[tie.target].kind == NOT_DRAWN)
    return next(missing, "none")


@measure("post, beam", "bearing circle", "text", "the circle in which parts are said to bear on one another")
def bearing_circle(part: Facts, work: Working) -> str:
    """The circle, told at the part of it that the plan names first; nothing to tell elsewhere."""
    for circle in bearing_of(part.sheet)[1]:
        first = next(label for label in part.sheet.home.elements if label in circle)
        if first == part.label:
            at = circle.index(first)
            return " on ".join([*circle[at:-1], *circle[: at + 1]])
    return "none"


def _worst_way(part: Facts) -> tuple[Tie, ...]:
    web, _ = bearing_of(part.sheet)
    reached = web.reached(part.label)
    for kinds in ((NOT_DRAWN,), PASSES):
        for name in reached:
            if web.nodes[name].kind in kinds:
                return web.way(part.label, name)
    return web.way(part.label, SOIL)


@measure(
    "roof, beam, corner",
    "uneven settling",
    "length",
    "how much more one of the walls or posts it joins comes down than another",
)
def uneven_settling(part: Facts, work: Working) -> float:
    """Settling of its walls at the plate; posts stand still, save as far as an adjuster lets them follow."""
    supports = _supports(part, work)
    if len(supports) < 2:
        raise work.absent("it has one support, or the plan shows none")
    moves: list[tuple[float, float]] = []
    for support in supports:
        if support.element.kind == "wall":
            down = float(work.need(support, "settlement"))
            moves.append((down, down))
        else:
            adjusts = work.maybe(support, "adjuster") in ("jack", "shims")
            moves.append((0.0, float(work.maybe(support, "travel") or 0.0) if adjusts else 0.0))
    work.note("walls: " + ", ".join(support.label for support in supports if support.element.kind == "wall"))
    return max(0.0, max(least for least, _ in moves) - min(most for _, most in moves))


def _supports(part: Facts, work: Working) -> list[Facts]:
    """The walls and posts that a part bears on; for a corner, the walls that meet in it."""
    if part.element.kind == "corner":
        return list(part["of"] or ())
    if part.element.kind == "roof":
        return [wall for wall in part["covers"] or () if work.maybe(wall, "gable") != "yes"]
    return [support for support in part["on"] or () if support.element.kind in ("wall", "post")]

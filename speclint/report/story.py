"""The summary that a client understands: what holds the release, which walls stand worst, what to do, what it costs."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from speclint.forecast.whole import Forecast
from speclint.measures.cover_options import Option, Options
from speclint.measures.facts import Facts, Sheet
from speclint.quantity import Quantity
from speclint.report.advice import NOT_BUILT, RULE, Compared, best_of, count
from speclint.ruling import Review, comments
from speclint.units import System, show

YEAR = 365.25
LITTLE = 0.5  # of money: less is told as no change
SUNNY = 0.6  # ours: ultraviolet light against an open wall to the noon sun from which it is told
EXPOSED_CLASS = {
    "sheltered": "sheltered from driving rain",
    "partly": "partly exposed to driving rain",
    "exposed": "fully exposed to driving rain",
}
BEARS = {
    "ample": "its wood bears it with room to spare",
    "near": "about as much as its wood bears",
    "over": "more than its wood bears",
}
NO_WOOD_LEFT = "leaves no wood of it outside"
YARDSTICK = "1 is bare spruce that stands open in the rain of Helsinki, the place from which the decay guide counts"


@dataclass(frozen=True, slots=True)
class Blocker:
    """A finding that holds the release, in one line: its number, its title, and the elements it is about."""

    number: int
    title: str
    elements: str


@dataclass(frozen=True, slots=True)
class Story:
    """The summary in sentences.

    Attributes:
        verdict: How much is to be settled.
        blockers: What holds the release, one line each.
        trouble: The walls in their order and what is wrong with the worst.
        help: The one recommendation with its reason.
        costs: What recoating comes to.
        assumed: What the plan left out and was taken; empty where nothing was.
    """

    verdict: str
    blockers: tuple[Blocker, ...]
    trouble: tuple[str, ...]
    help: tuple[str, ...]
    costs: tuple[str, ...]
    assumed: str


def story(sheet: Sheet, review: Review, forecast: Forecast, others: tuple[Compared, ...], system: System) -> Story:
    """The summary of a plan."""
    return Story(
        _verdict(review),
        tuple(_blockers(review)),
        tuple(_trouble(sheet, system)),
        tuple(_help(sheet, others, forecast, system)),
        tuple(_costs(forecast)),
        _assumed(review),
    )


def _verdict(review: Review) -> str:
    holds, revises = count(review, "hold"), count(review, "revise")
    if not holds and not revises:
        return "Nothing holds the release, and nothing asks to be improved."
    told = [f"{holds} {'matter is' if holds == 1 else 'matters are'} to be settled before release"] if holds else []
    told += [f"{revises} should be improved"] if revises else []
    return _sentence(" and ".join(told))


def _blockers(review: Review) -> Iterator[Blocker]:
    for comment in comments(review.rulings):
        first = comment.rulings[0]
        if first.grade == "hold":
            elements = dict.fromkeys(ruling.element for ruling in comment.rulings)
            yield Blocker(comment.number, first.title or first.rule, ", ".join(elements))


def weather(wall: Facts) -> float | None:
    """Rain against the mean open wall, and ultraviolet light against an open wall to the noon sun, added; ours."""
    rain, light = wall["rain exposure"], wall["ultraviolet share"]
    return None if rain is None else float(rain) + float(light or 0.0)


def ranked(sheet: Sheet) -> list[Facts]:
    """The walls of wood, the one that takes most weather first."""
    known = [(load, wall) for wall in sheet.of_kind("wall") if wall["wooden"] == "yes" if (load := weather(wall))]
    return [wall for _, wall in sorted(known, key=lambda pair: -pair[0])]


def _trouble(sheet: Sheet, system: System) -> Iterator[str]:
    walls = ranked(sheet)
    if not walls:
        yield "Which wall stands worst cannot be told: the plan does not say enough of walls, roof and weather."
        return
    names = ", ".join(wall.element.name for wall in walls)
    if len(walls) > 1:
        yield (
            f"Walls from most weather to least: {names}. The order is that of rain on the wood against a bare "
            "wall here, plus ultraviolet light against an open wall to the noon sun; the rule is ours."
        )
    troubled = [wall for wall in walls if wall["rain class"] != "sheltered"]
    for wall in troubled[:2]:
        yield f"{wall.label.capitalize()}: {_joined(list(_of_wall(wall, system)))}."
    if not troubled:
        yield "Every wall is sheltered from most of the driving rain."
    yield from _over(walls)


def _of_wall(wall: Facts, system: System) -> Iterator[str]:
    struck = show(float(wall["rain share"]), "share", system)
    rain = float(wall["rain exposure"])
    yield f"it takes {rain:.2f} times the rain of a bare wall here ({struck} of what comes to it strikes its wood)"
    light = wall["ultraviolet share"]
    if light is not None and light > SUNNY:
        yield f"it takes {show(float(light), 'share', system)} of the ultraviolet light of an open wall to the noon sun"
    life = wall["likely finish life"]
    if life is not None:
        yield f"its coat will likely wear out in {show(float(life), 'duration', system)}"


def _over(walls: list[Facts]) -> Iterator[str]:
    """Which walls the decay guide puts beyond what their wood resists."""
    told = [wall for wall in walls if wall["decay verdict"] is not None]
    over = [wall for wall in told if wall["decay verdict"] == "over"]
    if not over:
        return
    worst = max(over, key=lambda wall: float(wall["decay exposure"]))
    number = f"{worst.element.name} is worst at {float(worst['decay exposure']):.2f} ({YARDSTICK})"
    times = f"{float(worst['decay margin']):.1f} times what its wood resists"
    if len(over) == len(told) > 1:
        yield f"By the decay guide all {len(told)} walls stand beyond what their wood resists: {number}, {times}."
    else:
        names = ", ".join(wall.element.name for wall in over)
        take = "takes more than its" if len(over) == 1 else "take more than their"
        yield f"By the decay guide {names} {take} wood resists: {number}, {times}."


def _help(sheet: Sheet, others: tuple[Compared, ...], forecast: Forecast, system: System) -> Iterator[str]:
    """One recommendation, with its reason."""
    best = best_of(others)
    worst = list(_for_worst(sheet, others, best, forecast))
    yield from worst
    if best is not None:
        raised = f"raises {len(best.raised)}" if best.raised else "raises none"
        cured = "1 finding" if len(best.cured) == 1 else f"{len(best.cured)} findings"
        rain = "; ".join(f"{wall.label} {wall.words}" for wall in best.walls)
        lead = "Most findings are cleared by" if worst else "Look first at"
        yield f"{lead} the alternate “{best.name}” ({'; '.join(best.changes)})."
        why = [f"it clears {cured} and {raised}", *([f"rain on the wood: {rain}"] if rain else [])]
        why += [saving(best, forecast)] if best.saved is not None or best.cannot else []
        yield f"Reason: {'; '.join(why)}. {_sentence(RULE)}"
    elif others:
        yield "No alternate of the plan clears more findings than it raises; what each does is in the table below."
    yield from _cover(sheet, others, system)


def _for_worst(sheet: Sheet, others: tuple[Compared, ...], best: Compared | None, forecast: Forecast) -> Iterator[str]:
    """What an alternate does for the wall that stands worst, where the one to look at first does nothing for it."""
    walls = [wall for wall in ranked(sheet)[:1] if wall["rain class"] != "sheltered"]
    if not walls or (best is not None and any(rain.label == walls[0].label for rain in best.walls)):
        return
    helps = [
        (rain, other)
        for other in others
        for rain in other.walls
        if rain.label == walls[0].label and (rain.now or 0.0) < rain.was
    ]
    if helps:
        rain, other = min(helps, key=lambda pair: pair[0].now or 0.0)
        does = f"brings its rain from {rain.words} of a bare wall here" if rain.now is not None else NO_WOOD_LEFT
        worst = f"For {walls[0].label}, which stands worst,"
        yield f"{worst} the alternate “{other.name}” {does}; {saving(other, forecast)}."


def saving(other: Compared, forecast: Forecast) -> str:
    """What an alternate saves of upkeep, or costs more, or why it cannot be told."""
    if other.cannot:
        return f"its upkeep cannot be compared: {', '.join(other.cannot)}"
    if other.saved is None:
        return "its upkeep is not known"
    if abs(other.saved) < LITTLE:
        return "no change in upkeep"
    money = forecast.rates.money(abs(other.saved))
    return f"it saves about {money} of upkeep, {NOT_BUILT}" if other.saved >= 0 else f"its upkeep costs {money} more"


def _cover(sheet: Sheet, others: tuple[Compared, ...], system: System) -> Iterator[str]:
    """More cover for the worst wall, where no alternate of the plan changes it already."""
    changed = {wall.label for other in others for wall in other.walls}
    for wall in ranked(sheet)[:1]:
        options = wall["cover options"]
        if not isinstance(options, Options) or wall["rain class"] == "sheltered" or wall.label in changed:
            continue
        now = f"{options.ways[0].exposure:.2f}"
        tried = options.enough or min(options.ways, key=lambda way: way.exposure)
        still = "" if options.enough else ", which is still exposed; choose wood and finish to match"
        if tried.kind != "as drawn" and (options.enough or options.ways[0].exposure > 0.75):
            yield (
                f"{wall.label.capitalize()}: {_way(tried, system)} would bring its rain from {now} to "
                f"{tried.exposure:.2f} of a bare wall here{still}; {NOT_BUILT}."
            )


def _way(option: Option, system: System) -> str:
    more = show(option.more, "length", system)
    if option.kind == "wider":
        return f"a roof edge {more} wider"
    if option.kind == "porch":
        return f"a porch {more} deep along all of it"
    return f"a wider roof edge together with a porch {more} deep along all of it"


def _costs(forecast: Forecast) -> Iterator[str]:
    outlook, rates = forecast.outlook, forecast.rates
    if not outlook.parts:
        return
    low, high = (f"{amount:,.0f}" for amount in (outlook.spent.low, outlook.spent.high))
    yield (
        f"Recoating each part when its coat wears out comes to about {rates.money(outlook.spent.likely)} of today over "
        f"{outlook.years} years ({low} to {high}){_left_out(forecast)}."
    )
    if forecast.states:
        yield (
            f"The plan itself states recoating every {forecast.states}; parts whose coats wear out sooner would then "
            "stand bare, and those that last longer would be coated early."
        )


def _left_out(forecast: Forecast) -> str:
    """The parts that a sum of upkeep leaves out, and why."""
    told = [f"{part.part} ({part.why})" for part in forecast.untold]
    return f", without {_joined(told)}" if told else ""


def _assumed(review: Review) -> str:
    if not review.assumed:
        return ""
    found: dict[str, list[str]] = {}
    for one in review.assumed:
        found.setdefault(f"{one.setting} {one.value}", []).append(one.element)
    return "; ".join(f"{words} ({', '.join(elements)})" for words, elements in found.items())


def wall_rows(sheet: Sheet, system: System) -> list[dict[str, str]]:
    """The walls in their order with what the summary tells of each."""
    rows = []
    for wall in ranked(sheet):
        life, light = wall["likely finish life"], wall["ultraviolet share"]
        decay = wall["decay exposure"]
        rows.append(
            {
                "wall": wall.element.name,
                "rain": f"{float(wall['rain exposure']):.2f}",
                "class": EXPOSED_CLASS.get(str(wall["rain class"]), "not known"),
                "light": show(float(light), "share", system) if light is not None else "not known",
                "life": show(float(life), "duration", system) if life is not None else "not known",
                "decay": f"{float(decay):.2f}" if decay is not None else "not known",
                "resists": f"{float(decay) / float(margin):.2f}"
                if decay and (margin := wall["decay margin"])
                else "not known",
                "bears": BEARS.get(str(wall["decay verdict"]), "not known"),
            }
        )
    return rows


def told_of(wall: Facts, system: System) -> list[tuple[str, str]]:
    """What a page says of one wall, in plain words."""
    sheet = wall.sheet

    def shown(name: str) -> str:
        found = sheet.quantity(wall, name)
        if not isinstance(found, Quantity):
            return "not known"
        bounds = found.shown_range(system)
        return f"{found.shown(system)} ({bounds})" if bounds else str(found.shown(system))

    return [
        ("rain on its wood, against a bare wall here", shown("rain exposure")),
        ("share of its own driving rain that strikes", shown("rain share")),
        ("in plain words", EXPOSED_CLASS.get(str(wall["rain class"]), "not known")),
        ("ultraviolet light, against an open wall to the noon sun", shown("ultraviolet share")),
        ("its coat lasts, likely", shown("likely finish life")),
        ("exposure to decay", shown("decay exposure")),
        ("by the decay guide", BEARS.get(str(wall["decay verdict"]), "not known")),
        ("comes down as it dries", shown("settlement")),
        ("to be reached from", shown("access")),
    ]


def _joined(parts: list[str]) -> str:
    return f"{', '.join(parts[:-1])}, and {parts[-1]}" if len(parts) > 1 else parts[0]


def _sentence(words: str) -> str:
    return f"{words[0].upper()}{words[1:]}."

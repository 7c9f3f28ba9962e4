"""The upkeep of a plan beside that of its alternates: what each saves or costs, and where that cannot be told."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from speclint.forecast.due import YEAR
from speclint.forecast.jobs import BARE, NotForecast
from speclint.forecast.outlook import PartOutlook
from speclint.forecast.rates import Rates
from speclint.forecast.whole import Forecast
from speclint.outputs.letter import Line, Part
from speclint.outputs.upkeep import as_if_new, every_words, money_words, nothing_told, spread_words, years_words

SHORTEST, LONGEST = 12, 30  # columns of the names of alternates
AMOUNT = 25
CANNOT = "cannot be compared"
NOTES = (
    "saved: the difference of the likely present values; what an alternate costs to build is not counted",
    "only coats are counted: `speclint upkeep PLAN --alternate NAME` tells what is left out of each",
)


def compared_lines(base: Forecast, others: Mapping[str, Forecast], drawn: str = "as drawn") -> list[Line]:
    """The forecast of a plan beside those of its alternates.

    Args:
        base: The plan.
        others: The alternates by name.
        drawn: How the plan itself is called.
    """
    lines: list[Line] = [
        (Part(f"UPKEEP OF ALTERNATES  {base.plan}", "title"),),
        (Part(money_words(base.rates), "quiet"),),
        (Part(as_if_new(base), "quiet"),),
        (),
    ]
    if not others:
        return [*lines, (Part("  the plan has no alternate", "quiet"),)]
    wide = min(LONGEST, max([SHORTEST, *(len(name) + 2 for name in (drawn, *others))]))
    spent = f"in {years_words(base.outlook.years)}"
    heads = f"{'':<{wide}}{'told':<9}{spent:<{AMOUNT}}{'present value':<{AMOUNT}}saved"
    lines.append((Part(heads, "label"),))
    for name, one in ((drawn, base), *others.items()):
        lines.append(_row(name, base, one, wide))
    lines += [(), *((Part(f"  {note}", "quiet"),) for note in NOTES), ()]
    lines.append((Part("What changes, part by part", "label"),))
    for name, one in others.items():
        lines += [(Part(f"  {name}", "element"),), *_why_not(base, one), *_changes(base, one)]
    return lines


def _row(name: str, base: Forecast, one: Forecast, wide: int) -> Line:
    called = name if len(name) < wide - 1 else f"{name[: wide - 3]}…"
    told = f"{len(one.outlook.parts)} of {one.of}"
    amounts = "".join(
        f"{spread_words(found, one.rates):<{AMOUNT}}" for found in (one.outlook.spent, one.outlook.present)
    )
    saved = Part("") if one is base else _saved(base, one)
    return (Part(f"{called:<{wide}}", "element"), Part(f"{told:<9}{amounts}"), saved)


def _saved(base: Forecast, other: Forecast) -> Part:
    """What an alternate saves, or costs, or that it cannot be told."""
    if any(obstacles(base, other)):
        return Part(CANNOT, "revise")
    saved = base.outlook.present.likely - other.outlook.present.likely
    if abs(saved) < 0.5:
        return Part("nothing", "quiet")
    money = other.rates.money(abs(saved))
    return Part(f"saves {money}", "good") if saved > 0 else Part(f"costs {money} more", "hold")


def obstacles(base: Forecast, other: Forecast) -> Iterator[str]:
    """Why the money of two homes cannot be compared: parts that are told, or coated, in one of them alone."""
    before, after = ({one.part: one for one in home.untold} for home in (base, other))
    for part in dict.fromkeys((*before, *after)):
        if part not in before or part not in after or before[part].signs != after[part].signs:
            yield f"{part} not told"
    bare, bared = ({one.part for one in home.uncoated if one.why == BARE} for home in (base, other))
    coated, kept = (_coated(home) for home in (base, other))
    yield from (f"{part} left bare" for part in (*bared, *bare) if part in (coated if part in bared else kept))
    stones, laid = (_stones(home) for home in (base, other))
    for stone in dict.fromkeys((*stones, *laid)):
        if stones.get(stone) != laid.get(stone):
            yield f"how much of {laid.get(stone) or stones[stone]} {stone} covers is not told"


def _coated(home: Forecast) -> set[str]:
    return {part.job.part for part in home.outlook.parts}


def _stones(home: Forecast) -> dict[str, str]:
    """By the label of stone on a wall that is coated, or not told: that wall."""
    walls = _coated(home) | {one.part for one in home.untold}
    found = {
        label: str(getattr(element, "at", "")) for label, element in home.elements.items() if element.kind == "stone"
    }
    return {label: wall for label, wall in found.items() if wall in walls}


def _why_not(base: Forecast, other: Forecast) -> list[Line]:
    """Why two homes cannot be compared; nothing where they can."""
    found = list(obstacles(base, other))
    return [(Part(f"    {CANNOT}: ", "revise"), Part(", ".join(found)))] if found else []


def _changes(base: Forecast, other: Forecast) -> list[Line]:
    """The parts whose coats change, from what to what; where none does, what the alternate is about."""
    before, after = _states(base), _states(other)
    rows = []
    for part in dict.fromkeys((*before, *after)):
        was, now = before.get(part, "not there"), after.get(part, "not there")
        if was != now:
            rows.append((part, f"{was} -> {now}"))
    wide = max((len(part) + 1 for part, _ in rows), default=0)
    lines: list[Line] = [(Part(f"    {part:<{wide}} "), Part(words)) for part, words in rows]
    if lines:
        return lines
    labels = dict.fromkeys((*base.elements, *other.elements))
    about = [label for label in labels if base.elements.get(label) != other.elements.get(label)]
    untold = [str(one) for one in other.untold]
    words = "no coat that is told changes" if not nothing_told(base) else "no coat is told"
    lines = [(Part(f"    {words}; the alternate is about: ", "quiet"), Part(", ".join(about)))]
    return [*lines, (Part("    not told: ", "quiet"), Part("; ".join(untold)))] if untold else lines


def _states(home: Forecast) -> dict[str, str]:
    """What becomes of each part that could be coated, in words."""
    told: dict[str, str] = {part.job.part: _short(part, home.rates) for part in home.outlook.parts}
    told |= {one.part: f"not told ({one.why})" for one in home.untold}
    return told | {one.part: _no_coat(one) for one in home.uncoated}


def _no_coat(one: NotForecast) -> str:
    return f"no coat ({one.why})"


def _short(part: PartOutlook, rates: Rates) -> str:
    return f"{every_words(years_words(part.job.lives[1] / YEAR))}, {rates.money(part.job.cost)}"

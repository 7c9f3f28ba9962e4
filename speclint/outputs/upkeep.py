"""The upkeep forecast as an owner reads it, as an object for programs, and as rows for a spreadsheet."""

from __future__ import annotations

import csv
import io
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any

from speclint.forecast.inspections import Inspection, first_day
from speclint.forecast.jobs import YEAR, Job, NotForecast, cautions_of
from speclint.forecast.outlook import Outlook, PartOutlook, Spread, due_day
from speclint.forecast.rates import ENTRIES, GALLON, Rates
from speclint.outputs.data import as_json, unfolded
from speclint.outputs.letter import Line, Part
from speclint.outputs.measured import spreadsheet_text
from speclint.science.access import MEANS
from speclint.units import System, show

MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


@dataclass(frozen=True, slots=True)
class Forecast:
    """All that is told of the upkeep of a home.

    Attributes:
        plan: The name of the plan.
        outlook: The coats.
        untold: Parts whose upkeep cannot be told.
        inspections: What is looked at every year.
        rates: At which the costs are reckoned.
        start: The day from which the years are counted.
        states: How often the plan means to refinish, as it states it; empty where it does not.
    """

    plan: str
    outlook: Outlook
    untold: tuple[NotForecast, ...]
    inspections: tuple[Inspection, ...]
    rates: Rates
    start: date
    states: str


def upkeep_lines(forecast: Forecast, system: System) -> list[Line]:
    """The forecast as a page."""
    found, rates = forecast.outlook, forecast.rates
    lines: list[Line] = [
        (Part(f"UPKEEP FORECAST  {forecast.plan}", "title"), Part(f"  {found.years} years from {forecast.start.year}")),
        (Part(_money_words(rates), "revise" if rates.demo else "quiet"),),
        (),
    ]
    if found.parts:
        lines += _table(found, rates, system)
        lines += _total(forecast)
    else:
        lines += [(Part("As far as the plan says, nothing is coated.", "quiet"),), ()]
    lines += _schedule(forecast)
    lines += _not_told(forecast)
    lines += _calendar(forecast)
    lines += _cautions(found)
    return lines


def _money_words(rates: Rates) -> str:
    told = f"money of today; present values at {rates['discount'] * 100:.3g}% a year over inflation"
    if len(rates.demo) == len(ENTRIES):
        return f"DEMONSTRATION RATES, invented: state your own with --rates; {told}"
    if rates.demo:
        return f"rates as stated, but for demonstration: {', '.join(rates.demo)}; {told}"
    return f"rates as stated; {told}"


HEADS = (("area", 9), ("every, years", 14), ("finish", 9), ("hours", 6), ("each", 7))
PART = 11  # columns of the names of parts, at the least
SHORTEST = 12  # columns of the names of alternates, at the least


def _table(found: Outlook, rates: Rates, system: System) -> list[Line]:
    wide = max([PART, *(len(part.job.part) + 1 for part in found.parts)])
    heads = "".join(f"{head:>{size}}" for head, size in HEADS)
    lines: list[Line] = [(Part(f"{'part':<{wide}}{heads}  in all, {rates.currency}", "label"),)]
    for part in found.parts:
        job = part.job
        cells = (
            show(job.area, "area", system),
            _years(job),
            _volume(job.volume[1], system),
            f"{job.hours:.0f}",
            f"{job.cost:,.0f}",
        )
        told = "".join(f" {cell:>{size - 1}}" for cell, (_, size) in zip(cells, HEADS, strict=True))
        spent = Part(f"  {_in_all(part.spent)}", "number")
        lines += [(Part(f"{job.part:<{wide}}", "element"), Part(told), spent), _by_means(job, wide, system)]
    return [*lines, ()]


def _by_means(job: Job, wide: int, system: System) -> Line:
    """The coat, and from what it is put on: how much from each means where it takes more than one."""
    told = f"all from {_a(job.means)}"
    if len(job.reached) > 1:
        reached = [means for means in MEANS if means in job.reached]
        told = ", ".join(f"{show(job.reached[means], 'area', system)} from {_a(means)}" for means in reached)
    return (Part(f"{'':<{wide}}{job.what}; {told}", "quiet"),)


def _a(means: str) -> str:
    return f"an {means}" if means[0] == "e" else f"a {means}"


def _years(job: Job) -> str:
    """The years between coats, as `3-7 (5)`."""
    low, likely, high = (life / YEAR for life in job.lives)
    return f"{low:.2g}-{high:.2g} ({likely:.2g})"


def _in_all(spread: Spread) -> str:
    return f"{spread.likely:,.0f} ({spread.low:,.0f}-{spread.high:,.0f})"


def _volume(litres: float, system: System) -> str:
    return f"{litres / GALLON:.1f} gal" if system == "imperial" else f"{litres:.0f} L"


def _spread(spread: Spread, rates: Rates) -> str:
    return rates.money(spread.likely) + _in_all(spread).removeprefix(f"{spread.likely:,.0f}")


def _total(forecast: Forecast) -> list[Line]:
    found, rates = forecast.outlook, forecast.rates
    lines: list[Line] = [
        (Part("Whole house  ", "label"), Part(f"{_spread(found.spent, rates)} in {found.years} years", "title")),
        (Part("Life-cycle cost of the coats  ", "label"), Part(f"{_spread(found.present, rates)} as present value")),
        (Part("Work  ", "label"), Part(f"about {found.hours:.0f} hours in all")),
        (Part("  every: from the least life of a coat to its greatest, and in brackets the likely one", "quiet"),),
        (
            Part(
                f"  money in brackets: eight of ten of {found.samples:,} cases; parts in one finish share their luck",
                "quiet",
            ),
        ),
    ]
    if forecast.states:
        lines.append((Part(f"  the plan means to refinish every {forecast.states}", "quiet"),))
    return [*lines, ()]


def _schedule(forecast: Forecast) -> list[Line]:
    """What falls due in each year, at the likely lives."""
    due: dict[int, list[Job]] = {}
    for part in forecast.outlook.parts:
        for at in part.due:
            due.setdefault(due_day(forecast.start, at).year, []).append(part.job)
    if not due:
        return []
    lines: list[Line] = [(Part("When, at the likely lives", "label"),)]
    for year in sorted(due):
        money = forecast.rates.money(sum(job.cost for job in due[year]))
        names = ", ".join(job.part for job in due[year])
        lines.append((Part(f"  {year}  ", "number"), Part(f"{money:<12}"), Part(names)))
    return [*lines, ()]


def _not_told(forecast: Forecast) -> list[Line]:
    if not forecast.untold:
        return []
    lines: list[Line] = [(Part("Not told", "label"),)]
    lines += [(Part(f"  {one.part}: ", "element"), Part(one.why, "quiet")) for one in forecast.untold]
    return [*lines, ()]


def _calendar(forecast: Forecast) -> list[Line]:
    lines: list[Line] = [(Part("Every year", "label"),)]
    sorted_ones = sorted(forecast.inspections, key=lambda inspection: inspection.months)
    heads = [_months(one) for one in sorted_ones]
    wide = max((len(head) for head in heads), default=0)
    for head, one in zip(heads, sorted_ones, strict=True):
        lines.append((Part(f"  {head:<{wide}}  ", "number"), Part(one.what)))
    return [*lines, ()]


def _months(one: Inspection) -> str:
    limit = f", for {one.years} years" if one.years else ""
    return " and ".join(MONTHS[month - 1] for month in one.months) + limit


def _cautions(found: Outlook) -> list[Line]:
    lines: list[Line] = [(Part("Read with care", "label"),)]
    told = [
        *cautions_of([part.job for part in found.parts]),
        "Cleaners, stains and sealants: the label decides on gloves, eyes, lungs, weather and waste.",
        "Lives are published ranges times factors of our own; a coat is due when the wood says so, not the calendar.",
        "How high a stool or ladder serves is ours, from no standard; `speclint measures PLAN PART` unfolds a figure.",
    ]
    return [*lines, *((Part(f"  {words}", "quiet"),) for words in told)]


def compared_lines(base: Forecast, others: Mapping[str, Forecast]) -> list[Line]:
    """The forecast of a plan beside those of its alternates."""
    lines: list[Line] = [
        (Part(f"UPKEEP OF ALTERNATES  {base.plan}", "title"),),
        (Part(_money_words(base.rates), "quiet"),),
        (),
    ]
    if not others:
        return [*lines, (Part("  the plan has no alternate", "quiet"),)]
    wide = max([SHORTEST, *(len(name) + 2 for name in others)])
    heads = f"{'':<{wide}}{'in ' + str(base.outlook.years) + ' years':<25}{'present value':<25}saves of it"
    lines.append((Part(heads, "label"),))
    for name, one in (("as drawn", base), *others.items()):
        spent, present = _spread(one.outlook.spent, one.rates), _spread(one.outlook.present, one.rates)
        saved = base.outlook.present.likely - one.outlook.present.likely
        saves = "" if one is base else one.rates.money(saved)
        lines.append(
            (
                Part(f"{name:<{wide}}", "element"),
                Part(f"{spent:<25}{present:<25}"),
                Part(saves, "good" if saved > 0 else "hold"),
            )
        )
    lines += [(), (Part("What changes, part by part", "label"),)]
    for name, one in others.items():
        lines += _changes(name, base, one)
    return lines


def _changes(name: str, base: Forecast, other: Forecast) -> list[Line]:
    before = {part.job.part: part for part in base.outlook.parts}
    after = {part.job.part: part for part in other.outlook.parts}
    lines: list[Line] = [(Part(f"  {name}", "element"),)]
    for part in dict.fromkeys((*before, *after)):
        one, two = before.get(part), after.get(part)
        if one and two and (one.job.lives, one.job.cost) == (two.job.lives, two.job.cost):
            continue
        lines.append((Part(f"    {part:<14}"), Part(f"{_short(one, base.rates)} -> {_short(two, base.rates)}")))
    return lines if len(lines) > 1 else [*lines, (Part("    nothing that is coated", "quiet"),)]


def _short(part: PartOutlook | None, rates: Rates) -> str:
    if part is None:
        return "none"
    return f"every {part.job.lives[1] / YEAR:.2g} years, {rates.money(part.job.cost)}"


def upkeep_object(forecast: Forecast, system: System) -> str:
    """The forecast as one object for programs, in SI units and the currency of the rates."""
    found = forecast.outlook
    return as_json(
        {
            "plan": forecast.plan,
            "years": found.years,
            "start": forecast.start.isoformat(),
            "currency": forecast.rates.currency,
            "demonstration rates": list(forecast.rates.demo),
            "rates": forecast.rates.values,
            "parts": [_part_object(part, system) for part in found.parts],
            "spent": _spread_object(found.spent),
            "present value": _spread_object(found.present),
            "hours": found.hours,
            "by year": list(found.by_year),
            "samples": found.samples,
            "not told": [{"part": one.part, "why": one.why} for one in forecast.untold],
            "inspections": [
                {
                    "parts": list(one.parts),
                    "what": one.what,
                    "why": one.why,
                    "months": list(one.months),
                    "years": one.years,
                    "standing": one.standing,
                }
                for one in forecast.inspections
            ],
            "cautions": list(cautions_of([part.job for part in found.parts])),
        }
    )


def _spread_object(spread: Spread) -> dict[str, float]:
    return {"low": spread.low, "likely": spread.likely, "high": spread.high}


def _part_object(part: PartOutlook, system: System) -> dict[str, Any]:
    job = part.job
    low, likely, high = job.lives
    return {
        "part": job.part,
        "coat": job.what,
        "area": job.area,
        "reached from": job.reached,
        "days between coats": {"low": low, "likely": likely, "high": high},
        "first coat share": job.first,
        "litres": {"low": job.volume[0], "likely": job.volume[1], "high": job.volume[2]},
        "hours": job.hours,
        "cost": job.cost,
        "due": list(part.due),
        "coats": _spread_object(part.coats),
        "spent": _spread_object(part.spent),
        "present value": _spread_object(part.present),
        "notes": list(job.notes),
        "evidence": [unfolded(quantity, system) for quantity in job.evidence],
    }


def upkeep_rows(forecast: Forecast) -> str:
    """The schedule as rows: a coat falling due, or an inspection, a row each."""
    text = io.StringIO()
    rows = csv.writer(text, lineterminator="\n")
    rows.writerow(
        ("plan", "year", "month", "part", "task", "area m2", "reached from", "litres", "hours", "cost", "currency")
    )
    name = spreadsheet_text(forecast.plan)
    for part in forecast.outlook.parts:
        job = part.job
        for at in part.due:
            day = due_day(forecast.start, at)
            amounts = (f"{job.area:.1f}", job.means, f"{job.volume[1]:.1f}", f"{job.hours:.1f}", f"{job.cost:.0f}")
            rows.writerow(
                (
                    name,
                    day.year,
                    day.month,
                    spreadsheet_text(job.part),
                    f"coat: {job.what}",
                    *amounts,
                    forecast.rates.currency,
                )
            )
    for one in forecast.inspections:
        parts = spreadsheet_text(", ".join(one.parts))
        for month in one.months:
            first = first_day(forecast.start, month).year
            for year in range(first, first + (one.years or forecast.outlook.years)):
                rows.writerow((name, year, month, parts, one.what, "", "", "", "", "", ""))
    return text.getvalue()

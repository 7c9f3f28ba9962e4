"""The upkeep forecast as an owner reads it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator

from speclint.forecast.due import MONTHS, YEAR, due_day
from speclint.forecast.inspections import Inspection
from speclint.forecast.jobs import Job, cautions_of
from speclint.forecast.outlook import Outlook, Spread
from speclint.forecast.rates import ENTRIES, GALLON, Rates
from speclint.forecast.surfaces import SURFACES
from speclint.forecast.whole import LIFT, NEVER_COUNTED
from speclint.forecast.whole import Forecast as Forecast
from speclint.outputs.letter import Line, Part
from speclint.science.access import MEANS
from speclint.units import System, show

LIFT_WORDS = {
    "yes": "the plan keeps level ground for one (lift access yes)",
    "no": "the plan has no level ground for one (lift access no): its hire is priced all the same",
    "": "the plan does not say whether one can stand there",
}


def upkeep_lines(forecast: Forecast, system: System) -> list[Line]:
    """The forecast as a page."""
    found, rates = forecast.outlook, forecast.rates
    span = f"  {years_words(found.years)} from {forecast.start.isoformat()}"
    lines: list[Line] = [
        (Part(f"UPKEEP FORECAST  {forecast.plan}", "title"), Part(span)),
        (Part(money_words(rates), "revise" if rates.demo else "quiet"),),
    ]
    if nothing := nothing_told(forecast):
        lines += [(), (Part(f"{nothing[0].upper()}{nothing[1:]}.", "revise"),), ()]
    else:
        lines += [(Part(as_if_new(forecast), "quiet"),), (), *_table(found, rates, system), *_total(forecast, system)]
        lines += _schedule(forecast, system)
    lines += _listed("Not told", [(one.part, one.why) for one in forecast.untold])
    lines += _listed("No coat", [(one.part, one.why) for one in forecast.uncoated])
    if found.parts:
        lines += [(Part("Not counted  ", "label"), Part("; ".join((*_left_out(forecast), NEVER_COUNTED)))), ()]
        lines += _taken(forecast)
        lines += _listed("From a lift, or beyond the owner's reach", list(_access(forecast, system)))
    lines += _listed("To be told", [tuple(ask.split(": ", 1)) for ask in forecast.asks if found.parts])
    lines += _calendar(forecast)
    return [*lines, *_cautions(found)]


def years_words(years: float) -> str:
    """A number of years in words: `1 year`, `30 years`."""
    return f"{years:.2g} year{'' if f'{years:.2g}' == '1' else 's'}"


def every_words(stated: str) -> str:
    """An interval as the plan states it: `every year`, `every 180 days`."""
    return f"every {stated[2:].removesuffix('s')}" if stated.startswith("1 ") else f"every {stated}"


def as_if_new(forecast: Forecast) -> str:
    """From when the lives are counted."""
    day = forecast.start.isoformat()
    return f"Every part is counted as if it were coated on {day}: a coat that is older falls due sooner."


def nothing_told(forecast: Forecast) -> str:
    """Why no coat is forecast; empty where one is."""
    if forecast.outlook.parts:
        return ""
    if not any(element.kind in SURFACES for element in forecast.elements.values()):
        return "the plan has no wall, deck, rail or post: nothing is coated, as far as it says"
    if forecast.untold:
        return "no coat can be forecast: see what is not told"
    return "as far as the plan says, nothing is coated"


def money_words(rates: Rates) -> str:
    """Whose rates these are, and of what day the money is."""
    told = f"money of today; present values at {rates['discount'] * 100:.3g}% a year over inflation"
    if len(rates.demo) == len(ENTRIES):
        return f"DEMONSTRATION RATES, invented: state your own with --rates; {told}"
    if rates.demo:
        return f"rates as stated, but for demonstration: {', '.join(rates.demo)}; {told}"
    return f"rates as stated; {told}"


HEADS = (("area", 9), ("every, years", 15), ("finish", 9), ("hours", 6), ("each", 7))
PART = 11  # columns of the names of parts, at the least


def _table(found: Outlook, rates: Rates, system: System) -> list[Line]:
    wide = max([PART, *(len(part.job.part) + 1 for part in found.parts)])
    heads = "".join(f"{head:>{size}}" for head, size in HEADS)
    lines: list[Line] = [(Part(f"{'part':<{wide}}{heads}  in {years_words(found.years)}, {rates.currency}", "label"),)]
    for part in found.parts:
        job = part.job
        cells = (
            show(job.area, "area", system),
            lives_words(job),
            volume_words(job.volume[1], system),
            f"{job.hours:.0f}",
            f"{job.cost:,.0f}",
        )
        told = "".join(f" {cell:>{size - 1}}" for cell, (_, size) in zip(cells, HEADS, strict=True))
        spent = Part(f"  {_in_all(part.spent)}", "number")
        lines += [(Part(f"{job.part:<{wide}}", "element"), Part(told), spent)]
        lines.append((Part(" " * wide), Part(f"{job.what}; {means_words(job, system)}", "quiet")))
    return [*lines, ()]


def means_words(job: Job, system: System) -> str:
    """From what a coat is put on: how much from each means where it takes more than one."""
    if len(job.reached) == 1:
        return f"all from {_a(job.means)}"
    reached = [means for means in MEANS if means in job.reached]
    return ", ".join(f"{show(job.reached[means], 'area', system)} from {_a(means)}" for means in reached)


def _a(means: str) -> str:
    return f"an {means}" if means[0] == "e" else f"a {means}"


def lives_words(job: Job) -> str:
    """The years between coats, as `3.0-7.1 (5.2)`."""
    low, likely, high = (life / YEAR for life in job.lives)
    return f"{low:.1f}-{high:.1f} ({likely:.1f})"


def volume_words(litres: float, system: System) -> str:
    """An amount of finish in the reader's units."""
    return f"{litres / GALLON:.1f} gal" if system == "imperial" else f"{litres:.0f} L"


def _in_all(spread: Spread) -> str:
    return f"{spread.likely:,.0f} ({spread.low:,.0f}-{spread.high:,.0f})"


def spread_words(spread: Spread, rates: Rates) -> str:
    """An amount with its range, as `$1,200 (900-1,500)`."""
    return rates.money(spread.likely) + _in_all(spread).removeprefix(f"{spread.likely:,.0f}")


def _total(forecast: Forecast, system: System) -> list[Line]:
    found, rates = forecast.outlook, forecast.rates
    told = f"{spread_words(found.spent, rates)} in {years_words(found.years)}"
    notes = [
        "every: from the least life of a coat to its greatest, and in brackets the likely one",
        f"money in brackets: eight of ten of {found.samples:,} cases; parts in one finish share their luck",
        "rows, years and total do not add up: row and total are each the middle of all cases, years the likely lives",
    ]
    if forecast.states:
        notes.append(f"the plan means to refinish {every_words(forecast.states)}")
    return [
        (Part(f"Parts told, {len(found.parts)} of {forecast.of}  ", "label"), Part(told, "title")),
        (
            Part("Life-cycle cost of these coats  ", "label"),
            Part(f"{spread_words(found.present, rates)} as present value"),
        ),
        (
            Part("Work  ", "label"),
            Part(f"about {max(1.0, found.hours):.0f} hour{'' if found.hours < 1.5 else 's'} in all"),
        ),
        *((Part(f"  {note}", "quiet"),) for note in notes),
        (),
    ]


def _schedule(forecast: Forecast, system: System) -> list[Line]:
    """What falls due in each year, at the likely lives."""
    due: dict[int, list[Job]] = {}
    for part in forecast.outlook.parts:
        for at in part.due:
            due.setdefault(due_day(forecast.start, at).year, []).append(part.job)
    lines: list[Line] = [(Part("When, at the likely lives", "label"),)]
    if not due:
        return [*lines, (Part(f"  nothing falls due within {years_words(forecast.outlook.years)}", "quiet"),), ()]
    sums = {year: forecast.rates.money(sum(job.cost for job in jobs)) for year, jobs in due.items()}
    wide = max(len(money) for money in sums.values())
    for year in sorted(due):
        lines.append((Part(f"  {year}  {sums[year]:<{wide}}  ", "number"), Part(_names(due[year]))))
    return [*lines, (Part("  Season  ", "label"), Part(forecast.season.words(system), "quiet")), ()]


def _names(jobs: list[Job]) -> str:
    """The parts of some jobs, each once, with how often where it is more than once."""
    times = Counter(job.part for job in jobs)
    return ", ".join(part if count == 1 else f"{part} {times_words(count)}" for part, count in times.items())


def times_words(count: int) -> str:
    """How often: `twice`, `3 times`."""
    return "twice" if count == 2 else f"{count} times"


def _listed(title: str, rows: Iterable[tuple[str, ...]]) -> list[Line]:
    """A list under a title: what, and what is said of it; nothing where it is empty."""
    told: list[Line] = [(Part(f"  {head}: ", "element"), Part(words, "quiet")) for head, words in rows]
    return [(Part(title, "label"),), *told, ()] if told else []


def _left_out(forecast: Forecast) -> tuple[str, ...]:
    return (", ".join(forecast.uncounted),) if forecast.uncounted else ()


def _taken(forecast: Forecast) -> list[Line]:
    """What is taken for granted of the parts, each note once with the parts that it is about."""
    parts: dict[str, list[str]] = {}
    for part in forecast.outlook.parts:
        for note in part.job.notes:
            parts.setdefault(note, []).append(part.job.part)
    return _listed("Taken so", [(", ".join(names), note) for note, names in parts.items()])


def _access(forecast: Forecast, system: System) -> Iterator[tuple[str, str]]:
    """Work from a lift with its price and what the plan says of a place for one, and work beyond the owner's means."""
    rates, access = forecast.rates, forecast.access
    if lifted := forecast.lifted():
        area = show(sum(job.reached[LIFT] for job in lifted), "area", system)
        price = f"{rates.money(rates['lift'])} a day"
        yield ", ".join(job.part for job in lifted), f"{area} from {_a(LIFT)} at {price}; {LIFT_WORDS[access.lift]}"
    if not access.reach:
        return
    beyond = MEANS[MEANS.index(access.reach) + 1 :]
    parts = [part.job for part in forecast.outlook.parts if any(means in part.job.reached for means in beyond)]
    area = show(sum(job.reached.get(means, 0.0) for job in parts for means in beyond), "area", system)
    if parts:
        words = f"{area} beyond the owner's {access.reach} (reach): to be hired out, here at the same money for an hour"
        yield ", ".join(job.part for job in parts), words


def _calendar(forecast: Forecast) -> list[Line]:
    lines: list[Line] = [(Part("Every year, or as said", "label"),)]
    sorted_ones = sorted(forecast.inspections, key=lambda inspection: inspection.months)
    heads = [_months(one) for one in sorted_ones]
    wide = max((len(head) for head in heads), default=0)
    for head, one in zip(heads, sorted_ones, strict=True):
        stated = f" (the plan says {every_words(one.stated)})" if one.stated else ""
        lines.append((Part(f"  {head:<{wide}}  ", "number"), Part(f"{one.what}{stated}")))
    return [*lines, ()]


def _months(one: Inspection) -> str:
    names = [MONTHS[month - 1] for month in one.months]
    told = "monthly" if len(names) == len(MONTHS) else ", ".join(names)
    if len(names) == 2:
        told = " and ".join(names)
    told += f", every {years_words(one.every)}" if one.every > 1 else ""
    return told + (f", for {years_words(one.years)}" if one.years else "")


def _cautions(found: Outlook) -> list[Line]:
    lines: list[Line] = [(Part("Read with care", "label"),)]
    told = [
        *cautions_of([part.job for part in found.parts]),
        "Cleaners, stains and sealants: the label decides on gloves, eyes, lungs, weather and waste.",
        "Lives are published ranges times factors of our own; a coat is due when the wood says so, not the calendar.",
        "How high a stool or ladder serves is ours, from no standard.",
        "`speclint explain upkeep interval PLAN PART` and `upkeep cost` unfold the figures.",
    ]
    return [*lines, *((Part(f"  {words}", "quiet"),) for words in told)]

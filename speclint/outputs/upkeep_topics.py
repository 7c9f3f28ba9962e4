"""Topics that `speclint explain` teaches of the upkeep forecast: the interval between coats, and what a coat costs."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from speclint.citation import Citation
from speclint.forecast.due import due_years
from speclint.forecast.jobs import DAY_RATES, SLOWER, Job, jobs_of
from speclint.forecast.rates import GALLON, SQUARE_FOOT, Rates, demo_rates
from speclint.measures.facts import Facts, Sheet
from speclint.outputs.letter import Line, Part
from speclint.outputs.unfold import unfold
from speclint.outputs.upkeep import lives_words, means_words, times_words, years_words
from speclint.quantity import Quantity
from speclint.science import finish, finish_factors, upkeep
from speclint.science.access import MEANS, access_class
from speclint.science.after import source_of
from speclint.science.cost import present_value_factor
from speclint.units import System, show

INTERVAL, COST = "upkeep interval", "upkeep cost"
YEARS = 30
RATES = Citation(
    "", "rates for demonstration, how far they may be off, hours by means; state your own with --rates", "ours"
)


def _bases(*functions: Callable[..., Any]) -> tuple[str, ...]:
    """The publication of each function, with how far it was read."""
    sources = [source_of(function) for function in functions]
    return tuple(f"after {Citation(source.key, source.place, source.standing)}" for source in sources)


def upkeep_topic(name: str) -> tuple[str, ...]:
    """What a topic of the upkeep teaches in general: its equation and its bases; nothing where it is none."""
    if name == INTERVAL:
        return (
            "A coat falls due at the end of its life. The handbook gives a least and a greatest life of a finish on "
            "upright wood or on a deck; the likely one is the middle of the two.",
            "Equation: interval = years of the handbook / wear by weather x surface x top of a rail x number of coats "
            "x sheen. The first coat lasts its share of that, by the moisture of the wood when it goes on.",
            "A forecast draws many cases between the least and the greatest life; days that fall outside the season "
            "for coating are moved to its nearest day, and the money is not moved with them.",
            *_bases(
                finish.finish_life,
                finish.finish_life_on_wood,
                finish.finish_life_on_decking,
                finish_factors.weather_wear,
                finish_factors.surface_factor,
                finish_factors.top_factor,
                finish_factors.coats_factor,
                finish_factors.sheen_factor,
                finish_factors.first_coat_factor,
                finish.finish_life_in_place,
            ),
        )
    if name == COST:
        return (
            "A coat costs the hours of work, the finish, the cleaner, and the days on which a ladder, a lift or a "
            "scaffold is hired.",
            "Equation: cost = hours x money for an hour + area x coats / coverage x price of the finish + area / area "
            "that cleaner washes x its price + days x hire. Hours = area x (1 / washed + 1 / made ready + coats / "
            "coated in an hour) x how much slower the means is; days = hours / hours of a day, and one at the least.",
            "In all: cost x the coats that fall due. Present value: each cost / (1 + discount) to the power of its "
            "year. Both are the middle of many cases of lives, hours and prices, so sums of rows differ a little.",
            *_bases(upkeep.stain_coverage, upkeep.stain_volume, access_class, present_value_factor),
            f"after {RATES}",
        )
    return ()


def upkeep_in_plan(name: str, sheet: Sheet, only: Facts | None, system: System) -> list[Line]:
    """A topic of the upkeep with the numbers of each part of a plan, or of one part."""
    rates = demo_rates()
    jobs, untold = jobs_of(sheet, rates)
    lines: list[Line] = []
    for job in jobs:
        if only is None or only.label == job.part:
            told = _cost(job, rates, system) if name == COST else _interval(job, sheet, system, whole=only is not None)
            lines += [*told, ()]
    for one in untold:
        if only is None or only.label == one.part:
            lines.append((Part(f"{one.part}: ", "element"), Part(f"not told: {one.why}", "revise")))
    return lines or [(Part("  no coat is forecast there", "quiet"),)]


def _interval(job: Job, sheet: Sheet, system: System, *, whole: bool) -> list[Line]:
    """The lives of a coat and how they come about; unfolded to the last input where one part alone is asked for."""
    lines: list[Line] = [(Part(f"{job.part}  ", "title"), Part(f"{job.what}, every {lives_words(job)} years"))]
    found = sheet.quantity(sheet[job.part], "likely finish life")
    if whole:
        lines += unfold(found, system, 1)
    elif isinstance(found, Quantity):
        lines += [(Part(f"    {note}", "quiet"),) for note in found.notes]
    if job.first < 1:
        lines.append((Part(f"    the first coat lasts {job.first:.2f} of that", "quiet"),))
    due = ", ".join(f"{at:.1f}" for at in due_years(job.lives[1], YEARS, job.first))
    return [*lines, (Part(f"    years from the start in which it falls due: {due or 'none'}", "quiet"),)]


def _cost(job: Job, rates: Rates, system: System) -> list[Line]:
    """The bill of one coat, with the figures it is reckoned from."""
    lines: list[Line] = [
        (Part(f"{job.part}  ", "title"), Part(f"{rates.money(job.cost)} a coat of {job.what}")),
        (Part(f"    surface {show(job.area, 'area', system)}: {means_words(job, system)}", "quiet"),),
    ]
    lines += [(Part(f"    {row}"),) for row in _bill_rows(job, rates, system)]
    lines += [(Part(f"    {note}", "quiet"),) for note in job.notes]
    times = len(due_years(job.lives[1], YEARS, job.first))
    told = "once" if times == 1 else times_words(times)
    years = f"in {years_words(YEARS)} it falls due {told} at its likely life"
    return [*lines, (Part(f"    {years}: {rates.money(times * job.cost)}" if times else f"    {years}"),)]


def _bill_rows(job: Job, rates: Rates, system: System) -> Iterator[str]:
    """The hours and each piece of the bill, with what they are reckoned from."""
    size, unit = (SQUARE_FOOT, "ft2") if system == "imperial" else (1.0, "m2")
    amount, measure = (GALLON, "gal") if system == "imperial" else (1.0, "L")
    wash, ready, coat = (f"1/{rates[name] / size:.3g}" for name in ("wash feet", "prepare feet", "coat feet"))
    means = [one for one in MEANS if one in job.reached]
    areas = " + ".join(f"{job.reached[one] / size:.0f}{_slower(one, rates)}" for one in means)
    areas = f"({areas})" if len(means) > 1 else areas
    fixed = f" x {rates['slower on a fixed rail']:g} for a rail coated in place" if _fixed(job) else ""
    coats = coat if job.coats == 1 else f"{job.coats:g} x {coat}"
    yield f"hours: {areas} {unit} x ({wash} + {ready} + {coats}) h/{unit}{fixed} = {job.hours:.1f} h"
    yield f"work: {job.hours:.1f} h x {rates.price('labour')} = {rates.money(job.bill['work'])}"
    least, most = (job.area / size * job.coats / (litres / amount) for litres in (job.volume[2], job.volume[0]))
    yield (
        f"finish: {job.area / size:.0f} {unit} x {job.coats:g} at {least:.0f} to {most:.0f} {unit} a {measure} = "
        f"{job.volume[1] / amount:.1f} {measure}, x {rates.price('stain gallon', amount)} = "
        f"{rates.money(job.bill['finish'])}"
    )
    yield (
        f"cleaner: {job.area / size:.0f} {unit} / {rates['cleaner feet'] * amount / size:.3g} {unit} a {measure} x "
        f"{rates.price('cleaner gallon', amount)} = {rates.money(job.bill['cleaner'])}"
    )
    for one in means:
        rate = DAY_RATES[MEANS.index(one)]
        if rate and rates[rate]:
            days = f"{job.bill[one] / rates[rate]:.1f} days x {rates.price(rate)}"
            yield f"{one}: {days} = {rates.money(job.bill[one])}"


def _slower(means: str, rates: Rates) -> str:
    slower = SLOWER[MEANS.index(means)]
    return f" x {rates[slower]:g}" if slower else ""


def _fixed(job: Job) -> bool:
    return any("they are coated in place" in note for note in job.notes)

"""`speclint upkeep`."""

from __future__ import annotations

import argparse
import datetime
from pathlib import Path

from speclint.commands.common import put, rendered, tell, units_of, wrapped
from speclint.commands.files import Refused, read_text, write_file
from speclint.commands.measures import plan_asked, sheet_of
from speclint.forecast.inspections import inspections_of
from speclint.forecast.jobs import jobs_of
from speclint.forecast.outlook import outlook
from speclint.forecast.rates import Rates, demo_rates, read_rates
from speclint.language.uses import CannotRead
from speclint.measures.facts import Sheet
from speclint.outputs.upkeep import Forecast, compared_lines, upkeep_lines, upkeep_object, upkeep_rows
from speclint.pipeline import read_home

LEAST, MOST = 1, 60


def run(stated: argparse.Namespace) -> int:
    """Forecast the upkeep of a plan."""
    years_of(stated.years)
    start = day_of(stated.today)
    rates = rates_of(stated.rates)
    plan, _ = plan_asked(stated, [])
    system = units_of(stated, plan.text)
    sheet, status = sheet_of(plan, stated.alternate)
    forecast = forecast_of(sheet, rates, stated.years, start)
    if stated.alternates:
        others = {
            name: forecast_of(read_home(plan, name)[0], rates, stated.years, start) for name in sheet.home.alternates
        }
        text = rendered(wrapped(compared_lines(forecast, others)), stated)
    elif stated.json:
        text = upkeep_object(forecast, system)
    elif stated.csv:
        text = upkeep_rows(forecast)
    elif stated.calendar:
        from speclint.outputs.calendar import calendar_text

        text = calendar_text(forecast.plan, forecast.outlook, list(forecast.inspections), start)
    else:
        text = rendered(wrapped(upkeep_lines(forecast, system)), stated)
    if stated.into:
        write_file(Path(stated.into), text)
    else:
        put(text)
    return status


def forecast_of(sheet: Sheet, rates: Rates, years: int, start: datetime.date) -> Forecast:
    """The forecast of a home."""
    jobs, untold = jobs_of(sheet, rates)
    care = next(iter(sheet.of_kind("care")), None)
    given = care.element.given.get("refinish") if care else None
    return Forecast(
        sheet.home.name,
        outlook(jobs, rates, years),
        tuple(untold),
        tuple(inspections_of(sheet)),
        rates,
        start,
        given.text if given else "",
    )


def years_of(stated: int) -> int:
    """The length of a forecast.

    Raises:
        Refused: If it is out of range.
    """
    if not LEAST <= stated <= MOST:
        raise Refused(f"--years {stated}: a forecast runs {LEAST} to {MOST} years", 3)
    return stated


def day_of(stated: str | None) -> datetime.date:
    """The day that is stated, or today.

    Raises:
        Refused: If it is no day.
    """
    if stated is None:
        return datetime.date.today()
    try:
        return datetime.date.fromisoformat(stated)
    except ValueError:
        raise Refused(f"--today {stated}: write the day as 2026-11-25", 3) from None


def rates_of(path: str | None) -> Rates:
    """The rates in a file, or those for demonstration where none is named.

    Raises:
        Refused: If the file cannot be read or used.
    """
    if not path:
        return demo_rates()
    try:
        text = read_text(Path(path))
    except CannotRead as trouble:
        raise Refused(f"{path}: cannot be read: {trouble}", 3) from None
    rates, mistakes = read_rates(text, path)
    for mistake in mistakes:
        help = f" ({mistake.help})" if mistake.help else ""
        tell(f"{mistake.file}:{mistake.line}:{mistake.column}: {mistake.message}{help}")
    if mistakes:
        raise Refused(f"{path}: the rates cannot be used until this is mended", 3)
    return rates

"""`speclint upkeep`."""

from __future__ import annotations

import argparse
import datetime
from pathlib import Path

from speclint.commands.common import put, rendered, tell, units_of, wrapped
from speclint.commands.files import Refused, read_text
from speclint.commands.measures import plan_asked, sheet_of
from speclint.commands.results import write_result
from speclint.forecast.rates import Rates, demo_rates, read_rates
from speclint.forecast.whole import Forecast
from speclint.forecast.whole import forecast_of as forecast_of
from speclint.measures.facts import Sheet
from speclint.outputs.upkeep import nothing_told, upkeep_lines
from speclint.pipeline import read_home
from speclint.plan_text import CannotRead, PlanText
from speclint.units import System

LEAST, MOST = 1, 60
FIRST, LAST = 1900, 2200  # years from which a forecast may start


def run(stated: argparse.Namespace) -> int:
    """Forecast the upkeep of a plan."""
    years_of(stated.years)
    start = day_of(stated.today)
    rates = rates_of(stated.rates)
    plan, _ = plan_asked(stated)
    sheet, status = sheet_of(plan, stated.alternate)
    text = _told(stated, plan, sheet, forecast_of(sheet, rates, stated.years, start))
    if stated.into:
        write_result(stated.into, text, stated)
    else:
        put(text)
    return status


def _told(stated: argparse.Namespace, plan: PlanText, sheet: Sheet, forecast: Forecast) -> str:
    """The forecast in the form that is asked for."""
    system = units_of(stated, plan.text)
    if stated.alternates:
        from speclint.outputs.upkeep_compare import compared_lines

        years = forecast.outlook.years
        others = {
            name: forecast_of(read_home(plan, name)[0], forecast.rates, years, forecast.start)
            for name in sheet.home.alternates
        }
        return rendered(wrapped(compared_lines(forecast, others, stated.alternate or "as drawn")), stated)
    if stated.json or stated.csv or stated.calendar:
        if nothing := nothing_told(forecast):
            tell(f"{plan.name}: {nothing}")
        return _for_programs(stated, forecast, system)
    return rendered(wrapped(upkeep_lines(forecast, system)), stated)


def _for_programs(stated: argparse.Namespace, forecast: Forecast, system: System) -> str:
    from speclint.outputs.upkeep_rows import upkeep_object, upkeep_rows

    if stated.json:
        return upkeep_object(forecast, system)
    if stated.csv:
        return upkeep_rows(forecast)
    from speclint.outputs.calendar import calendar_text

    return calendar_text(forecast.plan, forecast.outlook, list(forecast.inspections), forecast.start)


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
        Refused: If it is no day, or far from any that a forecast starts on.
    """
    if stated is None:
        return datetime.date.today()
    try:
        day = datetime.date.fromisoformat(stated)
    except ValueError:
        raise Refused(f"--today {stated}: write the day as 2026-11-25", 3) from None
    if not FIRST <= day.year <= LAST:
        raise Refused(f"--today {stated}: a day in the years {FIRST} to {LAST} is wanted", 3)
    return day


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

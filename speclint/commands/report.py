"""`speclint report`."""

from __future__ import annotations

import argparse
from pathlib import Path

from speclint.commands.common import put, rulebook_of, units_of
from speclint.commands.files import Refused, write_file
from speclint.commands.measures import plan_asked, sheet_of
from speclint.commands.results import refuse_loss, refuse_one_file
from speclint.commands.upkeep import day_of, forecast_of, rates_of, years_of


def run(stated: argparse.Namespace) -> int:
    """Write the report of a plan."""
    from speclint.report.build import report_page
    from speclint.report.gather import material_of

    for path in (stated.to, stated.pdf):
        if path:
            refuse_loss(path, stated)
    if stated.to and stated.pdf:
        refuse_one_file(stated.pdf, stated.to)
    years, today = years_of(stated.years), day_of(stated.today)
    rates = rates_of(stated.rates)
    plan, _ = plan_asked(stated)
    system = units_of(stated, plan.text)
    _, status = sheet_of(plan, stated.alternate)
    material = material_of(
        plan,
        rulebook_of(stated),
        lambda sheet: forecast_of(sheet, rates, years, today),
        today,
        system,
        stated.alternate,
    )
    page = report_page(material)
    if stated.pdf:
        _write_pdf(page, Path(stated.pdf))
        put(f"{stated.pdf}\n")
    if stated.to:
        write_file(Path(stated.to), page)
        put(f"{stated.to}\n")
    elif not stated.pdf:
        raise Refused("name a file to write with --to FILE.html", 3)
    return status


def _write_pdf(page: str, path: Path) -> None:
    """The page as PDF, by weasyprint.

    Raises:
        Refused: If weasyprint is not installed.
    """
    try:
        import weasyprint
    except (ImportError, OSError):
        raise Refused("PDF needs weasyprint: install speclint[pdf], or print the page from a browser", 3) from None
    write_file(path, weasyprint.HTML(string=page).write_pdf())

"""`speclint watch`."""

from __future__ import annotations

import argparse
import secrets
import socket
import sys
from collections.abc import Callable
from pathlib import Path

from speclint.commands.common import mistake_words, put, rulebook_of, units_of
from speclint.commands.files import Refused, open_plan
from speclint.commands.upkeep import day_of, forecast_of, rates_of
from speclint.pipeline import read_home
from speclint.report.live import Built, CannotBuild, Follow, LivePage

YEARS = 30


def run(stated: argparse.Namespace) -> int:
    """Serve the report of a plan on the loopback address, and keep it up to date."""
    try:
        import uvicorn

        from speclint.report.server import live_app, live_script
    except ImportError:
        raise Refused("the live page needs a server: install speclint[watch]", 3) from None
    live = live_page(stated, live_script)
    live.refresh()
    token = secrets.token_urlsafe(16)
    listening = _listening(stated.port)
    port = listening.getsockname()[1]
    put(f"http://127.0.0.1:{port}/{token}/\n")
    if live.trouble:
        put("".join(f"{line}\n" for line in live.trouble))
    put("The page follows the plan as it is saved; Ctrl-C ends it.\n")
    if sys.stdout is not None:
        sys.stdout.flush()  # who reads the address through a pipe waits for it
    settings = uvicorn.Config(live_app(live, token), log_level="error", timeout_graceful_shutdown=1)
    uvicorn.Server(settings).run(sockets=[listening])
    return 0


def live_page(stated: argparse.Namespace, script: Callable[[int], str]) -> LivePage:
    """The page of the plan that is asked for.

    Args:
        stated: What is asked.
        script: Makes the script that keeps the page of a number up to date.

    Raises:
        Refused: If the plan cannot be read at all, or a rate, a rule or the day is wrong.
    """
    book, rates, today = rulebook_of(stated), rates_of(stated.rates), day_of(stated.today)
    open_plan(stated.plan)  # for its messages
    path = Path(stated.plan)

    def build(number: int, follow: Follow) -> Built:
        from speclint.report.build import report_page
        from speclint.report.gather import material_of

        follow(path)
        try:
            opened = open_plan(stated.plan)
        except Refused as trouble:
            raise CannotBuild(str(trouble)) from None

        def read(name: str) -> str:
            follow(path.parent / name)
            return opened.read(name)

        plan = opened._replace(read=read)
        _, mistakes = read_home(plan)
        told = tuple(mistake_words(plan.name, one) for one in mistakes)
        system = units_of(stated, plan.text)
        material = material_of(plan, book, lambda sheet: forecast_of(sheet, rates, YEARS, today), today, system)
        return Built(report_page(material, script(number)), told)

    return LivePage(build)


def _listening(port: int) -> socket.socket:
    """A socket on the loopback address; any free port where none is asked for.

    Raises:
        Refused: If the port cannot be had.
    """
    found = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    found.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        found.bind(("127.0.0.1", port))
        found.listen()  # whoever opens the address before the server runs waits a moment and is not refused
    except (OSError, OverflowError) as trouble:
        found.close()
        raise Refused(f"port {port} cannot be had: {getattr(trouble, 'strerror', None) or trouble}", 3) from None
    return found

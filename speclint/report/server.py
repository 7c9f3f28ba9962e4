"""The live page on the loopback address: a token in the address, no other host answered, changes pushed."""

from __future__ import annotations

import asyncio
import contextlib
import json
from collections.abc import AsyncIterator, Callable
from functools import lru_cache
from importlib import resources
from secrets import compare_digest

from starlette.applications import Starlette
from starlette.middleware import Middleware
from starlette.middleware.trustedhost import TrustedHostMiddleware
from starlette.requests import Request
from starlette.responses import HTMLResponse, PlainTextResponse, Response, StreamingResponse
from starlette.routing import Route

from speclint.report.live import LivePage

LOOK = 0.15  # seconds between two looks at the files
BEAT = 15.0  # seconds after which a silent stream says that it is alive
SAFE = {
    "Cache-Control": "no-store",
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Resource-Policy": "same-origin",
    "X-Frame-Options": "DENY",
}


@lru_cache(maxsize=1)
def _script() -> str:
    return resources.files("speclint.report").joinpath("pages", "live.js").read_text(encoding="utf-8")


def live_script(number: int) -> str:
    """The script that keeps the page of this number up to date."""
    return _script().replace("PAGE_NUMBER", str(number))


def live_app(live: LivePage, token: str) -> Starlette:
    """The application that shows a live page.

    Args:
        live: The page.
        token: Without which nothing is shown.
    """
    changed = asyncio.Event()

    async def watch() -> None:
        nonlocal changed
        while True:
            if await asyncio.to_thread(live.refresh):
                changed.set()
                changed = asyncio.Event()
            await asyncio.sleep(LOOK)

    @contextlib.asynccontextmanager
    async def lifespan(app: Starlette) -> AsyncIterator[None]:
        task = asyncio.create_task(watch())
        yield
        task.cancel()
        with contextlib.suppress(asyncio.CancelledError):
            await task

    def known(request: Request) -> bool:
        return compare_digest(request.path_params["token"].encode(), token.encode())

    async def page(request: Request) -> Response:
        if not known(request):
            return PlainTextResponse("not here\n", 404, SAFE)
        return HTMLResponse(live.page or _waiting(live), headers=SAFE)

    async def changes(request: Request) -> Response:
        if not known(request):
            return PlainTextResponse("not here\n", 404, SAFE)
        return StreamingResponse(_told(live, lambda: changed, request), media_type="text/event-stream", headers=SAFE)

    routes = [Route("/{token}/", page), Route("/{token}/changes", changes)]
    middleware = [Middleware(TrustedHostMiddleware, allowed_hosts=["127.0.0.1", "localhost"])]
    return Starlette(routes=routes, middleware=middleware, lifespan=lifespan)


async def _told(live: LivePage, event: Callable[[], asyncio.Event], request: Request) -> AsyncIterator[str]:
    """The state of the page now and after every change, until the reader goes."""
    version = -1
    while not await request.is_disconnected():
        waiting = event()  # before the look, so that a change after it wakes
        if live.version != version:
            version = live.version
            told = {"version": version, "page": live.number, "whole": live.whole, "trouble": list(live.trouble)}
            yield f"data: {json.dumps(told)}\n\n"
        try:
            await asyncio.wait_for(waiting.wait(), BEAT)
        except TimeoutError:
            yield ": still here\n\n"


def _waiting(live: LivePage) -> str:
    """What is shown while no page could be made yet."""
    from html import escape

    told = "".join(f"<li>{escape(line)}</li>" for line in live.trouble)
    return (
        '<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>No page yet</title></head><body>'
        f"<main><h1>No page yet</h1><p>The plan cannot be read; save it again and this page follows.</p><ul>{told}</ul>"
        f"</main><script>{live_script(0)}</script></body></html>"
    )

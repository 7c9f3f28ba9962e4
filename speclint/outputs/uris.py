"""Places of plans as other programs name them: relative where they can be, with forward slashes, percent-encoded."""

from __future__ import annotations

import os
from pathlib import Path
from urllib.parse import quote

_PLAIN = "/~!$&'()*,;=@+"  # what a path may hold as it is, less the colon, which would begin a scheme


def uri_of(path: str) -> str:
    """The place of a file: relative to the folder of the run, or whole where it lies outside and was named whole."""
    if os.path.isabs(path):
        here = os.getcwd()
        if os.path.commonpath([here, os.path.normpath(path)]) != here:
            return Path(path).as_uri()
        path = os.path.relpath(path, here)
    return quote(os.path.normpath(path).replace(os.sep, "/"), safe=_PLAIN, errors="surrogateescape")


def uri_beside(plan: str, used: str) -> str:
    """The place of a file that a plan uses, named relative to the folder of the plan.

    Args:
        plan: The place of the plan.
        used: The name of the file, with forward slashes.
    """
    return plan.rpartition("/")[0] + "/" * ("/" in plan) + quote(used, safe=_PLAIN, errors="replace")

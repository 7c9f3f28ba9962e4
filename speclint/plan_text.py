"""A plan as it comes from a file, and how the files it uses are read; light, so that a kept review starts at once."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple


class CannotRead(Exception):
    """A file that cannot be read; its argument says why in the user's words."""


Reader = Callable[[str], str]


class PlanText(NamedTuple):
    """The text of a plan, the name by which messages call it, and how to read the files it uses."""

    text: str
    name: str
    read: Reader

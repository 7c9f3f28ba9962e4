"""Results worth keeping between runs, in the user's cache; a cache that cannot be used is no news to the user."""

from __future__ import annotations

import marshal
import os
from pathlib import Path
from typing import Any

from speclint.paths import cache_folder


def kept(name: str, key: str) -> Any:
    """What was kept under a name, if its key is the same; else nothing."""
    try:
        found_key, value = marshal.loads((cache_folder() / name).read_bytes())
    except (OSError, ValueError, EOFError, TypeError):
        return None
    return value if found_key == key else None


def keep(name: str, key: str, value: Any) -> None:
    """Keep plain data, or code, for the next start."""
    place = cache_folder() / name
    beside = place.with_name(f".{place.name}.{os.getpid()}")
    try:
        place.parent.mkdir(parents=True, exist_ok=True)
        beside.write_bytes(marshal.dumps((key, value)))
        beside.replace(place)
    except OSError:
        return


def state_of(paths: list[Path]) -> str:
    """Names, sizes and times of files, for a key that changes when one of them does."""
    states = ((path, path.stat()) for path in paths)
    return "\n".join(f"{path.parent.name}/{path.name} {state.st_size} {state.st_mtime_ns}" for path, state in states)

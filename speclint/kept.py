"""Results worth keeping between runs, in the user's cache; a cache that cannot be used is no news to the user."""

from __future__ import annotations

import marshal
import os
from contextlib import suppress
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


def plain(value: Any) -> Any:
    """Named tuples, and tuples that hold them, as bare tuples, which can be kept."""
    return tuple([plain(one) for one in value]) if isinstance(value, tuple) else value


def state_of(paths: list[Path]) -> str:
    """Names, sizes and times of files, for a key that changes when one of them does."""
    states = ((path, path.stat()) for path in paths)
    return "\n".join(f"{path.parent.name}/{path.name} {state.st_size} {state.st_mtime_ns}" for path, state in states)


def shelved(shelf: str, key: str) -> Any:
    """What stands on a shelf under a key; nothing where it is not there, or was damaged.

    Args:
        shelf: Name of the shelf, a folder of the cache with one file a key.
        key: What decides the value, as a digest.
    """
    try:
        raw = (cache_folder() / shelf / key).read_bytes()
        return marshal.loads(raw[_SUM:]) if _sum(raw[_SUM:]) == raw[:_SUM] else None
    except (OSError, ValueError, EOFError, TypeError):
        return None


def shelve(shelf: str, key: str, value: Any) -> None:
    """Put plain data on a shelf; what runs at the same time sees the whole of it or nothing."""
    place = cache_folder() / shelf / key
    beside = place.with_name(f".{key}.{os.getpid()}")
    raw = marshal.dumps(value)
    try:
        place.parent.mkdir(parents=True, exist_ok=True)
        beside.write_bytes(_sum(raw) + raw)
        beside.replace(place)
    except OSError:
        with suppress(OSError):
            beside.unlink()


def clear_shelf(shelf: str, most: int, most_bytes: int) -> None:
    """Take the oldest entries off a shelf until it holds no more than so many, and no more than so many bytes."""
    found: list[tuple[int, int, str]] = []
    with suppress(OSError):
        for entry in os.scandir(cache_folder() / shelf):
            with suppress(OSError):  # taken off by another run
                state = entry.stat()
                found.append((state.st_mtime_ns, state.st_size, entry.path))
    count, size = len(found), sum(one for _, one, _ in found)
    for _, one, path in sorted(found):
        if count <= most and size <= most_bytes:
            return
        with suppress(OSError):
            os.unlink(path)
        count, size = count - 1, size - one


_SUM = 16  # bytes of the sum that stands before an entry


def _sum(raw: bytes) -> bytes:
    import hashlib

    return hashlib.blake2b(raw, digest_size=_SUM).digest()

"""Where the folders that ship with the program are, in a wheel and in a checkout."""

from pathlib import Path

SHIPPED = ("grammar", "rules", "shared", "specs")


def shipped(name: str) -> Path:
    """The shipped folder `name`: packed inside the wheel, or beside the package in a checkout.

    Raises:
        FileNotFoundError: If the folder is in neither place.
    """
    if name not in SHIPPED:
        raise FileNotFoundError(f"wanted one of {', '.join(SHIPPED)}; got {name!r}")
    package = Path(__file__).resolve().parent
    packed = package / "_data" / name
    if packed.is_dir():
        return packed
    beside = package.parent / name
    if beside.is_dir():
        return beside
    raise FileNotFoundError(f"the shipped folder {name!r} is missing: this installation is damaged")


def cache_folder() -> Path:
    """The user's cache folder for speclint; it need not exist or be writable."""
    import os

    stated = os.environ.get("SPECLINT_CACHE")
    if stated:
        return Path(stated)
    base = os.environ.get("XDG_CACHE_HOME")
    try:
        return (Path(base) if base else Path.home() / ".cache") / "speclint"
    except RuntimeError:  # nobody's home: nothing is kept
        return Path(os.devnull) / "speclint"

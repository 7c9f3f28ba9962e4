"""Where a fact comes from: publications, places in them, and how far each was read."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from speclint.science.after import Standing

STANDINGS: tuple[Standing, ...] = ("published", "second-hand", "memory", "common practice", "ours")


class Publication(NamedTuple):
    """A publication in the register `shared/citations.csv`."""

    key: str
    title: str
    issuer: str
    year: str
    note: str


class Citation(NamedTuple):
    """A place in a publication, and how far it was read.

    `key` is empty where the standing is `common practice` or `ours`.
    """

    key: str
    place: str
    standing: Standing

    def __str__(self) -> str:
        if not self.key:
            return f"{self.standing}: {self.place}" if self.place else self.standing
        about = publication(self.key)
        dated = about.year.isdigit() and about.year not in about.title
        title = f"{about.title} ({about.year})" if dated else about.title
        return f"{title}, {self.place} ({self.standing})" if self.place else f"{title} ({self.standing})"


class UnknownCitation(Exception):
    """A citation key that the register does not hold."""

    def __init__(self, key: str) -> None:
        super().__init__(f"wanted a key of shared/citations.csv; got {key!r}")


@lru_cache(maxsize=1)
def publications() -> dict[str, Publication]:
    """The register of publications, by key."""
    import csv

    from speclint.paths import shipped

    text = shipped("shared").joinpath("citations.csv").read_text(encoding="utf-8")
    return {row["key"]: Publication(**row) for row in csv.DictReader(text.splitlines())}


def publication(key: str) -> Publication:
    """The publication registered under `key`.

    Raises:
        UnknownCitation: If no such key is registered.
    """
    try:
        return publications()[key]
    except KeyError:
        raise UnknownCitation(key) from None

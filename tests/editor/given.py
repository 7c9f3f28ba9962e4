"""What tests of the editor are given: a plan read as it is in an editor, with a mark where the cursor stands."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from speclint.editor.documents import Document, Documents
from speclint.editor.reading import Reading, Settled
from speclint.language.uses import CannotRead
from speclint.rulebook.book import Rulebook, load_rulebook

ROOT = Path(__file__).parents[2]
SPECS = ROOT / "specs"
CURSOR = "‸"
DAY = "2026-11-25"
PLAN = """site { weather "Marquette, MI";  terrain suburban }
typical wall { build log round 10";  species eastern white pine;  starts 20" above grade }
typical wall bare { starts 12" above grade }
wall south { faces S 10 E;  length 46';  height 10';  ground lawn }
wall east, west { faces E;  length 30';  height 10';  like bare }
corner se { of south, east;  ends 14" }
roof main { covers south, east, west;  form hip;  pitch 8:12;  eaves 2' }
deck lake { along south;  depth 8' }
alternate "wide eaves" { roof main { eaves 3' } }
variance log-end-past-drip-line on corner se { because "seen by the client";  accepted by "J. M.";  until 2027-06-30 }
"""


@lru_cache(maxsize=1)
def book() -> Rulebook:
    """The rulebook that ships."""
    return load_rulebook()


def settled() -> Settled:
    """What holds for a session of the tests."""
    return Settled(book(), lambda text: "imperial", lambda: DAY)


def nothing_on_disk(path: Path) -> str:
    """No file is there."""
    raise CannotRead("there is no such file")


def read(text: str, encoding: str = "utf-16", **used: str) -> tuple[Reading, int]:
    """A plan in an editor, and the offset of the mark in its text (its end where it has none).

    Args:
        text: The plan.
        encoding: The units of the editor's positions.
        used: Texts of further open files, by their name without its ending.
    """
    offset = text.find(CURSOR)
    documents = Documents(nothing_on_disk)
    documents.encoding = encoding
    for name, other in used.items():
        documents.put(Document(f"file:///plans/{name}.plan", other, 1))
    plan = Document("file:///plans/house.plan", text.replace(CURSOR, ""), 1)
    documents.put(plan)
    return Reading(plan, documents, settled()), len(plan.text) if offset < 0 else offset


def marked(text: str, before: str, behind: str = "") -> str:
    """A text with the mark behind the first place of some words, or within them: before what follows."""
    assert before + behind in text, before + behind
    return text.replace(before + behind, before + CURSOR + behind, 1)

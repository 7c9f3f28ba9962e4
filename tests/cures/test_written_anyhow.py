"""However the settings of a plan stand on its lines, a written cure reviews as promised."""

from __future__ import annotations

import re
from collections.abc import Sequence

from hypothesis import given, settings
from hypothesis import strategies as st

from speclint.cures.change import Changes
from speclint.cures.desk import Desk
from speclint.cures.gather import Gathered
from speclint.cures.together import cure_set
from speclint.cures.write import alternate_text
from speclint.language.edit import with_edits
from speclint.pipeline import review
from tests.cures.test_cures import DAY, book, plan_of

Notes = tuple[str, tuple[str, ...]]
SITE: Notes = (
    "site",
    (
        'weather "Marquette, MI"',
        "ground snow 70 psf",
        "frost depth 60~",
        "termites slight",
        "ice barrier yes",
        "rain intensity 4 in/h",
    ),
)
TYPICAL: Notes = (
    "typical wall",
    (
        "build log round 10~",
        "species eastern white pine",
        "seasoning kiln-dried to 15%",
        "starts 6~ above grade",
        "height 9'-6~",
    ),
)
WALLS: tuple[tuple[Notes, ...], ...] = (
    (("wall south, north", ("length 46'", "ground paving")), ("wall west", ("faces W", "length 30'", "starts 9~"))),
    (("wall south", ("faces S", "length 46'", "starts 6~ above grade")), ("wall north, west", ("length 30'",))),
    (("wall south, west, north", ("length 30'", "starts 4~ above grade", "ground paving")),),
    (
        ("wall south", ("faces S", "length 46'")),
        ("wall north", ("faces N", "length 46'", "starts 30~ above grade")),
        ("wall west", ("faces W", "length 30'", "starts 20~ above grade")),
    ),
)
ROOF: Notes = (
    "roof main",
    ("covers south, west, north", "gables west", "form gable", "pitch 10:12", "eaves 1'-6~", "rakes 1'-0~"),
)
COMMENTS = ("# was 10'-0~", '# a } or "b', "# 6~ {", "#~")
BETWEEN_NOTES = ("; ", ";  ", "\n\t", "\n    ", ";\n", ";\n\n\t ", *(f"  {comment}\n\t" for comment in COMMENTS))
OPENING = ("", " ", "\n\t", "\n    ", *(f" {comment}\n\t" for comment in COMMENTS))
CLOSING = ("", " ", "; ", "\n", ";\n\t", *(f" {comment}\n" for comment in COMMENTS))
BETWEEN_BLOCKS = ("\n", " ", "\t", "", *(f" {comment}\n" for comment in COMMENTS))


@st.composite
def plans(draw: st.DrawFn) -> str:
    """A plan with its blocks and notes in any order and on any lines."""

    def block(head: str, notes: Sequence[str]) -> str:
        text = draw(st.sampled_from(OPENING))
        for at, note in enumerate(draw(st.permutations(notes))):
            text += (draw(st.sampled_from(BETWEEN_NOTES)) if at else "") + note
        return f"{head} {{{text}{draw(st.sampled_from(CLOSING))}}}"

    blocks = draw(st.permutations([SITE, TYPICAL, *draw(st.sampled_from(WALLS)), ROOF]))
    text = "".join(block(*one) + draw(st.sampled_from(BETWEEN_BLOCKS)) for one in blocks)
    text = draw(st.sampled_from(("", "\ufeff"))) + text.replace("~", draw(st.sampled_from('"″”')))
    return text.replace("\n", draw(st.sampled_from(("\n", "\r\n", "\r"))))


def found(text: str, alternate: str = "") -> dict[str, str]:
    """The findings of a plan that reads whole, each with its grade."""
    told = review(plan_of(text), book(), DAY, alternate=alternate)
    assert () == told.mistakes
    return {ruling.mark: ruling.grade for ruling in told.rulings}


def promised(at: Desk, changes: Changes) -> dict[str, str]:
    return {mark: ruling.grade for mark, ruling in at.found_with(changes).items()}


def comments(text: str) -> list[str]:
    return re.findall(r"#[^\r\n]*", text)


@given(plans(), st.sampled_from(("hold", "note")))
@settings(max_examples=40)
def test_a_written_cure_and_an_alternate_review_as_promised(text: str, grade: str) -> None:
    at = Desk(plan_of(text), book(), DAY, "imperial")
    changes = cure_set(at, grade).changes  # type: ignore[arg-type]
    written = with_edits(text, at.writer.edits(changes))
    beside = f"{text}\n{alternate_text('cured', at.widened(changes))}"
    assert (True, comments(text)) == (len(changes) > 0, comments(written))
    assert [promised(at, changes)] * 2 == [found(written), found(beside, "cured")]


@given(plans(), st.sampled_from(("sill-too-near-grade", "snow-banked-against-wood")))
@settings(max_examples=40)
def test_the_cures_of_one_rule_written_together_review_as_promised(text: str, rule: str) -> None:
    at = Desk(plan_of(text), book(), DAY, "imperial")
    gathered = Gathered(at)
    for ruling in at.findings.values():
        if ruling.rule == rule and (offers := at.offers(ruling)[0]):
            gathered.take(ruling.mark, offers[0].cure.changes)
    after = found(with_edits(text, at.writer.edits(gathered.changes)))
    assert promised(at, gathered.changes) == after
    assert set() == set(gathered.cleared) & set(after)

"""Deck frames, ledgers and posts against prescriptive tables; what lies outside goes to an engineer."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from math import pi, sqrt

from speclint.citation import Citation
from speclint.measures.facts import Facts, Working
from speclint.measures.register import measure
from speclint.tables.decks import (
    Limit,
    decking_spacing_limit,
    joist_span_limit,
    ledger_spacing,
    post_height_limit,
    post_size_within,
)
from speclint.tables.rows import UnknownRow
from speclint.units import INCH, PSF, show

LIVE = 40 * PSF
NO_ROW = "the {} table does not go so far: its size, species, spacing or load is not there (loads end at 70 psf)"
TOO_HEAVY = "the post table ends at 40 psf and the deck is to carry {}: a licensed engineer sizes the post"
TOO_THIN = "the post table begins at 4x4 and has nothing for {}: a licensed engineer sizes the post"
ROUND_POST = Citation("awc-nds-2018", "3.7.3, round columns", "memory")
MOST_ABOVE = 200  # parts over one post; no house has so many; ours


def deck_load(deck: Facts, work: Working) -> float:
    """The load to read tables with: the ground snow where it is more than the live load and no roof keeps it off. [Pa]

    Raises:
        NotStated: If the deck lies open and the ground snow of the site is not known.
    """
    if deck.element.kind == "deck" and deck["under"] is not None:
        return LIVE
    return max(LIVE, float(work.need(deck["site"], "ground snow", "site")))


def limit_of(limit: Limit, work: Working) -> float:
    """The value of a limit, its citation and entry kept."""
    work.cite(limit.citation)
    work.note(f"table entry: {limit.entry}")
    if limit.doubt:
        work.note(limit.doubt)
    work.how = "looked up"
    return limit.value


def read_at(limit_at: Callable[[float], Limit], deck: Facts, work: Working) -> Limit:
    """The limit at the load of the deck; what is not in the table at the least load needs no snow to be told so."""
    limit_at(LIVE)
    return limit_at(deck_load(deck, work))


def covered_by(limit_at: Callable[[float], Limit], deck: Facts, work: Working, table: str) -> str:
    """Whether a table has a limit at the load of a deck, yes or no."""
    try:
        read_at(limit_at, deck, work)
    except UnknownRow:
        work.note(NO_ROW.format(table))
        return "no"
    return "yes"


def _joist_spans(deck: Facts, work: Working) -> Callable[[float], Limit]:
    size = work.need(deck, "joists")[2]
    return partial(joist_span_limit, size, work.need(deck, "joist species"), float(work.need(deck, "joist spacing")))


@measure("deck", "joist span limit", "length", "longest span of the prescriptive table for its joists")
def span_limit(deck: Facts, work: Working) -> float:
    """By size, species, spacing and load; nothing where the table does not go so far."""
    try:
        return limit_of(read_at(_joist_spans(deck, work), deck, work), work)
    except UnknownRow:
        raise work.absent(NO_ROW.format("joist")) from None


@measure("deck", "in joist table", "yes or no", "whether the prescriptive joist table covers it")
def in_joist_table(deck: Facts, work: Working) -> str:
    """Whether the table has its size, species, spacing and load."""
    return covered_by(_joist_spans(deck, work), deck, work, "joist")


@measure("deck", "joist spacing limit", "length", "widest joist spacing for its boards")
def board_limit(deck: Facts, work: Working) -> float:
    """By the thickness of the boards, laid square to the joists over three or more."""
    board = work.need(deck, "boards")
    names = {"five-quarter": "5/4", "two-inch": "2 in"}
    if board not in names:
        raise work.absent(f"{board} boards follow their maker's report")
    return limit_of(decking_spacing_limit(names[board], diagonal=False, continuous=True), work)


def _deck_on(ledger: Facts, work: Working) -> Facts:
    """The deck that a ledger carries."""
    carried = ledger["carries"]
    if not isinstance(carried, Facts) or carried.element.kind != "deck":
        raise work.absent("the table is for deck ledgers")
    return carried


def _ledger_spacings(ledger: Facts, deck: Facts, work: Working) -> Callable[[float], Limit]:
    span = float(work.need(deck, "joist span"))
    return partial(ledger_spacing, work.need(ledger, "fastener"), span)


@measure("ledger", "spacing limit", "length", "widest spacing of its fasteners in the prescriptive table")
def spacing_limit(ledger: Facts, work: Working) -> float:
    """By fastener, joist span and load."""
    deck = _deck_on(ledger, work)
    try:
        return limit_of(read_at(_ledger_spacings(ledger, deck, work), deck, work), work)
    except UnknownRow:
        raise work.absent(NO_ROW.format("ledger")) from None


@measure("ledger", "in ledger table", "yes or no", "whether the prescriptive ledger table covers its joists and load")
def in_ledger_table(ledger: Facts, work: Working) -> str:
    """Whether the table has its fastener, joist span and load, whatever it is fixed to."""
    deck = _deck_on(ledger, work)
    return covered_by(_ledger_spacings(ledger, deck, work), deck, work, "ledger")


@measure("post", "least side", "length", "the lesser side of its section")
def least_side(post: Facts, work: Working) -> float:
    """The lesser of the two sides as named."""
    size = work.need(post, "size")
    return float(min(size[0], size[1]))


def with_all_above(post: Facts) -> list[Facts]:
    """A post or beam and what it carries, straight or by way of beams; of an endless pile only so much."""
    parts = {post: None}
    ahead = [post]
    for part in ahead:  # grows while it is walked
        if part.element.kind in ("post", "beam"):
            beams = (beam for beam in part["beams"] if part in (beam["on"] or ()))
            more = [above for above in (*(part["under"] or ()), *beams) if above not in parts]
            parts.update(dict.fromkeys(more))
            ahead += more
        if len(ahead) > MOST_ABOVE:
            break
    return ahead


def _carried(post: Facts, work: Working) -> list[Facts]:
    """The porches, decks and roofs on a post, straight or by way of beams."""
    parts = with_all_above(post)
    loads = [part for part in parts if part.element.kind not in ("post", "beam")]
    if not loads:
        raise work.missing(parts[-1], "under")
    return loads


def _post_row(post: Facts, work: Working) -> str:
    """The size of the post table that its section holds; a size that is not there is read as a smaller one that is.

    Raises:
        UnknownRow: If it is thinner than the table begins.
    """
    breadth, depth, name = work.need(post, "size")
    if "x" not in name:  # one measure only: it may be a round post, and a round one carries less than a square one
        breadth = depth = breadth * sqrt(pi) / 2
        work.cite(ROUND_POST)
        work.note(f"{name} is taken as round, which is read as the square of the same area")
    row = post_size_within(breadth, depth)
    named = [INCH * float(side) for side in row.split("x")]
    if any(abs(side - other) > 1e-6 for side, other in zip(sorted((breadth, depth)), named, strict=True)):
        work.note(f"the post table has no {name}; it is read as {row}, the next smaller size that is there")
    return row


def _post_load(carried: list[Facts], work: Working) -> float:
    return max(LIVE, *(deck_load(part, work) if part.element.kind == "deck" else LIVE for part in carried))


@measure("post", "height limit", "length", "greatest height of the prescriptive table for its section")
def height_limit(post: Facts, work: Working) -> float:
    """By its section and the load of the decks on it, in the table that counts no roof load."""
    try:
        row = _post_row(post, work)
    except UnknownRow:
        raise work.absent(TOO_THIN.format(post["size"][2])) from None
    carried = _carried(post, work)
    load = _post_load(carried, work)
    try:
        limit = post_height_limit(row, load)
    except UnknownRow:
        raise work.absent(TOO_HEAVY.format(show(load, "pressure"))) from None
    if any(part.element.kind != "deck" for part in carried):
        work.note("it carries a roof, and the table counts none: the height is a screen and no more")
    return limit_of(limit, work)


@measure("post", "in post table", "yes or no", "whether the prescriptive post table has its section and deck load")
def in_post_table(post: Facts, work: Working) -> str:
    """For a post that carries a deck; a post that carries none is no matter of that table."""
    carried = _carried(post, work)
    if all(part.element.kind != "deck" for part in carried):
        raise work.absent("the table is for the posts of decks")
    try:
        row = _post_row(post, work)
    except UnknownRow:
        work.note(TOO_THIN.format(post["size"][2]))
        return "no"
    load = _post_load(carried, work)
    try:
        post_height_limit(row, load)
    except UnknownRow:
        work.note(TOO_HEAVY.format(show(load, "pressure")))
        return "no"
    return "yes"


@measure("post", "frame engineered", "yes or no", "whether a licensed engineer designs the frame of every deck on it")
def frame_engineered(post: Facts, work: Working) -> str:
    """As the decks state it."""
    decks = [part for part in _carried(post, work) if part.element.kind == "deck"]
    if not decks:
        raise work.absent("it carries no deck")
    if any(deck["engineered"] == "no" for deck in decks):
        return "no"
    return "yes" if all(work.need(deck, "engineered") == "yes" for deck in decks) else "no"


@measure("post", "footing clearance", "length", "bottom of its footing below the frost line; negative above")
def footing_clearance(post: Facts, work: Working) -> float:
    """Depth of the footing less the frost depth."""
    return float(work.need(post, "footing")) - float(work.need(post["site"], "frost depth", "site"))

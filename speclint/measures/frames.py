"""Deck frames, ledgers and posts against prescriptive tables; what lies outside goes to an engineer."""

from __future__ import annotations

from speclint.citation import Citation
from speclint.measures.facts import Facts, Working
from speclint.measures.register import measure
from speclint.tables.decks import Limit, decking_spacing_limit, joist_span_limit, ledger_spacing, post_height_limit
from speclint.tables.rows import UnknownRow
from speclint.units import INCH, PSF

LIVE = 40 * PSF
NO_ROW = "the {} table does not go so far: its size, species, spacing or load is not there (loads end at 70 psf)"


def deck_load(deck: Facts, work: Working) -> float:
    """The load to read tables with: the ground snow where it is more than the live load and no roof keeps it off."""
    snow = work.maybe(deck["site"], "ground snow") if deck["site"] else None
    if deck.element.kind == "deck" and deck["under"] is not None:
        return LIVE
    if snow is None:
        basis = Citation("", "deck tables are read at the live load where no snow is stated", "ours")
        return float(work.assume("ground snow", LIVE, "pressure", "no ground snow is stated", basis))
    return max(LIVE, float(snow))


def _take(limit: Limit, work: Working) -> float:
    work.cite(limit.citation)
    work.note(f"table entry: {limit.entry}")
    if limit.doubt:
        work.note(limit.doubt)
    work.how = "looked up"
    return limit.value


@measure("deck", "joist span limit", "length", "longest span of the prescriptive table for its joists")
def span_limit(deck: Facts, work: Working) -> float:
    """By size, species, spacing and load; nothing where the table does not go so far."""
    size = work.need(deck, "joists")[2]
    species, spacing = work.need(deck, "joist species"), float(work.need(deck, "joist spacing"))
    try:
        return _take(joist_span_limit(size, species, spacing, deck_load(deck, work)), work)
    except UnknownRow:
        raise work.absent(NO_ROW.format("joist")) from None


@measure("deck", "in joist table", "yes or no", "whether the prescriptive joist table covers it")
def in_joist_table(deck: Facts, work: Working) -> str:
    """Whether the table has its size, species, spacing and load."""
    size = work.need(deck, "joists")[2]
    species, spacing = work.need(deck, "joist species"), float(work.need(deck, "joist spacing"))
    try:
        joist_span_limit(size, species, spacing, deck_load(deck, work))
    except UnknownRow:
        work.note(NO_ROW.format("joist"))
        return "no"
    return "yes"


@measure("deck", "joist spacing limit", "length", "widest joist spacing for its boards")
def board_limit(deck: Facts, work: Working) -> float:
    """By the thickness of the boards, laid square to the joists over three or more."""
    board = work.need(deck, "boards")
    names = {"five-quarter": "5/4", "two-inch": "2 in"}
    if board not in names:
        raise work.absent(f"{board} boards follow their maker's report")
    return _take(decking_spacing_limit(names[board], diagonal=False, continuous=True), work)


@measure("ledger", "spacing limit", "length", "widest spacing of its fasteners in the prescriptive table")
def spacing_limit(ledger: Facts, work: Working) -> float:
    """By fastener, joist span and load."""
    carried = ledger["carries"]
    if carried is None or carried.element.kind != "deck":
        raise work.absent("the table is for deck ledgers")
    span = float(work.need(carried, "joist span"))
    try:
        return _take(ledger_spacing(work.need(ledger, "fastener"), span, deck_load(carried, work)), work)
    except UnknownRow:
        raise work.absent(NO_ROW.format("ledger")) from None


@measure("post", "least side", "length", "the lesser side of its section")
def least_side(post: Facts, work: Working) -> float:
    """The lesser of the two sides as named."""
    size = work.need(post, "size")
    return float(min(size[0], size[1]))


@measure("post", "height limit", "length", "greatest height of the prescriptive table for its section")
def height_limit(post: Facts, work: Working) -> float:
    """By its section in the table that counts no roof load."""
    side = float(work.need(post, "least side"))
    name = "4x4" if side < 5 * INCH else "6x6" if side < 7.5 * INCH else "8x8"
    try:
        return _take(post_height_limit(name, LIVE), work)
    except UnknownRow:
        raise work.absent(NO_ROW.format("post")) from None


@measure("post", "footing clearance", "length", "bottom of its footing below the frost line; negative above")
def footing_clearance(post: Facts, work: Working) -> float:
    """Depth of the footing less the frost depth."""
    return float(work.need(post, "footing")) - float(work.need(post["site"], "frost depth", "site"))

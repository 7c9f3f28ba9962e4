"""Deck beams and the footings under deck posts against prescriptive tables; what lies outside goes to an engineer."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from speclint.measures.facts import Facts, NotStated, Working
from speclint.measures.frames import LIVE, NO_ROW, covered_by, deck_load, limit_of, read_at
from speclint.measures.register import measure
from speclint.tables.decks import Limit, beam_span_limit, footing_width
from speclint.tables.rows import UnknownRow
from speclint.units import show

HEAVIER = "the footing table is for 40 psf and the deck is to carry {}: a licensed engineer sizes the footing"


def _deck_on(part: Facts, work: Working, table: str) -> Facts:
    """The one deck that a beam carries.

    Raises:
        NotStated: If it carries none, or a roof as well, which the table does not count.
    """
    carried = part["under"]
    if carried is None:
        raise work.missing(part, "under")
    decks = [other for other in carried if other.element.kind == "deck"]
    if len(decks) != 1 or len(carried) > 1:
        raise work.absent(f"the {table} table is for what carries one deck and nothing else")
    deck: Facts = decks[0]
    return deck


def _beam_spans(beam: Facts, deck: Facts, work: Working) -> Callable[[float], Limit]:
    size, species = work.need(beam, "size")[2], work.need(beam, "species")
    return partial(_span, size, species, float(work.need(deck, "joist span")))


def _span(size: str, species: str, joist_span: float, load: float) -> Limit:
    return beam_span_limit(size, species, joist_span, load)


@measure("beam", "span limit", "length", "longest span of the prescriptive table for a deck beam of its size")
def span_limit(beam: Facts, work: Working) -> float:
    """By size, species, joist span and load; nothing where the table does not go so far, or it carries a roof."""
    deck = _deck_on(beam, work, "beam")
    try:
        return limit_of(read_at(_beam_spans(beam, deck, work), deck, work), work)
    except UnknownRow:
        raise work.absent(NO_ROW.format("beam")) from None


@measure("beam", "in beam table", "yes or no", "whether the prescriptive table for deck beams covers it")
def in_beam_table(beam: Facts, work: Working) -> str:
    """Whether the table has its size, species, joist span and load."""
    deck = _deck_on(beam, work, "beam")
    return covered_by(_beam_spans(beam, deck, work), deck, work, "beam")


def _deck_of(post: Facts, work: Working) -> tuple[Facts, Facts]:
    """The beam on a post and the one deck that the two carry."""
    beams = [beam for beam in post["beams"] if post in (beam["on"] or ())]
    if len(beams) != 1:
        raise work.absent("the footing table is for a post under one beam")
    straight = [part for part in post["under"] or () if part.element.kind not in ("deck", "beam")]
    if straight:
        raise work.absent("it carries a roof, which the footing table does not count: a licensed engineer sizes it")
    return beams[0], _deck_on(beams[0], work, "footing")


@measure("post", "in footing table", "yes or no", "whether the prescriptive table for deck footings covers it")
def in_footing_table(post: Facts, work: Working) -> str:
    """Whether it stands under one beam that carries one deck and no roof, with spans and a load that the table has."""
    try:
        _footing(post, work)
    except NotStated as trouble:
        if trouble.absent.missing:
            raise
        work.note(trouble.absent.reason)
        return "no"
    return "yes"


@measure("post", "footing width need", "length", "least width of a round footing in the prescriptive table")
def footing_width_need(post: Facts, work: Working) -> float:
    """By the spans of beam and joists, on soil that carries 1,500 psf."""
    work.note("on clay or silt that carries 1,500 psf; a soil test may allow less")
    return limit_of(_footing(post, work), work)


def _footing(post: Facts, work: Working) -> Limit:
    beam, deck = _deck_of(post, work)
    load = deck_load(deck, work)
    if load > LIVE:
        raise work.absent(HEAVIER.format(show(load, "pressure")))
    spans = float(work.need(beam, "span")), float(work.need(deck, "joist span"))
    try:
        return footing_width(*spans)
    except UnknownRow:
        raise work.absent(NO_ROW.format("footing")) from None

"""Prescriptive deck tables: screens for spans, posts and ledgers, never a structural approval.

Tables are entered as printed: a stated spacing, span, area or load is taken up to the next printed one, and nothing is
interpolated. None of them covers a roofed porch, a log-wall ledger, drifting or sliding snow.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from functools import lru_cache
from typing import NamedTuple

from speclint.citation import Citation
from speclint.tables.rows import Row, UnknownRow, read_table, unknown
from speclint.tables.species import all_species, species_key
from speclint.units import FOOT, INCH, PSF

SPECIES_GROUPS = "decks/species_groups.csv"
NEWEST = "irc-2021"
SLACK = 1.005  # lets a metric size that is rounded stand for the inch size it is sold as
POST_SLACK = 1.02  # a post of 150 mm is sold as 6x6 and is thicker than one when dressed
FASTENERS = {
    "lag": "lag screw",
    "lag screw": "lag screw",
    "bolt": "bolt",
    "bolt with spacers": "bolt with spacers",
    "bolt with washers": "bolt with spacers",
}


class Limit(NamedTuple):
    """A limit read from a deck table.

    Attributes:
        value: The limit. [m]
        entry: The printed row and column that it was read from, in the table's own units.
        edition: The document and its year.
        citation: Where the table stands.
        doubt: What is doubtful about the cell; empty where nothing is.
    """

    value: float
    entry: str
    edition: str
    citation: Citation
    doubt: str = ""


def species_group(species: str) -> str:
    """The group of deck tables that a species, or a combination such as `hem-fir`, belongs to.

    Raises:
        UnknownRow: If the deck tables do not cover it.
    """
    key = species_key(species)
    groups = _groups()
    if key in groups:
        return groups[key]
    raise unknown("deck species groups", species, grouped_species())


def grouped_species() -> tuple[str, ...]:
    """Every species and combination that the deck tables cover."""
    return tuple(row.text("species") for row in read_table(SPECIES_GROUPS))


def joist_span_limit(size: str, species: str, spacing: float, load: float, edition: str = NEWEST) -> Limit:
    """Longest clear span of deck joists.

    Args:
        size: Nominal size such as `2x8`.
        species: Species or combination.
        spacing: Between joist centers. [m]
        load: Live or ground snow load, whichever is greater. [Pa]
        edition: Document to read.

    Returns:
        The limit. [m]

    Raises:
        UnknownRow: If the table does not go so far.
    """
    rows = _rows("decks/joist_spans.csv", edition, size, species_group(species))
    rows = _next_up(rows, "load", load / PSF, "psf")
    row = _next_up(rows, "spacing", spacing / INCH, "in")[0]
    entry = f"{row.text('size')} at {row.text('spacing')} in, {row.text('load')} psf, {row.text('species_group')}"
    return _limit(row, "span", entry)


def joist_overhang_limit(size: str, species: str, spacing: float) -> Limit:
    """Longest overhang of deck joists beyond their beam, which must also stay within a quarter of the span.

    Args:
        size: Nominal size such as `2x8`.
        species: Species or combination.
        spacing: Between joist centers. [m]

    Returns:
        The limit, for a load of 40 psf. [m]

    Raises:
        UnknownRow: If the table does not go so far.
    """
    rows = _rows("decks/joist_spans.csv", "awc-dca6-2012", size, species_group(species))
    row = _next_up(rows, "spacing", spacing / INCH, "in")[0]
    return _limit(row, "overhang", f"{row.text('size')} at {row.text('spacing')} in, {row.text('species_group')}")


def beam_span_limit(
    size: str, species: str, joist_span: float, load: float, joist_overhang: float = 0.0, edition: str = NEWEST
) -> Limit:
    """Longest span of a deck beam that carries joists from one side.

    The 2021 table is entered with the joist span times a factor for the joists' overhang; older ones with the span.

    Args:
        size: Plies and nominal size, such as `2-2x10` or `4x8`.
        species: Species or combination.
        joist_span: Of the joists, between ledger and beam. [m]
        load: Live or ground snow load, whichever is greater. [Pa]
        joist_overhang: Of the joists beyond the beam. [m]
        edition: Document to read.

    Returns:
        The limit. [m]

    Raises:
        UnknownRow: If the table does not go so far.
    """
    rows = _rows("decks/beam_spans.csv", edition, size, species_group(species))
    rows = _next_up(rows, "load", load / PSF, "psf")
    entered = joist_span * (beam_joist_factor(joist_overhang / joist_span) if edition == NEWEST else 1.0)
    row = _next_up(rows, "joist_span", entered / FOOT, "ft")[0]
    entry = f"{row.text('size')}, joists {row.text('joist_span')} ft, {row.text('load')} psf"
    return _limit(row, "span", f"{entry}, {row.text('species_group')}")


def beam_joist_factor(overhang_ratio: float) -> float:
    """The factor that turns a joist span into the one with which the 2021 beam table is entered.

    Args:
        overhang_ratio: Overhang of the joists over their span. [-]

    Returns:
        The factor. [-]

    Raises:
        UnknownRow: If the overhang is more than a quarter of the span.
    """
    table = "decks/beam_joist_factors.csv"
    for row in read_table(table):
        if overhang_ratio <= float(Fraction(row.text("overhang_ratio"))) * SLACK:
            return row.number("factor")
    raise UnknownRow(table, f"overhang of {overhang_ratio:.2f} of the span", ("1/4",))


def ledger_spacing(fastener: str, joist_span: float, load: float, edition: str = NEWEST) -> Limit:
    """Widest spacing of half-inch fasteners of a deck ledger on a band joist; it covers no log wall and no veneer.

    Args:
        fastener: `lag screw`, `bolt`, or `bolt with spacers`.
        joist_span: Of the joists that the ledger carries. [m]
        load: Live or ground snow load, whichever is greater. [Pa]
        edition: Document to read.

    Returns:
        The limit. [m]

    Raises:
        UnknownRow: If the table does not go so far.
    """
    table = "decks/ledger_spacing.csv"
    sort = FASTENERS.get(" ".join(fastener.casefold().split()))
    if sort is None:
        raise unknown(table, fastener, FASTENERS)
    rows = [row for row in _edition(table, edition) if row.text("fastener") == sort]
    rows = _next_up(rows, "load", load / PSF, "psf")
    row = _next_up(rows, "joist_span", joist_span / FOOT, "ft")[0]
    return _limit(row, "spacing", f"{sort}, joists {row.text('joist_span')} ft, {row.text('load')} psf")


def post_height_limit(size: str, load: float, tributary_area: float | None = None, species: str = "") -> Limit:
    """Greatest height of a deck post, to the underside of its beam.

    Args:
        size: Nominal size such as `6x6`.
        load: Live or ground snow load, whichever is greater. [Pa]
        tributary_area: Deck area that the post carries; without it the 2018 table is read. [m2]
        species: Species or combination; needed with the area.

    Returns:
        The limit. [m]

    Raises:
        UnknownRow: If the table does not go so far.
    """
    table = "decks/post_heights.csv"
    if tributary_area is None:
        row = _next_up(_rows(table, "irc-2018", size, ""), "load", load / PSF, "psf")[0]
        return _limit(row, "height", f"{row.text('size')}, {row.text('load')} psf")
    rows = _rows(table, NEWEST, size, species_group(species))
    rows = _next_up(rows, "load", load / PSF, "psf")
    row = _next_up(rows, "tributary_area", tributary_area / FOOT**2, "ft2")[0]
    return _limit(row, "height", f"{row.text('size')}, {row.text('tributary_area')} ft2, {row.text('load')} psf")


def footing_width(beam_span: float, joist_span: float, round_one: bool = True) -> Limit:
    """Least width of the footing of a deck post on soil that carries 1,500 psf, for 40 psf of live load.

    Args:
        beam_span: Of the beam on the post. [m]
        joist_span: Of the joists on the beam. [m]
        round_one: Whether the footing is round; the side of a square one else.

    Returns:
        The width. [m]

    Raises:
        UnknownRow: If the table does not go so far.
    """
    rows = _next_up(list(read_table("decks/footings.csv")), "beam_span", beam_span / FOOT, "ft")
    row = _next_up(rows, "joist_span", joist_span / FOOT, "ft")[0]
    entry = f"beam {row.text('beam_span')} ft, joists {row.text('joist_span')} ft, 1,500 psf soil, 40 psf"
    return _limit(row, "round" if round_one else "square", entry)


def post_size_within(breadth: float, depth: float) -> str:
    """The largest size of the 2018 post table that a section holds, both sides being nominal.

    Args:
        breadth: One side. [m]
        depth: The other side. [m]

    Returns:
        The size as the table names it, such as `6x6`; it is never larger than the section.

    Raises:
        UnknownRow: If the section is thinner than the smallest size of the table.
    """
    table = "decks/post_heights.csv"
    least, most = sorted((breadth / INCH * POST_SLACK, depth / INCH * POST_SLACK))
    sizes = {row.text("size"): sorted(map(float, row.text("size").split("x"))) for row in _edition(table, "irc-2018")}
    within = [name for name, (side, other) in sizes.items() if side <= least and other <= most]
    if not within:
        raise UnknownRow(table, f"post of {breadth / INCH:.3g} by {depth / INCH:.3g} in", tuple(sizes)[:1])
    return max(within, key=lambda name: (sizes[name][0], sizes[name][1]))


def decking_spacing_limit(board: str, *, diagonal: bool, continuous: bool) -> Limit:
    """Widest joist spacing under wood deck boards.

    Args:
        board: `5/4` or `2 in`.
        diagonal: Boards run at an angle to the joists.
        continuous: Boards rest on three joists or more.

    Returns:
        The limit. [m]

    Raises:
        UnknownRow: If the table has no such board.
    """
    table = "decks/decking_spans.csv"
    rows = read_table(table)
    sort = "diagonal" if diagonal else "perpendicular", "three or more" if continuous else "two"
    for row in rows:
        if (row.text("board"), row.text("direction"), row.text("supports")) == (board, *sort):
            return _limit(row, "spacing", f"{board} boards, {sort[0]}, {sort[1]} joists")
    raise unknown(table, board, {row.text("board") for row in rows})


def ledger_edge_distance(member: str, edge: str) -> Limit:
    """Least distance of a ledger fastener from an edge of the `ledger` or the `band joist`.

    Args:
        member: `ledger` or `band joist`.
        edge: `top`, `bottom`, `end` or, for the ledger, `between rows`.

    Returns:
        The least distance. [m]

    Raises:
        UnknownRow: If the table has no such edge.
    """
    table = "decks/ledger_edges.csv"
    for row in read_table(table):
        if (row.text("member"), row.text("edge")) == (member, edge):
            return _limit(row, "distance", f"{member}, {edge}")
    raise unknown(table, f"{member} {edge}", (f"{row.text('member')} {row.text('edge')}" for row in read_table(table)))


@lru_cache(maxsize=1)
def _groups() -> dict[str, str]:
    """The table group of each species by key, aliases included."""
    groups = {species_key(row.text("species")): row.text("species_group") for row in read_table(SPECIES_GROUPS)}
    groups |= {species_key(group): group for group in set(groups.values())}
    for species in all_species():
        group = groups.get(species_key(species.name))
        if group is not None:
            groups |= {species_key(alias): group for alias in species.aliases}
    return groups


def _edition(table: str, edition: str) -> list[Row]:
    rows = [row for row in read_table(table) if row.text("edition") == edition]
    if not rows:
        raise unknown(table, edition, {row.text("edition") for row in read_table(table)})
    return rows


def _rows(table: str, edition: str, size: str, group: str) -> list[Row]:
    """The rows of one edition for a size and a species group."""
    plain = size.casefold().replace(" ", "").replace("×", "x").replace("(", "").replace(")", "-")
    rows = [row for row in _edition(table, edition) if row.text("species_group") == group]
    if not rows:
        others = (row for row in read_table(table) if row.text("species_group") == group)
        raise UnknownRow(f"{table}, {edition}", group, _distinct(others, "edition"))
    sized = [row for row in rows if row.text("size") == plain]
    if not sized:
        raise unknown(f"{table}, {edition}", size, _distinct(rows, "size"))
    return sized


def _distinct(rows: Iterable[Row], column: str) -> tuple[str, ...]:
    return tuple(dict.fromkeys(row.text(column) for row in rows))


def _next_up(rows: list[Row], column: str, stated: float, unit: str) -> list[Row]:
    """The rows at the first printed step of a column that is not below what is stated."""
    steps = sorted({row.number(column) for row in rows})
    for step in steps:
        if stated <= step * SLACK:
            return [row for row in rows if row.number(column) == step]
    words = column.replace("_", " ")
    raise UnknownRow(rows[0].table, f"{words} {stated:.4g} {unit}", (f"{words} {steps[-1]:g} {unit}",))


def _limit(row: Row, column: str, entry: str) -> Limit:
    return Limit(row.number(column) * INCH, entry, row.text("edition"), row.citation, row.cells.get("doubt", ""))

"""How stacked logs come down, and the room that needs."""

from __future__ import annotations

from typing import NamedTuple

from speclint.citation import Citation
from speclint.measures.facts import Facts, NotStated, Working
from speclint.measures.moisture import drying_of
from speclint.measures.register import measure
from speclint.quantity import Absent, Missing
from speclint.science.settlement import (
    PRACTICE,
    compaction_allowance,
    headspace_need,
    jack_travel_need,
    practice_allowance,
    settlement,
    stack_shrinkage,
)
from speclint.science.settling_time import adjuster_turns, roof_tilt, settlement_at
from speclint.units import INCH, show

MARGIN = 0.25 * INCH
JACK_MARGIN = 1.0 * INCH
COMMON = Citation("", "margin left when the wall is at rest", "common practice")


@measure("wall", "settlement", "length", "how far the wall comes down until it is at rest")
def wall_settlement(wall: Facts, work: Working) -> float:
    """Zero where nothing is stacked; else the shop's stated allowance or the log standard's formula with practice."""
    if work.need(wall, "stacked") == "no":
        return 0.0
    height = float(work.need(wall, "height"))
    stated = work.maybe(wall, "settling")
    if stated is not None:
        return height * float(stated) / 100
    return height * _computed_rate(wall, work)


@measure("wall", "settling rate", "share", "settlement as a share of the height")
def settling_rate(wall: Facts, work: Working) -> float:
    """Settlement over height."""
    return float(work.need(wall, "settlement")) / float(work.need(wall, "height"))


def _computed_rate(wall: Facts, work: Working) -> float:
    dries = drying_of(wall, work)
    fibres = dries.species.fibre_saturation
    shrinks = work.call(
        stack_shrinkage, height=1.0, shrinkage=dries.mean_shrinkage, fibre_saturation=fibres, **dries.moistures
    )
    beds = work.call(compaction_allowance, scribed=dries.kind == "scribed")
    builders = work.call(practice_allowance, log_kind=dries.kind, seasoning=dries.seasoning)
    work.note(
        f"the larger of {builders * 100:.2g} % that builders allow for {dries.seasoning} {dries.kind} logs, and "
        f"{shrinks * 100:.2g} % of shrinkage with {beds * 100:.2g} % of bedding down"
    )
    return float(
        work.call(
            settlement,
            height=1.0,
            shrinkage_radial=dries.species.radial_shrinkage,
            shrinkage_tangential=dries.species.tangential_shrinkage,
            fibre_saturation=fibres,
            log_kind=dries.kind,
            seasoning=dries.seasoning,
            **dries.moistures,
        )
    )


@measure("wall", "shrinkage part", "length", "what its logs lose in height by drying, as the log standard reckons it")
def shrinkage_part(wall: Facts, work: Working) -> float:
    """By the standard's formula with the mean of radial and tangential shrinkage; its bounds are with either one."""
    dries = drying_of(wall, work)
    height = float(work.need(wall, "height"))
    low, mean, high = (
        float(
            work.call(
                stack_shrinkage,
                height=height,
                shrinkage=shrinkage,
                fibre_saturation=dries.species.fibre_saturation,
                **dries.moistures,
            )
        )
        for shrinkage in (dries.species.radial_shrinkage, dries.mean_shrinkage, dries.species.tangential_shrinkage)
    )
    work.range(low, high, "shrinkage across the rings and along them")
    return mean


@measure("wall", "bedding part", "length", "what it loses in height as coped logs bed down on one another")
def bedding_part(wall: Facts, work: Working) -> float:
    """Up to one percent of the height where logs are coped; none where they bear flat. It is added to shrinkage."""
    dries = drying_of(wall, work)
    share = work.call(compaction_allowance, scribed=dries.kind == "scribed")
    return float(work.need(wall, "height")) * float(share)


@measure("wall", "builders allowance", "length", "what builders allow for the settling of such logs, all told")
def builders_allowance(wall: Facts, work: Working) -> float:
    """By kind of joint and seasoning. It stands beside the computed parts and is never added to them."""
    dries = drying_of(wall, work)
    share = work.call(practice_allowance, log_kind=dries.kind, seasoning=dries.seasoning)
    work.cite(Citation("", f"{dries.seasoning} {dries.kind} logs", PRACTICE[dries.kind, dries.seasoning][1]))
    return float(work.need(wall, "height")) * float(share)


@measure("window, door", "stacked", "yes or no", "whether it is in a wall of stacked logs")
def opening_stacked(opening: Facts, work: Working) -> str:
    """By its wall."""
    return str(work.need(opening["wall"], "stacked", "wall"))


@measure("window, door", "headspace need", "length", "settling gap needed over the frame")
def opening_headspace(opening: Facts, work: Working) -> float:
    """The wall's settling over the height of the opening, with a quarter inch to spare."""
    margin = work.assume("margin", MARGIN, "length", "a quarter inch to spare", COMMON)
    rate = float(work.need(opening["wall"], "settling rate", "wall"))
    return float(work.call(headspace_need, opening_height=work.need(opening, "height"), rate=rate, margin=margin))


@measure("post", "settling past", "length", "how far the wall that shares its load comes down beside it")
def settling_past(post: Facts, work: Working) -> float:
    """How far the walls along the porches it carries come down where the porch roof hangs on them."""
    return max((settling_at(wall, porch, work) for porch, wall in walls_beside(post, work)), default=0.0)


def porches_on(post: Facts) -> tuple[Facts, ...]:
    """The porches that a post carries, itself or by way of beams."""
    return tuple(dict.fromkeys([*post["porches"], *(porch for beam in post["beams"] for porch in beam["porches"])]))


def walls_beside(post: Facts, work: Working) -> list[tuple[Facts, Facts]]:
    """The porches whose roof a post shares with a wall, each with that wall."""
    hung = [porch for porch in porches_on(post) if work.maybe(porch, "hung on") != "posts"]
    for porch in hung:
        if not porch["along"]:
            raise work.missing(porch, "along")
    return [(porch, wall) for porch in hung for wall in porch["along"]]


def settling_at(wall: Facts, porch: Facts, work: Working) -> float:
    """How far a wall comes down at the height at which a porch roof meets it; at its top where that is not stated."""
    whole = float(work.need(wall, "settlement"))
    meets, height = work.maybe(porch, "roof height"), float(work.need(wall, "height"))
    if meets is None or float(meets) >= height:
        return whole
    return float(work.call(settlement_at, height=float(meets), rate=whole / height))


@measure("post", "travel need", "length", "travel its adjuster needs")
def travel_need(post: Facts, work: Working) -> float:
    """The settlement beside it with an inch in hand; 0 where nothing settles past it."""
    past = float(work.need(post, "settling past"))
    if past == 0:
        return 0.0
    margin = work.assume("margin", JACK_MARGIN, "length", "an inch of travel in hand", COMMON)
    return float(work.call(jack_travel_need, height=past, rate=1.0, margin=margin))


class JackCalendar(NamedTuple):
    """When an adjuster is lowered, and how far: months after the logs are stacked, and lengths in m."""

    turns: tuple[tuple[int, float], ...]

    def __str__(self) -> str:
        if not self.turns:
            return "never: nothing settles past it"
        return "; ".join(
            f"month {month}: {show(lower, 'length')} ({1000 * lower:.0f} mm)" for month, lower in self.turns
        )


@measure("post", "jack calendar", "record", "when its adjuster is lowered beside a settling wall, and how far")
def jack_calendar(post: Facts, work: Working) -> JackCalendar:
    """The settlement beside it over five years, by the seasoning of the wall that comes down farthest."""
    past = float(work.need(post, "settling past"))
    beside = [(settling_at(wall, porch, work), wall) for porch, wall in walls_beside(post, work)]
    if past == 0 or not beside:
        return JackCalendar(())
    _, wall = max(beside, key=lambda pair: pair[0])
    seasoning = str(work.need(wall, "seasoning"))
    work.note(f"months after the logs of {wall.label} are stacked; what is measured at the house goes before it")
    work.note("who lowers a loaded post shores it as the maker of the adjuster and the engineer say")
    return JackCalendar(work.call(adjuster_turns, settles=past, seasoning=seasoning))


def _tilts(porch: Facts, work: Working) -> tuple[float | Missing, float]:
    """Slope that a porch roof loses with adjusters at the end of their travel, and with adjusters never touched.

    The first is the setting that is missing where a post has an adjuster of unknown travel.
    """
    hung = work.need(porch, "hung on")
    if hung == "posts":
        return 0.0, 0.0
    walls = porch["along"] or ()
    if not walls:
        raise work.missing(porch, "along")
    posts = [
        post
        for post in work.sheet.of_kind("post")
        if porch in porches_on(post) and work.maybe(post, "temporary") != "yes"
    ]
    if not posts:
        raise work.absent("the plan names no lasting post that carries it")
    settles = max(settling_at(wall, porch, work) for wall in walls)
    if settles == 0:
        return 0.0, 0.0
    span = min(_span(porch, post, work) for post in posts)
    never = float(work.call(roof_tilt, settles=settles, followed=0.0, span=span))
    travels = [_travel(post, work) for post in posts]
    unknown = next((travel for travel in travels if isinstance(travel, Missing)), None)
    if unknown is not None:
        return unknown, never
    travel = min(float(travel) for travel in travels if not isinstance(travel, Missing))
    return float(work.call(roof_tilt, settles=settles, followed=min(travel, settles), span=span)), never


def _span(porch: Facts, post: Facts, work: Working) -> float:
    """From the wall to a post of its porch, level. [m]"""
    depth = float(work.need(porch, "depth"))
    inset = work.maybe(post, "inset")
    if inset is None:
        work.note(f"{post.label} taken under the drip edge: a plan can state its inset")
        return depth
    if inset >= depth:
        raise work.absent(f"{post.label} stands no farther from the wall than the wall itself")
    return depth - float(inset)


def _travel(post: Facts, work: Working) -> float | Missing:
    """How far a post can be lowered; none where it has no adjuster or the plan says nothing of one. [m]"""
    if work.maybe(post, "adjuster") in (None, "none"):
        return 0.0
    travel = work.maybe(post, "travel")
    return Missing(post.label, "travel", post.element.place) if travel is None else float(travel)


@measure("porch", "roof tilt", "slope", "slope its roof loses as the wall settles and its posts are never lowered")
def porch_tilt(porch: Facts, work: Working) -> float:
    """Settlement where the roof hangs, over the distance to its posts; at the least with all travel used."""
    left, never = _tilts(porch, work)
    if not isinstance(left, Missing):
        work.range(left, never, "all travel of its adjusters used, and none of it")
    return never


@measure("porch", "tilt left", "slope", "slope its roof loses even with all travel of its adjusters used")
def porch_tilt_left(porch: Facts, work: Working) -> float:
    """What of the settlement is beyond the least travel of its posts, over the distance to them."""
    left, _ = _tilts(porch, work)
    if isinstance(left, Missing):
        raise NotStated(Absent(work.name, porch.label, (left,)))
    return left


@measure("porch", "pitch left", "slope", "slope its roof keeps as the wall settles and its posts are never lowered")
def pitch_left(porch: Facts, work: Working) -> float:
    """Its pitch less the slope lost; at best with all travel of its adjusters used. Below zero it falls to the wall."""
    pitch = float(work.need(porch, "roof pitch"))
    left, never = _tilts(porch, work)
    if not isinstance(left, Missing):
        work.range(pitch - never, pitch - left, "no travel of its adjusters used, and all of it")
    return pitch - never


@measure("junction, chimney, stone, ledger", "settling past", "length", "how far the wall it meets comes down past it")
def part_settling_past(part: Facts, work: Working) -> float:
    """The settlement of its wall where they meet; for a chimney, of the walls under its roof, log gables included.

    Where a roof stands on walls that come down farther than the wall it meets, or less far, the difference counts.
    """
    kind = part.element.kind
    porch = part.sheet.facts.get(getattr(part.element, "roof", None) or "")  # a junction's “roof” can be a porch's
    if kind == "chimney":
        roof = part["roof"]
        walls = (roof["covers"] or ()) if roof is not None else ()
    elif kind == "ledger" and work.maybe(part, "on") in ("foundation", "veneer"):
        return 0.0
    elif kind == "junction" and porch is not None and porch.element.kind == "porch" and part["wall"] is not None:
        return settling_at(part["wall"], porch, work)
    elif kind == "ledger":
        carried = part["carries"]
        walls = (carried["along"] or ()) if carried is not None else ()
    else:
        walls = (part["wall"],) if part["wall"] is not None else ()
    if not walls:
        raise work.missing(part, "roof" if kind == "chimney" else "wall")
    down = max(float(work.need(wall, "settlement")) for wall in walls)
    if kind == "chimney":
        return max(down, *(_gable_down(wall, part, work) for wall in walls))
    if kind != "junction" or porch is None:
        return down
    under = [float(work.need(wall, "settlement")) for wall in porch["covers"] or () if wall not in walls]
    return max((abs(other - down) for other in under), default=down)


def _gable_down(wall: Facts, chimney: Facts, work: Working) -> float:
    """How far a gable of stacked logs lowers the roof where a chimney passes it: at the ridge, or halfway up. [m]"""
    rise = _log_gable(wall, work)
    if rise <= 0:
        return 0.0
    high = float(work.need(wall, "height")) + (rise if work.maybe(chimney, "at") == "ridge" else rise / 2)
    return high * float(work.need(wall, "settling rate"))


def _log_gable(wall: Facts, work: Working) -> float:
    """How high the logs of a gable stand above its plate; 0 for any other wall. [m]"""
    if work.maybe(wall, "gable") != "yes" or work.need(wall, "stacked") == "no":
        return 0.0
    built, peak, plate = work.maybe(wall, "gable build"), work.maybe(wall, "peak"), float(work.need(wall, "height"))
    if built == "framed" or peak is None or float(peak) <= plate:
        return 0.0
    if built is None:
        work.note(f"{wall.label} is taken to be of logs up to its peak: state its gable build where it is framed")
    return float(peak) - plate


@measure("roof", "ridge settling", "length", "how much farther its ridge comes down than its plates, over log gables")
def ridge_settling(roof: Facts, work: Working) -> float:
    """The settling of the logs between plate and peak, of the gable where that is most; 0 over framed gables."""
    gables = [(rise, wall) for wall in roof["gables"] or () if (rise := _log_gable(wall, work)) > 0]
    work.cite(COMMON)
    return max((rise * float(work.need(wall, "settling rate")) for rise, wall in gables), default=0.0)


@measure("junction, chimney", "slip need", "length", "lap by which its flashing must be able to slide")
def slip_need(part: Facts, work: Working) -> float:
    """The settlement past it and, where there is some, an inch of lap left (two inches at a chimney)."""
    past = float(work.need(part, "settling past"))
    left = (2.0 if part.element.kind == "chimney" else 1.0) * INCH
    work.cite(COMMON)
    return past + left if past > 0.25 * INCH else 0.0

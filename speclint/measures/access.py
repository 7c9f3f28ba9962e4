"""What it takes to reach the wood of a wall."""

from __future__ import annotations

from speclint.measures.facts import Facts, Working
from speclint.measures.register import measure
from speclint.science.access import MEANS, access_class, ladder_foot, scaffold_needs_fall_protection

OVER_ROOF = 0.3  # ours: wood above a porch roof that counts for itself [m]
CAUTIONS = {
    MEANS[1]: "stand no higher than two steps below the top, with all four feet on firm level ground",
    MEANS[2]: "the foot stands out a quarter of the length, on firm level ground, and the top is tied",
    MEANS[3]: "work for people who are trained for it; no scaffold or lift is approved here",
}


@measure("wall", "access", "choice", "what it takes to work on its highest wood, step stool to scaffold or lift")
def wall_access(wall: Facts, work: Working) -> str:
    """By the height of its wood and the fall of the ground; above a porch roof, a scaffold or lift."""
    if work.need(wall, "wooden") == "no":
        raise work.absent("its outside is stone")
    height, slope = max(0.0, float(work.need(wall, "reach"))), work.maybe(wall, "grade")
    if slope is None:
        work.note("fall of the ground not stated: taken as level")
    found = str(work.call(access_class, height=height, ground_slope=float(slope or 0.0)))
    roofs = [float(work.maybe(porch, "roof height") or 0.0) for porch in wall["porches"]]
    if roofs and float(work.need(wall, "wood height")) > max(roofs) + OVER_ROOF:
        work.note("its highest wood stands over a porch roof, where no ladder has a foot")
        found = MEANS[-1]
    if found in CAUTIONS:
        work.note(CAUTIONS[found])
    if found == MEANS[-1] and work.call(scaffold_needs_fall_protection, height=height):
        work.note("a platform more than 10 ft up needs rails or other protection from falls")
    return found


@measure("wall", "ladder foot", "length", "how far out from the wall the foot of a ladder to its highest wood stands")
def wall_ladder_foot(wall: Facts, work: Working) -> float:
    """A quarter of the height, the least that the ground beside it must be level for."""
    if work.need(wall, "access") in (MEANS[0], MEANS[1], MEANS[-1]):
        raise work.absent("a leaning ladder is not the means for it")
    return float(work.call(ladder_foot, working_length=float(work.need(wall, "reach"))))


@measure("care", "adjusters drawn", "count", "how many posts, or rows of posts, the plan gives an adjuster")
def adjusters_drawn(care: Facts, work: Working) -> float:
    """Posts with a jack or shims; where there are none, a post that does not say leaves it open."""
    posts = work.sheet.of_kind("post")
    drawn = sum(work.maybe(post, "adjuster") in ("jack", "shims") for post in posts)
    if not drawn:
        for post in posts:
            work.need(post, "adjuster")
    return float(drawn)


@measure(
    "care", "adjusters wanted", "count", "how many posts, or rows of posts, settle past their wall and have no adjuster"
)
def adjusters_wanted(care: Facts, work: Working) -> float:
    """Posts that the wall beside them comes down past, where the plan shows that."""
    posts = work.sheet.of_kind("post")
    return float(sum((work.maybe(post, "travel need") or 0) > 0 and post["adjuster"] == "none" for post in posts))

"""What speclint never changes: what only a licensed professional may decide, and facts of the lot."""

from __future__ import annotations

# Sizes, spans, fixings and supports of what carries load or people; to state one would be to approve it.
PROFESSIONAL: frozenset[tuple[str, str]] = frozenset(
    (kind, setting)
    for kind, settings in {
        "deck": "joists, joist span, joist spacing, hangers, boards, lateral ties, extra load, engineered",
        "beam": "size, span, material, on, past edge",
        "post": "size, spacing, count, base, footing, footing width, stands on, adjuster, travel, temporary",
        "ledger": "on, slots, fastener, spacing, engineered",
        "rail": "height, opening, posts",
        "stair": "riser, risers, tread, width, handrail, top fixed to, foot on",
        "porch": "engineered, hung on",
        "roof": "engineered, snow guards",
        "wall": "settling",
        "foundation": "type",
        "chase": "made",
    }.items()
    for setting in settings.split(", ")
)
OF_THE_LOT = ("site",)
# What the house is, or what is found on it: a change of it would be another house, or would only hide the finding.
MEANT: frozenset[tuple[str, str]] = frozenset(
    (kind, setting)
    for kind, settings in {
        "wall": "checks, bark, peak, height, length, moisture",
        "planting": "along",
        "step": "after",
        "corner": "slides",
        "porch": "along",
        "post": "height",
    }.items()
    for setting in settings.split(", ")
)


def refusal(kind: str, setting: str) -> str:
    """Why a setting is not changed; empty where it may be."""
    if kind in OF_THE_LOT:
        return "a fact of the lot, to be found out and not chosen"
    if (kind, setting) in PROFESSIONAL or setting == "engineered":
        return "for a licensed engineer or the local building official to decide"
    if (kind, setting) in MEANT:
        return "what the house is, and no small change"
    return ""

"""A comparison of revisions as one documented object for programs."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from speclint.language.atoms import Mistake
from speclint.outputs.compare import Compared
from speclint.outputs.data import as_json
from speclint.review.revisions import AlternateTurn, Asked, Comparison, VarianceTurn
from speclint.review.shifts import NoteChange
from speclint.review.turns import Turn
from speclint.rulebook.rule import GRADES
from speclint.ruling import Accepted, Ruling


@dataclass(frozen=True, slots=True)
class Told:
    """A whole comparison.

    Attributes:
        old: What the old side is called.
        old_commit: The commit that it is, where it is one.
        new: What the new side is called.
        new_commit: The commit that it is, where it is one.
        day: The day of the comparison.
        plans: The plans that were compared.
        troubles: The plans that could not be read, with the message.
        status: The exit status.
    """

    old: str
    old_commit: str
    new: str
    new_commit: str
    day: str
    plans: tuple[Compared, ...]
    troubles: tuple[tuple[str, str], ...]
    status: int


def comparison_object(told: Told) -> str:
    """The comparison as JSON; its form is published in shared/schemas/compare.schema.json."""
    return as_json(
        {
            "old": {"name": told.old, "commit": told.old_commit or None},
            "new": {"name": told.new, "commit": told.new_commit or None},
            "day": told.day,
            "status": told.status,
            "plans": [_plan(one) for one in told.plans],
            "unread": [{"plan": name, "message": message} for name, message in told.troubles],
        }
    )


def _plan(compared: Compared) -> dict[str, Any]:
    found = compared.comparison
    return {
        "plan": compared.name,
        "state": compared.state,
        "changed": found is None or not found.nothing,
        "moved from": compared.moved or None,
        **(_changes(found) if found is not None else {}),
    }


def _changes(found: Comparison) -> dict[str, Any]:
    return {
        "stands": {grade: sum(ruling.grade == grade for ruling in found.review.rulings) for grade in GRADES},
        "findings": [_turn(turn) for turn in found.turns],
        "variances": [_variance(turn) for turn in found.variances],
        "questions": {
            "opened": [_asked(one) for one in found.opened],
            "answered": [_asked(one) for one in found.answered],
        },
        "measures": [
            {
                "element": shift.element,
                "measure": shift.measure,
                "before": shift.before,
                "after": shift.after,
                "better": shift.better,
            }
            for shift in found.shifts
        ],
        "elements": {
            "added": list(found.elements.added),
            "removed": list(found.elements.removed),
            "renamed": [{"before": old, "after": new} for old, new in found.elements.renamed.items()],
        },
        "settings": [_note(note) for note in found.notes],
        "mistakes": {
            "new": [_mistake(one) for one in found.mistakes],
            "mended": [_mistake(one) for one in found.mended],
        },
        "alternates": [_alternate(one) for one in found.alternates],
    }


def _alternate(turn: AlternateTurn) -> dict[str, Any]:
    return {
        "alternate": turn.name,
        "state": turn.state,
        "findings": [_turn(one) for one in turn.turns],
        "elements": {"added": list(turn.added), "removed": list(turn.removed)},
        "settings": [_note(one) for one in turn.notes],
    }


def _note(note: NoteChange) -> dict[str, str]:
    return {"element": note.element, "setting": note.setting, "before": note.before, "after": note.after}


def _turn(turn: Turn) -> dict[str, Any]:
    return {
        "finding": turn.told.mark,
        "rule": turn.told.rule,
        "element": turn.told.element,
        "change": turn.word,
        "way": turn.way or "neither",
        "why": turn.why or None,
        "covered by variance": turn.covered,
        "before": _ruling(turn.before),
        "after": _ruling(turn.after),
    }


def _ruling(ruling: Ruling | None) -> dict[str, Any] | None:
    if ruling is None:
        return None
    return {
        "rule": ruling.rule,
        "grade": ruling.grade,
        "message": ruling.message,
        "stated": ruling.stated if ruling.stated_number is None else ruling.stated_number,
        "needed": ruling.needed if ruling.needed_number is None else ruling.needed_number,
        "margin": ruling.margin,
        "unit": ruling.unit or None,
        "place": {"file": ruling.place.file, "line": ruling.place.line, "column": ruling.place.column},
    }


def _variance(turn: VarianceTurn) -> dict[str, Any]:
    def says(accepted: Accepted | None) -> dict[str, Any] | None:
        if accepted is None:
            return None
        variance = accepted.variance
        return {
            "state": accepted.state,
            "because": variance.because,
            "accepted by": variance.accepted_by,
            "until": variance.until or None,
        }

    return {
        "rule": turn.rule,
        "element": turn.element or None,
        "before": says(turn.before),
        "after": says(turn.after),
    }


def _asked(asked: Asked) -> dict[str, Any]:
    return {"element": asked.element, "setting": asked.setting, "other": asked.answer or None}


def _mistake(mistake: Mistake) -> dict[str, Any]:
    return {
        "message": mistake.message,
        "place": {"file": mistake.file, "line": mistake.line, "column": mistake.column},
    }

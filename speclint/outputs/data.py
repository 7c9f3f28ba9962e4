"""A review as one documented object for programs, and quantities unfolded for them."""

from __future__ import annotations

from typing import Any

from speclint.outputs.json_text import as_json as as_json
from speclint.quantity import Absent, Quantity, shown
from speclint.review.judge import ruling_of
from speclint.rulebook.rule import GRADES
from speclint.ruling import Accepted, Review, Ruling
from speclint.span import Span
from speclint.units import System

OTHER_COUNTS = ("holds accepted by variance", "open questions", "open questions that may hold")


def review_object(review: Review, system: System) -> dict[str, Any]:
    """The review as plain data; its form is published in shared/schemas/review.schema.json."""
    return {
        "plan": review.plan,
        "alternate": review.alternate or None,
        "counts": {
            **{grade: sum(ruling.grade == grade for ruling in review.rulings) for grade in GRADES},
            **dict(zip(OTHER_COUNTS, _other_counts(review), strict=True)),
        },
        "rulings": [_ruling(ruling, system) for ruling in (*review.rulings, *map(ruling_of, review.unanswered))],
        "questions": [
            {
                "setting": question.setting,
                "elements": list(question.elements),
                "rules": list(question.rules),
                "grade": question.grade,
                "deciding rules": list(question.deciding),
                "text": question.text,
                "place": _place(question.place),
            }
            for question in review.questions
        ],
        "variances": [_variance(accepted) for accepted in review.variances],
        "assumed": [
            {
                "element": assumed.element,
                "setting": assumed.setting,
                "value": assumed.value,
                "reason": assumed.reason,
                "place": _place(assumed.place),
            }
            for assumed in review.assumed
        ],
        "mistakes": [
            {
                "message": mistake.message,
                "help": mistake.help,
                "place": {"file": mistake.file, "line": mistake.line, "column": mistake.column},
            }
            for mistake in review.mistakes
        ],
        "cautions": list(review.cautions),
    }


def _other_counts(review: Review) -> tuple[int, int, int]:
    return review.accepted_holds, len(review.questions), review.holding_questions


def unread_object(plan: str, message: str) -> dict[str, Any]:
    """A plan that could not be read at all, in the form of a review that holds nothing but that."""
    at = {"file": plan, "line": 1, "column": 1}
    return {
        "plan": plan,
        "alternate": None,
        "counts": dict.fromkeys((*GRADES, *OTHER_COUNTS), 0),
        **{name: [] for name in ("rulings", "questions", "variances", "assumed")},
        "mistakes": [{"message": message, "help": "", "place": at}],
        "cautions": [],
    }


def _ruling(ruling: Ruling, system: System) -> dict[str, Any]:
    return {
        "rule": ruling.rule,
        "grade": ruling.grade,
        "outcome": ruling.outcome,
        "element": ruling.element,
        "place": _place(ruling.place),
        "stated": ruling.stated if ruling.stated_number is None else ruling.stated_number,
        "needed": ruling.needed if ruling.needed_number is None else ruling.needed_number,
        "margin": ruling.margin,
        "unit": ruling.unit or None,
        "message": ruling.message,
        "because": ruling.because,
        "cures": list(ruling.cures),
        "basis": list(ruling.basis),
        "defer": ruling.defer or None,
        "missing": [{"element": missing.element, "setting": missing.setting} for missing in ruling.missing],
        "evidence": [unfolded(quantity, system) for quantity in ruling.evidence],
    }


def _variance(accepted: Accepted) -> dict[str, Any]:
    variance = accepted.variance
    return {
        "rule": variance.rule,
        "element": variance.element or None,
        "because": variance.because,
        "accepted by": variance.accepted_by,
        "until": variance.until or None,
        "state": accepted.state,
        "place": _place(variance.place),
        "covers": [_covered(ruling) for ruling in accepted.rulings],
    }


def _covered(ruling: Ruling) -> dict[str, Any]:
    return {"element": ruling.element, "grade": ruling.grade, "message": ruling.message}


def _place(span: Span) -> dict[str, Any]:
    return {"file": span.file, "line": span.line, "column": span.column}


def unfolded(quantity: Quantity | Absent, system: System, told: set[tuple[str, str]] | None = None) -> dict[str, Any]:
    """A quantity with its inputs, citations and notes, as plain data.

    Where `told` holds what is unfolded already, by element and name, that is not unfolded again but marked `above`.
    """
    if isinstance(quantity, Absent):
        return {
            "name": quantity.name,
            "element": quantity.element,
            "value": None,
            "missing": [{"element": missing.element, "setting": missing.setting} for missing in quantity.missing],
            "reason": quantity.reason,
        }
    value, key = quantity.value, (quantity.element, quantity.name)
    above = told is not None and key in told and bool(quantity.inputs)
    if told is not None:
        told.add(key)
    return {
        "name": quantity.name,
        "element": quantity.element,
        "value": value if isinstance(value, str | float | int) else shown(value, quantity.dimension, system),
        "shown": quantity.shown(system),
        "low": quantity.low,
        "high": quantity.high,
        "bounds": quantity.spread or None,
        "dimension": quantity.dimension,
        "how": quantity.how,
        "words": quantity.words,
        "place": _place(quantity.place),
        "citations": [str(citation) for citation in quantity.citations],
        "notes": list(quantity.notes),
        "inputs": [] if above else [unfolded(part, system, told) for part in quantity.inputs],
        **({"above": True} if above else {}),
    }

"""A review as a plan-review letter: lines of text whose parts carry a role, for plain paper and for a terminal."""

from __future__ import annotations

import re
from itertools import groupby
from typing import Literal, NamedTuple

from speclint.outputs.wrapped import wrapped
from speclint.review.judge import listed
from speclint.ruling import Accepted, Comment, Question, Review, Ruling, comments
from speclint.span import Span, path_beside

Role = Literal["plain", "title", "hold", "revise", "note", "number", "element", "label", "quiet", "good"]


class Part(NamedTuple):
    """A piece of a line and the role it plays."""

    text: str
    role: Role = "plain"


Line = tuple[Part, ...]

HEADINGS: dict[str, str] = {
    "hold": "HOLD: settle before release",
    "revise": "REVISE: should be improved",
    "note": "NOTE: worth knowing",
}
STATES = {
    "in force": "in force",
    "expired": "EXPIRED",
    "not needed": "not needed: nothing trips it",
    "not allowed": "NOT ACCEPTED: this rule allows no variance",
}
DEFERRED = (
    "Where a comment touches structure, guards, stairs, work at height, chemicals, electricity or fire, its line Care "
    "says whose licensed practice decides; speclint approves nothing of the kind."
)
INDENT = 5
MOST_BASES = 3
# What a terminal would obey rather than show: control characters, and marks that turn the direction of text.
_OBEYED = re.compile(r"[\x00-\x1f\x7f-\x9f\u200e\u200f\u2028-\u202e\u2066-\u2069]")


class Frame(NamedTuple):
    """What a letter needs to know besides the review: its width, the date, how much to tell, and the plan it is of.

    Without a plan every place is told by its line alone.
    """

    width: int
    today: str
    brief: bool = False
    plan: str = ""


def letter(review: Review, frame: Frame) -> list[Line]:
    """The lines of the letter."""
    lines: list[Line] = []
    frame = frame._replace(plan=review.plan)
    lines += _head(review, frame)
    lines += _mistakes(review, frame)
    for grade, same in groupby(comments(review.rulings), key=lambda comment: comment.rulings[0].grade):
        lines += [(), (Part(HEADINGS[grade], grade),)]
        for comment in same:
            lines += [(), *comment_lines(comment, frame)]
    lines += _questions(review.questions, frame)
    lines += _variances(review.variances, frame)
    if not frame.brief:
        lines += _assumed(review, frame)
        lines += _cautions(review, frame)
    return lines


def text_of(lines: list[Line]) -> str:
    """The lines as plain text."""
    return "\n".join([visible("".join([part.text for part in line]).rstrip()) for line in lines]) + "\n"


def visible(text: str) -> str:
    """A text of one line with control characters written out, so that no plan can steer the reader's terminal."""
    return text if text.isprintable() else _OBEYED.sub(lambda found: _written_out(found[0]), text)


def _written_out(character: str) -> str:
    return f"\\x{ord(character):02x}" if ord(character) < 256 else f"\\u{ord(character):04x}"


def _head(review: Review, frame: Frame) -> list[Line]:
    alternate = f", alternate “{review.alternate}”" if review.alternate else ""
    counts = {grade: len({r.rule for r in review.rulings if r.grade == grade}) for grade in HEADINGS}
    accepted = f"{review.accepted_holds} hold{'s' if review.accepted_holds != 1 else ''} accepted by variance"
    told_counts = (
        (counts["hold"], f"{counts['hold']} to settle before release"),
        (counts["revise"], f"{counts['revise']} to improve"),
        (counts["note"], f"{counts['note']} worth knowing"),
        (len(review.questions), review.open_questions),
        (review.accepted_holds, accepted),
    )
    summary = ", ".join(words for count, words in told_counts if count)
    verdict: Role = "hold" if counts["hold"] else "revise" if counts["revise"] or counts["note"] else "good"
    lines: list[Line] = [
        (Part("PLAN REVIEW", "title"), Part(f"  {review.plan}{alternate}", "title")),
        (Part(f"{frame.today}, {review.rules_used} rules", "quiet"),),
    ]
    if review.facts_line:
        lines += [(Part(piece, "quiet"),) for piece in wrapped(review.facts_line, frame.width)]
    empty = (
        "No comments: every rule that applies is met." if not review.mistakes else "No comments on what could be read."
    )
    told = f"Comments: {summary}." if summary else empty
    return [*lines, (), *((Part(piece, verdict),) for piece in wrapped(told, frame.width))]


def _mistakes(review: Review, frame: Frame) -> list[Line]:
    if not review.mistakes:
        return []
    count = len(review.mistakes)
    head = f"CANNOT BE READ: {count} {'place' if count == 1 else 'places'}; the rest was reviewed"
    lines: list[Line] = [(), (Part(head, "hold"),)]
    for mistake in review.mistakes:
        place = f"{path_beside(review.plan, mistake.file)}:{mistake.line}:{mistake.column}"
        lines += [(Part("  "), Part(place, "element"), Part(f"  {mistake.message}"))]
        if mistake.help:
            lines += _wrapped(mistake.help, frame, 4, "quiet")
    return lines


def place_words(place: Span, plan: str) -> str:
    """A line of a plan, with the file where it is that of one that the plan uses."""
    other = plan and place.file not in ("", plan)
    return f"line {place.line} of {path_beside(plan, place.file)}" if other else f"line {place.line}"


def comment_lines(comment: Comment, frame: Frame) -> list[Line]:
    """A comment with what each element is told, why, the cure, the basis and the care."""
    rulings = list(comment.rulings)
    first = rulings[0]
    lines: list[Line] = [
        (
            Part(f"{comment.number:>3}. ", "number"),
            Part(first.title or first.rule, "title"),
            Part(f"  [{first.rule}]", "quiet"),
        )
    ]
    for ruling in rulings:
        place = place_words(ruling.place, frame.plan) if ruling.place.line else ""
        lines += _wrapped(ruling.message, frame, INDENT, "plain", bullet="- ", tail=place)
    if not frame.brief:
        lines += _labelled("Why", [first.because], frame)
    lines += _labelled("Cure", _cures(rulings), frame)
    if not frame.brief:
        lines += _labelled(
            "Basis", list(dict.fromkeys(line for r in rulings for line in r.basis))[:MOST_BASES], frame, "quiet"
        )
        lines += _labelled("Care", list(dict.fromkeys(r.defer for r in rulings if r.defer)), frame, "quiet")
    return lines


def _cures(rulings: list[Ruling]) -> list[str]:
    """The cures of a comment, cheapest first; each once, and not more than six."""
    found = list(dict.fromkeys(cure for ruling in rulings for cure in ruling.cures))
    first = [cure for cure in found if any(r.cures and r.cures[0] == cure for r in rulings)]
    others = [f"or {cure}" for cure in found if cure not in first]
    shown = [*first[:4], *others[:2]]
    return [*shown, f"and {len(first) - 4} more alike"] if len(first) > 4 else shown


def _labelled(label: str, texts: list[str], frame: Frame, role: Role = "plain") -> list[Line]:
    lines: list[Line] = []
    for index, text in enumerate(texts):
        head = f"{label:<6}" if index == 0 else " " * 6
        for row, piece in enumerate(wrapped(text, frame.width - INDENT - 6)):
            start = Part(" " * INDENT + (head if row == 0 else " " * 6), "label")
            lines.append((start, Part(piece, role)))
    return lines


def _questions(questions: tuple[Question, ...], frame: Frame) -> list[Line]:
    if not questions:
        return []
    lines: list[Line] = [(), (Part("OPEN QUESTIONS: the plan does not say", "revise"),)]
    for question in questions:
        lines += _wrapped(question.text, frame, 2, "plain", bullet="? ", tail=question.stake)
    return lines


def _variances(variances: tuple[Accepted, ...], frame: Frame) -> list[Line]:
    if not variances:
        return []
    lines: list[Line] = [(), (Part("VARIANCES", "title"),)]
    for accepted in variances:
        variance = accepted.variance
        where = variance.element or "the whole plan"
        state = state_words(accepted)
        told = f"{variance.rule} on {where}: {variance.because} (accepted by {variance.accepted_by or 'nobody named'}"
        told += f", until {variance.until or 'no date'}; {state})"
        lines += _wrapped(told, frame, 2, "plain", bullet="= ")
    return lines


def state_words(accepted: Accepted) -> str:
    """Whether a variance holds; where it is not complete, what it wants."""
    if accepted.state != "not complete":
        return STATES[accepted.state]
    variance = accepted.variance
    wants = (("a reason", variance.because), ("a name", variance.accepted_by), ("a day", variance.until))
    left_out = [word for word, stated in wants if not stated]
    return f"NOT ACCEPTED: it wants {listed(left_out)}"


def _assumed(review: Review, frame: Frame) -> list[Line]:
    if not review.assumed:
        return []
    lines: list[Line] = [(), (Part("ASSUMED", "title"),)]
    by_value: dict[tuple[str, str, str], list[str]] = {}
    for assumed in review.assumed:
        by_value.setdefault((assumed.setting, assumed.value, assumed.reason), []).append(assumed.element)
    for (setting, value, reason), elements in by_value.items():
        told = f"{', '.join(elements)}: {setting} {value}" + (f" ({reason})" if reason else "")
        lines += _wrapped(told, frame, 2, "quiet", bullet="~ ")
    return lines


def _cautions(review: Review, frame: Frame) -> list[Line]:
    lines: list[Line] = [(), (Part("CAUTIONS", "title"),)]
    deferred = dict.fromkeys(ruling.defer for ruling in review.rulings if ruling.defer)
    for caution in review.cautions:
        if caution not in deferred:
            lines += _wrapped(caution, frame, 2, "quiet", bullet="! ")
    if deferred:
        lines += _wrapped(DEFERRED, frame, 2, "quiet", bullet="! ")
    return lines


def _wrapped(text: str, frame: Frame, indent: int, role: Role, bullet: str = "", tail: str = "") -> list[Line]:
    room = frame.width - indent - len(bullet)
    pieces = wrapped(text, room)
    after = Part(" " * (indent + len(bullet)), "label")
    lines: list[Line] = [(Part(" " * indent + bullet, "label"), Part(pieces[0], role))]
    lines += [(after, Part(piece, role)) for piece in pieces[1:]]
    if tail:
        if len(pieces[-1]) + len(tail) + 3 <= room:
            lines[-1] = (*lines[-1], Part(f"  ({tail})", "quiet"))
        else:
            lines.append((Part(" " * (indent + len(bullet))), Part(f"({tail})", "quiet")))
    return lines

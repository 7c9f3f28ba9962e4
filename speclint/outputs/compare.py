"""A comparison of revisions as lines of text: what got worse, what got better, and what changed besides."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from speclint.language.atoms import Mistake
from speclint.model.home import Variance
from speclint.outputs.letter import Line, Part, Role, place_words, state_words
from speclint.outputs.wrapped import wrapped
from speclint.review.renames import Elements
from speclint.review.revisions import AlternateTurn, Asked, Comparison, VarianceTurn
from speclint.review.shifts import NoteChange
from speclint.review.turns import Turn, Way
from speclint.rulebook.rule import GRADES
from speclint.ruling import Accepted
from speclint.span import path_beside

LABEL = 22
MOST_NOTES = 40
UNSURE = "amounts of rain on walls are unsure by a factor of two to three; shares and ranks are surer"
OTHER_LOT = "the site was changed, so that measures of the two stand for different weather"
ROLES: dict[str, Role] = {"worse": "hold", "better": "good", "": "plain"}
HEADINGS: dict[Way, str] = {"worse": "WORSE", "better": "BETTER", "": "OTHERWISE"}
WAYS: tuple[Way, ...] = ("worse", "better")


@dataclass(frozen=True, slots=True)
class Compared:
    """One plan of a comparison.

    Attributes:
        name: What it is called.
        state: Whether both sides have it, or only one.
        comparison: What changed; nothing where the plan was removed.
        moved: What the old side calls it, where that is something else.
    """

    name: str
    state: str
    comparison: Comparison | None
    moved: str = ""


def worse_alone(found: Comparison) -> Comparison:
    """A comparison without what got better or is neither."""
    return replace(
        found,
        turns=tuple(turn for turn in found.turns if turn.way == "worse"),
        shifts=tuple(shift for shift in found.shifts if not shift.better),
        answered=(),
        mended=(),
        variances=(),
        notes=(),
        elements=replace(found.elements, added=(), removed=(), renamed={}),
        alternates=tuple(
            replace(one, turns=turns, notes=(), added=(), removed=())
            for one in found.alternates
            if (turns := tuple(turn for turn in one.turns if turn.way == "worse"))
        ),
    )


def plan_lines(compared: Compared, width: int, what: str = "changed") -> list[Line]:
    """What changed in one plan; a single line where nothing did.

    Args:
        compared: The plan.
        width: Most characters in a line.
        what: What the lines tell of, said where there is nothing of it.
    """
    name, found = compared.name, compared.comparison
    if found is None:
        return [(Part(name, "title"), Part(": the plan was removed", "revise"))]
    moved = f": moved from {compared.moved}" if compared.moved else ""
    if found.nothing:
        told = f"{'; ' if moved else ': '}nothing {what}; {standing(found)}"
        return [(Part(name, "title"), Part(moved), Part(told, "quiet"))]
    added = ": a new plan" if compared.state == "added" else moved
    lines: list[Line] = [(Part(name, "title"), Part(added, "plain")), (Part(f"  {standing(found)}", "quiet"),)]
    for way, heading in HEADINGS.items():
        lines += _turns(heading, [turn for turn in found.turns if turn.way == way], found.review.plan, width)
    lines += _mistakes(found, width)
    lines += _variances(found.variances, width)
    lines += _questions(found, width)
    lines += _shifts(found, width)
    lines += _plan(found.elements, found.notes, width)
    lines += _alternates(found, width)
    return lines


def standing(found: Comparison) -> str:
    """What the review says of the new plan, in one line."""
    rulings = found.review.rulings
    counts = [
        (len({one.rule for one in rulings if one.grade == grade}), words)
        for grade, words in zip(GRADES, ("to settle before release", "to improve", "worth knowing"), strict=True)
    ]
    told = ", ".join(
        [*(f"{count} {words}" for count, words in counts if count), *filter(None, [found.review.open_questions])]
    )
    unread = f"; {_count('place', len(found.review.mistakes))} cannot be read" if found.review.mistakes else ""
    return f"as it stands now: {told or 'no comments'}{unread}"


def summary(plans: Sequence[Compared], unread: int) -> Line:
    """One line for all plans: how many got worse, better, or neither."""
    found = [one.comparison for one in plans if one.comparison is not None]
    worse, better = ([len(one.got(way)) for one in found if one.got(way)] for way in WAYS)
    neither = sum(not (one.nothing or one.got("worse") or one.got("better")) for one in found)
    unchanged = sum(one.nothing for one in found)
    added, removed = (sum(one.state == state for one in plans) for state in ("added", "removed"))
    moved = sum(bool(one.moved) for one in plans)
    not_whole = sum(bool(one.review.mistakes) for one in found)
    counts = (
        (f"{_count('plan', len(plans) + unread)} compared", 1),
        (f"{len(worse)} worse in {_count('finding', sum(worse))}", len(worse)),
        (f"{len(better)} better in {_count('finding', sum(better))}", len(better)),
        (f"{neither} changed otherwise", neither),
        (f"{unchanged} unchanged", unchanged),
        (f"{added} new", added),
        (f"{removed} removed", removed),
        (f"{moved} moved", moved),
        (f"{not_whole} not read whole", not_whole),
        (f"{unread} cannot be read", unread),
    )
    role: Role = "hold" if worse or unread or not_whole else "good"
    return (Part("; ".join(words for words, count in counts if count) + ".", role),)


def turn_label(turn: Turn) -> str:
    """What became of a finding, in two or three words with its grade."""
    before, after = turn.before, turn.after
    if turn.word in ("graver", "milder") and before and after:
        return f"{before.grade}, now {after.grade}"
    return turn.told.grade if turn.word == "otherwise" else f"{turn.word}, {turn.told.grade}"


def turn_words(turn: Turn) -> str:
    """A finding with what it was before, why it changed, and who accepts it."""
    before, after = turn.before, turn.after
    told = turn.told.message
    if turn.word == "cured":
        told = f"no longer: {told}"
    elif turn.word == "told anew" and before is not None:
        lacks = {"worse": ", and it got worse", "better": ", and it got better"}.get(turn.way, "")
        told = f"{told}; told before by {before.rule}{lacks}"
    elif before is not None and after is not None and (moved := moved_words(turn)):
        told = f"{told} ({moved})"
    more = turn.why
    if turn.variance is not None and turn.word != "back":
        more = accepted_words(turn.variance) if not more else f"{more}; {accepted_words(turn.variance)}"
    return f"{told}; {more}" if more else told


def moved_words(turn: Turn) -> str:
    """What was stated and needed before, where it differs; nothing where the rule compares nothing."""
    before, after = turn.before, turn.after
    if before is None or after is None:
        return ""
    found = []
    if before.stated != after.stated:
        found.append(f"now {after.stated}, was {before.stated}")
    if before.needed != after.needed:
        found.append(f"{before.needed} was wanted")
    return ", ".join(found)


def accepted_words(variance: Variance) -> str:
    """Who accepted a variance, until when and why."""
    until = f" until {variance.until}" if variance.until else ""
    return f"accepted by {variance.accepted_by or 'nobody named'}{until}: {variance.because or 'no reason'}"


def variance_words(turn: VarianceTurn) -> str:
    """What became of a variance."""
    where = turn.element or "the whole plan"
    if turn.before is None and turn.after is not None:
        told = f"new: {accepted_words(turn.after.variance)}; {state_words(turn.after)}"
    elif turn.after is None and turn.before is not None:
        told = f"taken out; was {accepted_words(turn.before.variance)}"
    else:
        told = _reworded(turn.before, turn.after)
    return f"{turn.rule} on {where}: {told}"


def _reworded(before: Accepted | None, after: Accepted | None) -> str:
    if before is None or after is None:
        return ""
    found = []
    if before.state != after.state:
        found.append(f"{state_words(before)}, now {state_words(after)}")
    if before.variance.until != after.variance.until:
        found.append(f"until {before.variance.until or 'no day'}, now until {after.variance.until or 'no day'}")
    was, now = before.variance, after.variance
    if (was.because, was.accepted_by) != (now.because, now.accepted_by):
        found.append(f"now {accepted_words(now)}")
    return "; ".join(found)


def asked_words(asked: Asked, opened: bool) -> str:
    """An open question that is new, or one that is open no more."""
    if opened:
        return f"{asked.setting} of {asked.element}" + (f" (was {asked.answer})" if asked.answer else "")
    return f"{asked.setting} of {asked.element}: {asked.answer or 'asked no more'}"


def grouped_notes(notes: Iterable[NoteChange]) -> list[tuple[str, NoteChange]]:
    """Changed settings, those alike of several elements as one: the elements, and one of the changes."""
    groups: dict[tuple[str, ...], list[NoteChange]] = {}
    for note in notes:
        groups.setdefault((note.element.split()[0], note.setting, note.before, note.after), []).append(note)
    found = []
    for (kind, *_), same in groups.items():
        names = [same[0].element, *(note.element.removeprefix(f"{kind} ") for note in same[1:])]
        found.append((", ".join(names), same[0]))
    return found


def renamed_words(elements: Elements) -> list[str]:
    """The elements that go by another name; those without a name are called by their line, which says nothing."""
    return [f"{old}, now {new}" for old, new in elements.renamed.items() if " at line " not in f"{old} {new}"]


def _count(word: str, number: int) -> str:
    return f"{number} {word}{'' if number == 1 else 's'}"


def _turns(heading: str, turns: list[Turn], plan: str, width: int) -> list[Line]:
    if not turns:
        return []
    lines: list[Line] = [(), (Part(heading, ROLES[turns[0].way]),)]
    for turn in turns:
        role: Role = turn.told.grade if turn.way == "worse" and not turn.covered else ROLES[turn.way]
        place = turn.after.place if turn.after is not None else None
        tail = f"[{turn.told.rule}]{f'  ({place_words(place, plan)})' if place and place.line else ''}"
        lines += _item(turn_label(turn), role, turn_words(turn), tail, width)
    return lines


def _mistakes(found: Comparison, width: int) -> list[Line]:
    def lines(heading: str, role: Role, mistakes: tuple[Mistake, ...]) -> list[Line]:
        if not mistakes:
            return []
        told = [_item("", role, mistake_words(one, found.review.plan), "", width) for one in mistakes]
        return [(), (Part(heading, role),), *(line for item in told for line in item)]

    return [
        *lines("CANNOT BE READ, AND WAS NOT SO BEFORE", "hold", found.mistakes),
        *lines("CAN BE READ NOW", "good", found.mended),
    ]


def mistake_words(mistake: Mistake, plan: str) -> str:
    """A place that cannot be read, with why."""
    return f"{path_beside(plan, mistake.file)}:{mistake.line}:{mistake.column}  {mistake.message}"


def _variances(variances: tuple[VarianceTurn, ...], width: int) -> list[Line]:
    if not variances:
        return []
    told = [line for turn in variances for line in _item("", "plain", variance_words(turn), "", width)]
    return [(), (Part("VARIANCES", "title"),), *told]


def _questions(found: Comparison, width: int) -> list[Line]:
    lines: list[Line] = []
    for label, role, asked in (("opened", "revise", found.opened), ("answered", "good", found.answered)):
        for one in asked:
            lines += _item(label, role, asked_words(one, label == "opened"), "", width)  # type: ignore[arg-type]
    return [(), (Part("QUESTIONS", "title"),), *lines] if lines else []


def _shifts(found: Comparison, width: int) -> list[Line]:
    if not found.shifts:
        return []
    lines: list[Line] = [(), (Part("WEATHER AND TIME", "title"), Part("  measures that got better or worse", "quiet"))]
    size = max(len(shift.element) for shift in found.shifts) + 2
    last = ""
    for shift in found.shifts:
        name = "" if shift.element == last else shift.element
        last = shift.element
        role: Role = "good" if shift.better else "hold"
        lines.append(
            (
                Part(f"  {name:<{size}}", "element"),
                Part(f"{shift.measure:<20}", "label"),
                Part(f"{shift.before} to {shift.after}  "),
                Part("better" if shift.better else "worse", role),
            )
        )
    for caution in cautions(found):
        lines += _item("", "quiet", caution, "", width)
    return lines


def cautions(found: Comparison) -> list[str]:
    """What is to be known of the measures that changed."""
    told = [UNSURE] if any(shift.measure == "rain on wall" for shift in found.shifts) else []
    return [*told, OTHER_LOT] if any(note.element == "site" for note in found.notes) else told


def _plan(elements: Elements, notes: tuple[NoteChange, ...], width: int) -> list[Line]:
    lines: list[Line] = []
    for label, told in (
        ("added", list(elements.added)),
        ("removed", list(elements.removed)),
        ("renamed", renamed_words(elements)),
    ):
        if told:
            lines += _item(label, "plain", "; ".join(told) if label == "renamed" else ", ".join(told), "", width)
    grouped = grouped_notes(notes)
    for names, note in grouped[:MOST_NOTES]:
        lines += _item("", "plain", f"{names}: {note_words(note)}", "", width)
    if len(grouped) > MOST_NOTES:
        lines += _item("", "quiet", f"and {len(grouped) - MOST_NOTES} more; --json tells all", "", width)
    return [(), (Part("IN THE PLAN", "title"),), *lines] if lines else []


def _alternates(found: Comparison, width: int) -> list[Line]:
    """The alternates that changed, with what changed in each of them alone."""
    lines: list[Line] = []
    for one in found.alternates:
        if one.state != "both":
            lines += _item(one.state, "plain", one.name, "", width)
            continue
        lines += _item("changed", "plain", one.name, "", width)
        for turn in one.turns:
            lines += _item(turn_label(turn), ROLES[turn.way], turn_words(turn), f"[{turn.told.rule}]", width)
        lines += [line for words in alternate_words(one) for line in _item("", "plain", words, "", width)]
    return (
        [(), (Part("ALTERNATES", "title"), Part("  beyond what changed in the plan as drawn", "quiet")), *lines]
        if lines
        else []
    )


def alternate_words(one: AlternateTurn) -> list[str]:
    """The elements and settings that changed in an alternate alone."""
    told = [f"{label} is new" for label in one.added] + [f"{label} is gone" for label in one.removed]
    return told + [f"{names}: {note_words(note)}" for names, note in grouped_notes(one.notes)]


def note_words(note: NoteChange) -> str:
    """A setting with its value before and after; parts of the kind that the setting names go by their names alone."""
    before, after = (value.removeprefix(f"{note.setting} ") for value in (note.before, note.after))
    return f"{note.setting} {before} to {after}"


def _item(label: str, role: Role, text: str, tail: str, width: int) -> list[Line]:
    """A label and a text wrapped beside it, with the name of a rule behind."""
    indent = LABEL + 2 if label else 2
    rows = wrapped(text, width - indent)
    lead = (Part("  "), Part(f"{label:<{LABEL}}", role)) if label else (Part("  "),)
    lines: list[Line] = [(*lead, Part(rows[0], "plain" if label else role))]
    lines += [(Part(" " * indent), Part(row, "plain" if label else role)) for row in rows[1:]]
    if tail and indent + len(rows[-1]) + len(tail) + 2 <= width:
        lines[-1] = (*lines[-1], Part(f"  {tail}", "quiet"))
    elif tail:
        lines.append((Part(" " * indent), Part(tail, "quiet")))
    return lines

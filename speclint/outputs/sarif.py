"""Reviews as one log in the Static Analysis Results Interchange Format (SARIF), version 2.1.0 of OASIS.

A finding is a result; so are a place that cannot be read, a question of the plan (kind `open`: there is too little to
judge by), and a finding that a variance accepts (with its suppression). What is said of one plan is plain data without
the index of its rules, so that it can be kept; `log` joins plans and numbers the rules.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterable, Mapping, Sequence
from typing import TYPE_CHECKING, Any, NamedTuple

from speclint.language.edit import Rows
from speclint.outputs.json_text import as_json_line
from speclint.outputs.uris import uri_beside

if TYPE_CHECKING:
    from speclint.ruling import Accepted, Review, Ruling
    from speclint.span import Span

SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
LEVELS = {"hold": "error", "revise": "warning", "note": "note"}
PRINT = "ruleOnElement/v1"
_LINK = re.compile(r"\[(?=[^\[\]]*\]\()")
Found = dict[str, Any]


class Change(NamedTuple):
    """A suggested change of the plan: its title, and stretches of the text with what takes their place."""

    title: str
    edits: tuple[tuple[int, int, str], ...]


def results(review: Review, uri: str, text: str, changes: Mapping[str, Change]) -> list[Found]:
    """What a review says, as results.

    Args:
        review: The review.
        uri: The place of the plan.
        text: The text of the plan, in which changes are counted.
        changes: A suggested change by the mark of the finding that it clears.
    """
    desk, rows = _Desk(review, uri), Rows(text)
    found = [desk.mistake(mistake) for mistake in review.mistakes]
    for ruling in review.rulings:
        result = desk.finding(ruling)
        if ruling.mark in changes:
            result["fixes"] = [_fix(changes[ruling.mark], uri, rows)]
        found.append(result)
    found += [desk.question(question) for question in review.questions]
    for accepted in review.variances:
        if accepted.state == "in force":
            found += [desk.accepted(ruling, accepted) for ruling in accepted.rulings]
    return found


class _Desk:
    """Writes the results of one review."""

    def __init__(self, review: Review, uri: str) -> None:
        self.review, self.uri = review, uri
        self.marks: dict[str, int] = {}

    def finding(self, ruling: Ruling) -> Found:
        """A finding, with its cure, care and basis."""
        cures = "; or ".join(ruling.cures)
        parts = [ruling.message, f"Cure: {cures}" if cures else "", f"Care: {ruling.defer}" if ruling.defer else ""]
        about = {"grade": ruling.grade, "stated": ruling.stated, "needed": ruling.needed, "basis": list(ruling.basis)}
        return {
            "ruleId": ruling.rule,
            "kind": "fail",
            "level": LEVELS[ruling.grade],
            "message": {"text": plain("\n".join(part for part in parts if part))},
            "locations": [self._location(ruling.place, ruling.element)],
            "partialFingerprints": {PRINT: self._print(ruling.mark)},
            "properties": about | ({"care": ruling.defer} if ruling.defer else {}),
        }

    def accepted(self, ruling: Ruling, accepted: Accepted) -> Found:
        """A finding that a variance accepts, with who accepted it, why, and until when."""
        variance = accepted.variance
        by = f"accepted by {variance.accepted_by or 'nobody named'}, until {variance.until or 'no date'}"
        suppression = {"kind": "external", "status": "accepted", "justification": f"{variance.because} ({by})"}
        where = self._location(variance.place)
        where["message"] = {"text": "the variance that accepts it"}
        return self.finding(ruling) | {"suppressions": [suppression], "relatedLocations": [where]}

    def mistake(self, mistake: Any) -> Found:
        """A place that cannot be read."""
        from speclint.span import Span

        told = f"{mistake.message}\n{mistake.help}" if mistake.help else mistake.message
        place = Span(mistake.file, mistake.line, mistake.column, mistake.length)
        return {
            "ruleId": "plan-cannot-be-read",
            "kind": "fail",
            "level": "error",
            "message": {"text": plain(told)},
            "locations": [self._location(place)],
            "partialFingerprints": {PRINT: self._print(f"plan-cannot-be-read {mistake.file} {mistake.message}")},
        }

    def question(self, question: Any) -> Found:
        """A fact that the plan does not state; the level of what is open is `none`, as the standard has it."""
        return {
            "ruleId": "plan-does-not-say",
            "kind": "open",
            "level": "none",
            "message": {"text": plain(f"The plan does not say: {question.text}")},
            "locations": [self._location(question.place, *question.elements)],
            "partialFingerprints": {PRINT: self._print(f"plan-does-not-say {question.kind} {question.setting}")},
            "properties": {"setting": question.setting, "rules": list(question.rules), "grade": question.grade},
        }

    def _location(self, place: Span, *elements: str) -> Found:
        uri = self.uri if place.file in ("", self.review.plan) else uri_beside(self.uri, place.file)
        physical: Found = {"artifactLocation": {"uri": uri}}
        if place.line > 0:
            start = max(1, place.column)
            physical["region"] = {
                "startLine": place.line,
                "startColumn": start,
                "endLine": place.line,
                "endColumn": start + max(1, place.length),
            }
        location: Found = {"physicalLocation": physical}
        if elements:
            location["logicalLocations"] = [_element(label) for label in elements]
        return location

    def _print(self, mark: str) -> str:
        """A mark that stays as lines move; a second thing of one mark is told apart by its count."""
        nth = self.marks[mark] = self.marks.get(mark, 0) + 1
        told = f"{mark}\n{self.uri}" + (f"\n{nth}" if nth > 1 else "")
        return hashlib.blake2b(told.encode("utf-8", "surrogatepass"), digest_size=16).hexdigest()


def _element(label: str) -> Found:
    kind, _, name = label.partition(" ")
    return {"fullyQualifiedName": label, "name": name or kind, "kind": kind}


def _fix(change: Change, uri: str, rows: Rows) -> Found:
    replacements = [
        {"deletedRegion": _region(rows, start, end), "insertedContent": {"text": put}}
        for start, end, put in change.edits
    ]
    return {
        "description": {"text": plain(change.title)},
        "artifactChanges": [{"artifactLocation": {"uri": uri}, "replacements": replacements}],
    }


def _region(rows: Rows, start: int, end: int) -> Found:
    (line, column), (end_line, end_column) = rows.place(start), rows.place(end)
    return {"startLine": line, "startColumn": column, "endLine": end_line, "endColumn": end_column}


def plain(text: str) -> str:
    """A text of a plan as a message: braces doubled and brackets of a link escaped, as the standard asks."""
    return _LINK.sub(r"\\[", text.replace("{", "{{").replace("}", "}}"))


def log(
    plans: Sequence[tuple[str, list[Found]]], rules: Mapping[str, Found], version: str, troubles: Iterable[str]
) -> str:
    """The log of a run.

    Args:
        plans: The place of each plan with its results.
        rules: What is known of each rule, by name, in the order of the rulebook.
        version: The version of the program.
        troubles: What kept plans from being read at all.
    """
    named = {result["ruleId"] for _, found in plans for result in found}
    used = {name: at for at, name in enumerate(name for name in rules if name in named)}
    told = [
        as_json_line({"ruleId": result["ruleId"], "ruleIndex": used[result["ruleId"]], **result})
        for _, found in plans
        for result in found
    ]
    driver = {"name": "speclint", "version": version, "semanticVersion": version, "language": "en"}
    notices = [
        {"descriptor": {"id": "plan-not-opened"}, "level": "error", "message": {"text": plain(one)}} for one in troubles
    ]
    invocation: Found = {"executionSuccessful": not notices}
    if notices:
        invocation["toolExecutionNotifications"] = notices
        driver["notifications"] = [  # type: ignore[assignment]
            {"id": "plan-not-opened", "shortDescription": {"text": "A plan that cannot be opened"}}
        ]
    artifacts = [{"location": {"uri": uri}, "roles": ["analysisTarget"], "encoding": "utf-8"} for uri, _ in plans]
    return "\n".join(
        (
            f'{{"$schema":{as_json_line(SCHEMA)},"version":"2.1.0","runs":[{{',
            f'"tool":{{"driver":{as_json_line(driver)[:-1]},"rules":[',
            ",\n".join(as_json_line(rules[name]) for name in used),
            "]}},",
            f'"invocations":[{as_json_line(invocation)}],',
            '"defaultEncoding":"utf-8","columnKind":"unicodeCodePoints","newlineSequences":["\\r\\n","\\n","\\r"],',
            f'"artifacts":[{",".join(as_json_line(one) for one in _once(artifacts))}],',
            '"results":[',
            ",\n".join(told),
            "]}]}\n",
        )
    )


def _once(artifacts: Iterable[Found]) -> list[Found]:
    return list({one["location"]["uri"]: one for one in artifacts}.values())

"""Reviews as the XML of test results that build servers commonly read: a suite a plan, a case a finding.

A finding fails where its grade decides the exit status; a milder one passes and is told in the output of its case, and
one that a variance accepts is skipped. A place that cannot be read is an error, and a plan without a comment is one
case that passes.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING, NamedTuple

from speclint.span import path_beside

if TYPE_CHECKING:
    from speclint.ruling import Accepted, Review, Ruling

# What XML 1.0 cannot hold at all, and marks that turn the direction of text.
_BARRED = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u200e\u200f\u2028-\u202e\u2066-\u2069\ud800-\udfff\ufffe\uffff]"
)
_MARKUP = {"&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "\n": "&#10;", "\r": "&#13;", "\t": "&#9;"}


class Suite(NamedTuple):
    """The suite of one plan, and how many cases of each kind it holds."""

    text: str
    tests: int
    failures: int
    errors: int
    skipped: int


class _Case(NamedTuple):
    name: str
    outcome: str  # empty where it passes
    head: str
    told: str
    line: int
    file: str


def suite(review: Review, grave: Iterable[str]) -> Suite:
    """The suite of a review.

    Args:
        review: The review.
        grave: The grades that fail.
    """
    failing = set(grave)
    cases = [
        _Case(
            f"plan-cannot-be-read at {path_beside(review.plan, one.file)}:{one.line}:{one.column}",
            "error",
            one.message,
            f"{one.message}\n{one.help}".rstrip(),
            one.line,
            path_beside(review.plan, one.file),
        )
        for one in review.mistakes
    ]
    cases += [_finding(ruling, "failure" if ruling.grade in failing else "", review.plan) for ruling in review.rulings]
    for accepted in review.variances:
        if accepted.state == "in force":
            cases += [_accepted(ruling, accepted, review.plan) for ruling in accepted.rulings]
    return _suite(review.plan, cases or [_Case("no comments", "", "", "", 0, review.plan)])


def unread_suite(plan: str, message: str) -> Suite:
    """The suite of a plan that could not be read at all."""
    return _suite(plan, [_Case("plan-cannot-be-read", "error", message, message, 0, plan)])


def whole(suites: Iterable[Suite]) -> str:
    """The document of a run."""
    found = list(suites)
    sums = {name: sum(getattr(one, name) for one in found) for name in ("tests", "failures", "errors", "skipped")}
    head = _tag("testsuites", {"name": "speclint", **sums})
    return "\n".join(('<?xml version="1.0" encoding="UTF-8"?>', head, *(one.text for one in found), "</testsuites>\n"))


def _finding(ruling: Ruling, outcome: str, plan: str) -> _Case:
    lines = [f"{ruling.grade}: {ruling.message}", ruling.because]
    lines += [f"Cure: {cure}" for cure in ruling.cures]
    lines += [f"Basis: {basis}" for basis in ruling.basis]
    lines += [f"Care: {ruling.defer}"] if ruling.defer else []
    told = "\n".join(line for line in lines if line)
    file = path_beside(plan, ruling.place.file)
    return _Case(ruling.mark, outcome, f"{ruling.grade}: {ruling.message}", told, ruling.place.line, file)


def _accepted(ruling: Ruling, accepted: Accepted, plan: str) -> _Case:
    variance = accepted.variance
    by = f"accepted by {variance.accepted_by or 'nobody named'}, until {variance.until or 'no date'}"
    head = f"{ruling.grade}: {ruling.message}; {by}: {variance.because}"
    return _Case(ruling.mark, "skipped", head, "", ruling.place.line, path_beside(plan, ruling.place.file))


def _suite(plan: str, cases: list[_Case]) -> Suite:
    counts = [sum(case.outcome == kind for case in cases) for kind in ("failure", "error", "skipped")]
    failures, errors, skipped = counts
    about = {"name": plan, "tests": len(cases), "failures": failures, "errors": errors, "skipped": skipped}
    rows = [_tag("testsuite", about), *(_case(case, plan) for case in cases), "</testsuite>"]
    return Suite("\n".join(rows), len(cases), *counts)


def _case(case: _Case, plan: str) -> str:
    about: dict[str, object] = {"classname": plan, "name": case.name, "file": case.file}
    head = _tag("testcase", about | ({"line": case.line} if case.line > 0 else {}))
    if case.outcome == "skipped":
        body = f"<skipped message={_quoted(case.head)}/>"
    elif case.outcome:
        kind = case.head.split(":")[0] if case.outcome == "failure" else "cannot be read"
        body = f"<{case.outcome} type={_quoted(kind)} message={_quoted(case.head)}>{_text(case.told)}</{case.outcome}>"
    else:
        body = f"<system-out>{_text(case.told)}</system-out>" if case.told else ""
    return f"{head}{body}</testcase>"


def _tag(name: str, about: Mapping[str, object]) -> str:
    return f"<{name} {' '.join(f'{key}={_quoted(str(value))}' for key, value in about.items())}>"


def _quoted(text: str) -> str:
    return f'"{"".join(_MARKUP.get(one, one) for one in _visible(text))}"'


def _text(text: str) -> str:
    return _visible(text).replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")


def _visible(text: str) -> str:
    return _BARRED.sub(lambda found: f"\\u{ord(found[0]):04x}", text)

"""A review as an editor shows it: mistakes, findings by grade, and questions as hints, file by file."""

from __future__ import annotations

from collections.abc import Callable

from lsprotocol import types as lsp

from speclint.editor.positions import Lines
from speclint.editor.underline import Underlines
from speclint.rulebook.rule import Grade
from speclint.ruling import Accepted, Review, Ruling
from speclint.span import Span

BY = "speclint"
MISTAKE, QUESTION = "mistake", "not stated"
NONE_AT_ALL = "the plan has no "
SEVERITY: dict[Grade, lsp.DiagnosticSeverity] = {
    "hold": lsp.DiagnosticSeverity.Error,
    "revise": lsp.DiagnosticSeverity.Warning,
    "note": lsp.DiagnosticSeverity.Information,
}


def diagnostics(review: Review, lines_of: Callable[[str], Lines]) -> dict[str, list[lsp.Diagnostic]]:
    """What a review tells, by file.

    Args:
        review: The review.
        lines_of: The lines of a file, by the name that spans call it.
    """
    found: dict[str, list[lsp.Diagnostic]] = {review.plan: []}
    known: dict[str, Underlines] = {}

    def tell(span: Span, severity: lsp.DiagnosticSeverity, code: str, message: str, element: str = "") -> None:
        file = span.file or review.plan
        if file not in known:
            known[file] = Underlines(lines_of(file))
        # a mistake knows its own stretch; what is found and asked begins with a word and is meant of the whole
        where = known[file].lines.of_span(span) if code == MISTAKE else known[file].of(span)
        about = {"element": element} if element else None
        found.setdefault(file, []).append(lsp.Diagnostic(where, message, severity, code, source=BY, data=about))

    for mistake in review.mistakes:
        span = Span(mistake.file, mistake.line, mistake.column, mistake.length)
        told = f"{mistake.message}\n{mistake.help}" if mistake.help else mistake.message
        tell(span, lsp.DiagnosticSeverity.Error, MISTAKE, told)
    for ruling in review.rulings:
        tell(ruling.place, SEVERITY[ruling.grade], ruling.rule, finding(ruling), ruling.element)
    for question in review.questions:
        told = question.text if question.text.startswith(NONE_AT_ALL) else f"the plan does not say: {question.text}"
        tell(question.place, lsp.DiagnosticSeverity.Hint, QUESTION, f"{told}\n{question.stake}")
    for accepted in review.variances:
        if accepted.state != "in force":
            where = accepted.variance.place
            tell(where, lsp.DiagnosticSeverity.Information, accepted.variance.rule, _variance(accepted))
    return found


def finding(ruling: Ruling) -> str:
    """What a finding tells, so that it makes sense alone."""
    parts = [f"{ruling.grade}: {ruling.message}", ruling.because, *(f"cure: {cure}" for cure in ruling.cures[:2])]
    if ruling.defer:
        parts.append(ruling.defer)
    return "\n".join(part for part in parts if part)


def _variance(accepted: Accepted) -> str:
    variance = accepted.variance
    if accepted.state == "expired":
        return f"the variance was accepted until {variance.until}; after that day the finding is back"
    if accepted.state == "not allowed":
        return f"“{variance.rule}” allows no variance; the finding stands"
    if accepted.state == "not complete":
        return "a variance wants a reason, who accepts it, and until when; the finding stands"
    return "nothing here needs this variance"

"""The words of the command line."""

from __future__ import annotations

import argparse
from importlib import import_module
from typing import Any, NoReturn

from speclint.commands.main import STATUS


class _Parser(argparse.ArgumentParser):
    """A parser whose help is set in columns by rich-argparse, loaded only when help is asked for."""

    def format_help(self) -> str:
        from rich_argparse import RawDescriptionRichHelpFormatter

        self.formatter_class = RawDescriptionRichHelpFormatter
        return super().format_help()

    def error(self, message: str) -> NoReturn:
        self.exit(3, f"speclint: {message}\nTry `{self.prog} --help`.\n")


def _run(module: str) -> Any:
    def run(stated: argparse.Namespace) -> int:
        status: int = import_module(f"speclint.commands.{module}").run(stated)
        return status

    return run


class _Unasked:
    """Stands in for the parser of a command that is not asked for, so that its words need not be made."""

    usage = ""

    def add_argument(self, *words: Any, **how: Any) -> None:
        """Make nothing of it."""

    def add_mutually_exclusive_group(self) -> _Unasked:
        """A group of nothing."""
        return self


class _Commands:
    """The commands of a parser: all of them, or the one that is asked for."""

    def __init__(self, made: Any, wanted: str) -> None:
        self.made, self.wanted, self.found = made, wanted, not wanted

    def add(self, name: str, help: str) -> Any:
        """The parser of a command, or what stands in for it."""
        if self.wanted not in ("", name):
            return _Unasked()
        self.found = True
        command = self.made.add_parser(name, help=help, description=f"{help[0].upper()}{help[1:]}.", epilog=STATUS)
        command.set_defaults(run=_run(name))
        return command


def parser(wanted: str = "") -> argparse.ArgumentParser:
    """The parser of the command line.

    Args:
        wanted: The only command of which the words are needed; where it is none, those of all.
    """
    top = _Parser(
        prog="speclint",
        description="Plan review for the exterior of log and timber homes: what rain, sun, ground, snow and time do to "
        "every part, judged by a readable rulebook.",
        epilog=STATUS,
    )
    top.add_argument("--version", action="store_true", help="show the version")
    top.set_defaults(run=lambda stated: _nothing_asked(top, stated))
    commands = _Commands(top.add_subparsers(title="commands", metavar="COMMAND"), wanted)

    review = commands.add("review", "review plans and print the letter")
    review.add_argument(
        "plans",
        nargs="*",
        metavar="PLAN",
        help="plan files, or folders, of which every plan is reviewed; - reads one from standard input",
    )
    review.add_argument("--demo", action="store_true", help="review the demo plan that ships with speclint")
    review.add_argument("--alternate", metavar="NAME", default="", help="review the plan with this alternate in place")
    form = review.add_mutually_exclusive_group()
    form.add_argument("--json", action="store_true", help="print one documented object instead of the letter")
    form.add_argument(
        "--sarif", action="store_true", help="print one log of all plans in SARIF 2.1.0, for other programs"
    )
    form.add_argument("--junit", action="store_true", help="print the XML of test results that build servers read")
    form.add_argument("--json-schema", action="store_true", help="print the JSON Schema of --json, and review nothing")
    review.add_argument("--with-cures", action="store_true", help="with --sarif: add suggested changes; takes longer")
    review.add_argument("--brief", action="store_true", help="leave out reasons, bases, assumptions and cautions")
    review.add_argument(
        "--hold-at",
        choices=("hold", "revise", "note"),
        default="hold",
        help="the mildest grade that gives exit status 1 (default: hold)",
    )
    review.add_argument("--today", metavar="DATE", help="the day by which variances expire (default: today)")
    review.add_argument("--into", metavar="FILE", help="write the result to a file")
    review.add_argument(
        "--workers", metavar="N", type=int, help="processes that review at once (default: one for each processor)"
    )
    review.add_argument("--afresh", action="store_true", help="review anew what was kept from earlier runs")
    _rulebook_words(review)
    _reader_words(review)

    compare = commands.add("compare", "tell what changed between two revisions of plans")
    compare.usage = (
        "speclint compare OLD NEW [options]\n       speclint compare --revisions OLD [NEW] [PLAN ...] [options]"
    )
    compare.add_argument(
        "words", nargs="*", metavar="OLD NEW", help="two plan files, or two folders whose plans are matched by path"
    )
    compare.add_argument(
        "--revisions",
        action="store_true",
        help="OLD and NEW are revisions of the git repository here, of the plans and folders named after them "
        "(default: this folder); without NEW, the files on disk",
    )
    compare.add_argument("--worse", action="store_true", help="tell what got worse, and exit with 1 only then")
    compare.add_argument(
        "--hold-at",
        choices=("hold", "revise", "note"),
        help="the mildest grade that gives exit status 1 (default: hold; with --worse: revise)",
    )
    form = compare.add_mutually_exclusive_group()
    form.add_argument("--json", action="store_true", help="print one documented object for programs")
    form.add_argument("--markdown", action="store_true", help="print Markdown, for a comment on a proposed change")
    compare.add_argument("--today", metavar="DATE", help="the day by which variances expire (default: today)")
    compare.add_argument(
        "--day-of-old", metavar="DATE", help="the day by which variances of OLD expire (default: as of NEW)"
    )
    compare.add_argument("--into", metavar="FILE", help="write the result to a file")
    _rulebook_words(compare)
    _reader_words(compare)

    explain = commands.add("explain", "teach a rule, a measure, an element or a setting")
    explain.usage = "speclint explain NAME [PLAN [ELEMENT]] [options]"
    explain.add_argument(
        "words",
        nargs="+",
        metavar="NAME PLAN ELEMENT",
        help="what to explain; then a plan, to see the numbers behind it there; then one of its elements, "
        "such as: speclint explain settlement house.plan wall west",
    )
    explain.add_argument("--demo", action="store_true", help="with the demo plan")
    _rulebook_words(explain)
    _reader_words(explain)

    rulebook = commands.add("rulebook", "list the rules")
    rulebook.add_argument("words", nargs="*", metavar="WORD", help="only rules whose name, title or group holds these")
    rulebook.add_argument("--grade", choices=("hold", "revise", "note"), help="only rules that can give this grade")
    rulebook.add_argument("--about", metavar="ELEMENT", help="only rules about this kind of element")
    rulebook.add_argument("--json", action="store_true", help="print a list for programs")
    _rulebook_words(rulebook)
    _reader_words(rulebook)

    measures = commands.add("measures", "show what is computed for a plan, unfolded to its inputs")
    measures.add_argument("plan", metavar="PLAN", nargs="?", help="plan file; the demo plan with --demo")
    measures.add_argument("element", nargs="*", metavar="ELEMENT", help="unfold one element, such as: wall west")
    measures.add_argument("--demo", action="store_true", help="use the demo plan")
    measures.add_argument("--alternate", metavar="NAME", default="", help="with this alternate in place")
    measures.add_argument("--courses", action="store_true", help="only the courses of walls, with rain, sun and splash")
    form = measures.add_mutually_exclusive_group()
    form.add_argument("--json", action="store_true", help="print an object for programs")
    form.add_argument("--csv", action="store_true", help="print rows for a spreadsheet, in SI units")
    _reader_words(measures)

    exposure = commands.add("exposure", "show in one screen what rain and sun do to every wall and course")
    exposure.add_argument("plan", metavar="PLAN", nargs="?", help="plan file; the demo plan with --demo")
    exposure.add_argument("wall", nargs="*", metavar="NAME", help="only the wall of this name, such as: west")
    exposure.add_argument("--demo", action="store_true", help="use the demo plan")
    exposure.add_argument("--alternate", metavar="NAME", default="", help="with this alternate in place")
    exposure.add_argument("--alternates", action="store_true", help="compare every alternate with the plan as drawn")
    _reader_words(exposure)

    upkeep = commands.add("upkeep", "forecast what the owner will do, when, from what, and at what cost")
    upkeep.add_argument("plan", metavar="PLAN", nargs="?", help="plan file; the demo plan with --demo")
    upkeep.add_argument("--demo", action="store_true", help="use the demo plan")
    upkeep.add_argument("--alternate", metavar="NAME", default="", help="with this alternate in place")
    upkeep.add_argument("--years", metavar="N", type=int, default=30, help="length of the forecast (default: 30)")
    upkeep.add_argument("--rates", metavar="FILE", help="your own rates (default: invented ones, for demonstration)")
    upkeep.add_argument("--today", metavar="DATE", help="the day from which years are counted (default: today)")
    form = upkeep.add_mutually_exclusive_group()
    form.add_argument("--alternates", action="store_true", help="compare every alternate with the plan as drawn")
    form.add_argument("--json", action="store_true", help="print an object for programs")
    form.add_argument("--csv", action="store_true", help="print the schedule in rows for a spreadsheet")
    form.add_argument("--calendar", action="store_true", help="print an iCalendar file (RFC 5545)")
    upkeep.add_argument("--into", metavar="FILE", help="write the result to a file")
    _reader_words(upkeep)

    trace = commands.add("trace", "follow each roof's water, or each load, to where it ends")
    trace.add_argument("plan", metavar="PLAN", nargs="?", help="plan file; the demo plan with --demo")
    trace.add_argument("element", nargs="*", metavar="ELEMENT", help="only from one element, such as: porch lake")
    trace.add_argument("--demo", action="store_true", help="use the demo plan")
    trace.add_argument("--alternate", metavar="NAME", default="", help="with this alternate in place")
    trace.add_argument("--bearing", action="store_true", help="follow loads to the soil, and show what moves past what")
    form = trace.add_mutually_exclusive_group()
    form.add_argument("--json", action="store_true", help="print an object for programs")
    form.add_argument("--dot", action="store_true", help="print the graph in the DOT language")
    trace.add_argument("--into", metavar="FILE", help="write the result to a file")
    _reader_words(trace)

    sequence = commands.add("sequence", "put the work in order, with holds and why each comes where it does")
    sequence.add_argument("plan", metavar="PLAN", nargs="?", help="plan file; the demo plan with --demo")
    sequence.add_argument("--demo", action="store_true", help="use the demo plan")
    sequence.add_argument("--alternate", metavar="NAME", default="", help="with this alternate in place")
    form = sequence.add_mutually_exclusive_group()
    form.add_argument("--json", action="store_true", help="print an object for programs")
    form.add_argument("--dot", action="store_true", help="print the graph in the DOT language")
    sequence.add_argument("--into", metavar="FILE", help="write the result to a file")
    _reader_words(sequence)

    draw = commands.add("draw", "draw elevations, sections, the roof plan, a compass and the upkeep as SVG")
    draw.add_argument("plan", metavar="PLAN", nargs="?", help="plan file; the demo plan with --demo")
    draw.add_argument("--demo", action="store_true", help="use the demo plan")
    draw.add_argument("--into", metavar="FOLDER", required=True, help="the folder to draw into")
    draw.add_argument(
        "--shade",
        choices=("all", "rain", "sun", "finish", "decay"),
        default="all",
        help="shade elevations by this alone (default: a drawing for each)",
    )
    draw.add_argument("--alternate", metavar="NAME", default="", help="with this alternate in place")
    draw.add_argument("--rates", metavar="FILE", help="your own rates for the upkeep")
    draw.add_argument("--today", metavar="DATE", help="the day from which years are counted (default: today)")
    _rulebook_words(draw)
    _reader_words(draw)

    report = commands.add("report", "write the report: one page for designer and owner, with drawings")
    report.add_argument("plan", metavar="PLAN", nargs="?", help="plan file; the demo plan with --demo")
    report.add_argument("--demo", action="store_true", help="use the demo plan")
    report.add_argument("--to", metavar="FILE", help="the page to write, such as house.html")
    report.add_argument("--pdf", metavar="FILE", help="the same as PDF; needs speclint[pdf]")
    report.add_argument("--alternate", metavar="NAME", default="", help="with this alternate in place")
    report.add_argument("--years", metavar="N", type=int, default=30, help="length of the forecast (default: 30)")
    report.add_argument("--rates", metavar="FILE", help="your own rates for the upkeep")
    report.add_argument("--today", metavar="DATE", help="the day of the report (default: today)")
    _rulebook_words(report)
    _reader_words(report)

    watch = commands.add("watch", "serve the report on this machine and refresh it as the plan is saved")
    watch.add_argument("plan", metavar="PLAN", help="plan file")
    watch.add_argument("--port", metavar="N", type=int, default=0, help="port to listen on (default: any free one)")
    watch.add_argument("--rates", metavar="FILE", help="your own rates for the upkeep")
    watch.add_argument("--today", metavar="DATE", help="the day of the report (default: today)")
    _rulebook_words(watch)
    _reader_words(watch)

    lesson = commands.add("lesson", "write a lesson for trainees, its exercise, or the key; alone, list the topics")
    lesson.add_argument("topic", metavar="TOPIC", nargs="?", help="what to teach; without one the topics are listed")
    lesson.add_argument("plan", metavar="PLAN", nargs="?", help="a plan of your own, drawn and reckoned as well")
    lesson.add_argument("--to", metavar="FILE", help="the page to write, such as lesson.html")
    lesson.add_argument("--exercise", metavar="FILE", help="write the exercise as a plan file")
    lesson.add_argument("--answers", action="store_true", help="print the key of the exercise, as the review finds it")
    lesson.add_argument("--today", metavar="DATE", help="the day of the lesson (default: today)")
    _rulebook_words(lesson)
    _reader_words(lesson)

    cure = commands.add("cure", "find the smallest changes that clear the findings of a plan, and write them")
    cure.add_argument("plan", metavar="PLAN", nargs="?", help="plan file; the demo plan with --demo")
    cure.add_argument("words", nargs="*", metavar="RULE ELEMENT", help="only this rule; then only on this element")
    cure.add_argument("--demo", action="store_true", help="use the demo plan")
    cure.add_argument(
        "--down-to",
        choices=("hold", "revise", "note"),
        default="hold",
        help="the mildest grade that the changes made together clear (default: hold)",
    )
    cure.add_argument("--write", action="store_true", help="edit the plan: the set, or the cures of the rule named")
    cure.add_argument("--choice", metavar="N", type=int, default=1, help="with a rule: which choice (default: 1)")
    cure.add_argument("--as-alternate", metavar="NAME", help="add the changes to the plan as an alternate instead")
    cure.add_argument("--json", action="store_true", help="print an object for programs")
    cure.add_argument("--rates", metavar="FILE", help="your own rates for the upkeep")
    cure.add_argument("--today", metavar="DATE", help="the day by which variances expire (default: today)")
    _rulebook_words(cure)
    _reader_words(cure)

    editor = commands.add("editor", "serve an editor that speaks the Language Server Protocol")
    _rulebook_words(editor)
    _reader_words(editor)

    tidy = commands.add("tidy", "lay plans out in one manner; words, values, comments and their order stay")
    tidy.add_argument("plans", nargs="*", metavar="PLAN", help="plan files, and folders of them; - from standard input")
    form = tidy.add_mutually_exclusive_group()
    form.add_argument("--show", action="store_true", help="print the text instead of writing the file")
    form.add_argument("--ask", action="store_true", help="write nothing; name plans not laid out, with exit status 1")

    begin = commands.add("begin", "write a commented starter plan")
    begin.add_argument("file", metavar="FILE", help="the plan to write; an existing file is left alone")

    completion = commands.add("completion", "print shell completion")
    completion.add_argument("shell", choices=("bash", "zsh", "fish"), help="your shell")
    return top if commands.found else parser()


def _rulebook_words(command: Any) -> None:
    command.add_argument("--house-rules", metavar="FOLDER", help="a folder of your own rule pages")
    command.add_argument("--house-limits", metavar="FILE", help="a file of your own limits and grades")


def _reader_words(command: Any) -> None:
    command.add_argument(
        "--units", choices=("imperial", "metric"), help="units of the result (default: those of the plan)"
    )
    command.add_argument(
        "--colour", choices=("auto", "always", "never"), default="auto", help="colour (default: on a terminal)"
    )


def _nothing_asked(top: argparse.ArgumentParser, stated: argparse.Namespace) -> int:
    if stated.version:
        from speclint import __version__

        print(f"speclint {__version__}")
        return 0
    top.print_help()
    return 3

"""The plans of one side of a comparison: a file, a folder, or what a revision of a repository holds."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from speclint.commands.files import Refused, open_plan
from speclint.commands.repository import PastFiles, Repository, repository_here
from speclint.commands.walk import ENDING, ENVIRONMENT, is_plan, plans_below
from speclint.language.uses import CannotRead, Reader, trees_of
from speclint.model.build import build
from speclint.pipeline import PlanText

Opener = Callable[[], PlanText]


@dataclass(frozen=True, slots=True)
class Side:
    """The plans of one side.

    Attributes:
        title: What the side is called.
        plans: How to open each plan, by what the plan is called on both sides.
        commit: The commit that it is, where it is one.
        files: Where its plans lie on disk, where they do.
    """

    title: str
    plans: Mapping[str, Opener]
    commit: str = ""
    files: tuple[str, ...] = ()


def sides_on_disk(old: str, new: str) -> tuple[Side, Side]:
    """Two files, or two folders whose plans are matched by their path below the folder.

    Raises:
        Refused: If one is a folder and the other is not, or there is no plan to compare.
    """
    folders = [os.path.isdir(path) for path in (old, new)]
    if folders[0] != folders[1]:
        raise Refused(f"{old if folders[0] else new} is a folder and the other is not: name two of a kind", 3)
    if not folders[0]:
        before, after = ({new: _opener(path)} for path in (old, new))
        return Side(old, before, files=(old,)), Side(new, after, files=(new,))
    sides = [_folder_side(path) for path in (old, new)]
    if not any(side.plans for side in sides):
        raise Refused(f"neither {old} nor {new} holds a plan (a file whose name ends in {ENDING})", 3)
    return sides[0], sides[1]


def _folder_side(folder: str) -> Side:
    names = list(plans_below(folder))
    files = tuple(os.path.join(folder, name) for name in names)
    return Side(folder, _own_plans(_on_disk(folder, names)), files=files)


def sides_of_revisions(words: list[str]) -> tuple[Side, Side]:
    """Two revisions of a repository, or one and the files on disk, for the plans and folders named after them.

    Args:
        words: The old revision, the new one where there is one, and the plans.

    Raises:
        Refused: If there is no such repository, revision or plan.
    """
    if not words:
        raise Refused("name a revision to compare with, such as: speclint compare --revisions main", 3)
    repository = repository_here()
    old = _past(repository, words[0])
    new, paths = _new_revision(repository, words[1:], old)
    found: tuple[dict[str, Opener], dict[str, Opener]] = ({}, {})
    for path in paths or ["."]:
        inside = repository.inside(path)
        before = _in_past(old, inside)
        after = _in_past(new, inside) if new else _now_on_disk(repository, inside)
        if not before and not after:
            where = f"in {words[0]} nor in {new.named}" if new else f"in {words[0]} nor on disk"
            raise Refused(f"{path}: there is no such plan, neither {where}", 3)
        found[0].update(before)
        found[1].update(after)
    now = found[1]
    side = Side(new.named, now, new.commit) if new else Side("the files on disk", now, files=tuple(now))
    return Side(words[0], found[0], old.commit), side


def _past(repository: Repository, named: str) -> PastFiles:
    commit = repository.commit(named)
    if commit is None:
        raise repository.no_revision(named)
    return repository.at(commit, named)


def _new_revision(repository: Repository, words: list[str], old: PastFiles) -> tuple[PastFiles | None, list[str]]:
    """The new revision where the next word names one, and the plans; a word that could be both is refused."""
    if not words:
        return None, []
    first = words[0]
    commit, there = repository.commit(first), os.path.lexists(first) if "\0" not in first else False
    if commit is not None and there:
        raise Refused(f"“{first}” is a revision and a file: write ./{first} for the file, or heads/{first}", 3)
    if commit is not None:
        return repository.at(commit, first), words[1:]
    if there or first.endswith(ENDING) or old.files(repository.inside(first)):
        return None, words
    raise repository.no_revision(first)


def _in_past(files: PastFiles, inside: str) -> dict[str, Opener]:
    """The plans that a revision holds at a path, or in the folder there."""

    def opener(path: str, shown: str) -> Opener:
        return lambda: files.plan(path, shown)

    listed = files.files(inside)
    paths = [inside] if inside in listed else sorted(path for path in listed if is_plan(path))
    found = {shown: opener(path, shown) for path in paths for shown in [_shown(files.repository, path)]}
    return found if inside in listed else _own_plans(found)


def _now_on_disk(repository: Repository, inside: str) -> dict[str, Opener]:
    """The plans on disk at a path of the repository, or in the folder there that git would take."""
    whole = repository.top / inside
    if not os.path.isdir(whole):
        shown = _shown(repository, inside)
        return {shown: lambda: open_plan(shown)} if os.path.lexists(whole) else {}
    there = sorted(repository.files_on_disk(inside))
    environments = tuple([path.removesuffix(ENVIRONMENT) for path in there if path.endswith(f"/{ENVIRONMENT}")])
    paths = [path for path in there if is_plan(path) and not path.startswith(environments)]
    return _own_plans({name: _opener(name) for name in (_shown(repository, path) for path in paths)})


def _shown(repository: Repository, inside: str) -> str:
    """A path of the repository as the user would type it here."""
    return os.path.relpath(repository.top / inside)


def _on_disk(folder: str, names: Iterable[str]) -> dict[str, Opener]:
    return {name: _opener(os.path.join(folder, name)) for name in names}


def _opener(path: str) -> Opener:
    return lambda: open_plan(path)


def _own_plans(plans: Mapping[str, Opener]) -> dict[str, Opener]:
    """Plans without the files that only others use: those that a plan uses and that state no element of their own."""
    used: set[str] = set()
    bare: set[str] = set()
    for name, opener in plans.items():
        try:
            plan = opener()
        except Refused:
            continue  # told when it is compared
        recorder = Recorder(plan.read)
        trees, _ = trees_of(plan.text, plan.name, recorder)
        used |= {os.path.normpath(os.path.join(os.path.dirname(name), path)) for path in recorder.asked}
        elements = build(trees[-1:], name)[0].elements.values()
        if not any(element.given or element.kind != "site" for element in elements):
            bare.add(name)
    return {name: opener for name, opener in plans.items() if os.path.normpath(name) not in used or name not in bare}


class Recorder:
    """A reader that keeps the names of the files it was asked for."""

    def __init__(self, read: Reader) -> None:
        self.read = read
        self.asked: list[str] = []

    def __call__(self, used: str) -> str:
        self.asked.append(used)
        return self.read(used)


def same_text(old: PlanText, new: PlanText, used: Iterable[str]) -> bool:
    """Whether two plans and the files they use hold the same text."""

    def read(plan: PlanText, name: str) -> str | None:
        try:
            return plan.read(name)
        except CannotRead:
            return None

    return old.text == new.text and all(read(old, name) == read(new, name) for name in used)

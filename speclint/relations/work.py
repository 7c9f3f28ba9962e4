"""The order of work: the jobs that a home needs, what must come first, and where the plan's own steps disagree."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from functools import cached_property
from typing import Any, NamedTuple

from speclint.model.element import Element, settings_of
from speclint.model.home import Home
from speclint.model.work import Step
from speclint.relations.web import Node, Tie, Web
from speclint.tables.work import STAGES, Pair, Task, pairs, tasks

Ask = Callable[[str, str], Any]

MOST_CONFLICTS = 500  # that are told; ours
ENDS = {"field treated": "treat", "sealed": "seal", "capped": "seal"}


class Job(NamedTuple):
    """A task on one part of the home, or a step of the plan that is no known task."""

    name: str
    stage: str
    element: str
    task: Task | None
    steps: tuple[str, ...] = ()


class Conflict(NamedTuple):
    """Two steps of a plan in the wrong order: `late` must come first and is stated to follow `early`."""

    early: str
    late: str
    first: Job
    then: Job
    pair: Pair
    way: tuple[str, ...]


class WorkOrder:
    """The jobs of a home and their order.

    Attributes:
        jobs: By name, in the order of stages and of the plan.
        web: The jobs as a web; a tie says why its source comes before its target, and is `must` or `stated`.
        conflicts: Where steps of the plan are in the wrong order.
        circle: Steps of the plan that follow one another in a circle; empty where none do.
    """

    def __init__(self, home: Home, ask: Ask) -> None:
        self.home = home
        self.steps = {label: step for label, step in home.elements.items() if isinstance(step, Step)}
        self._names = {label: _named(element) for label, element in home.elements.items()}
        self.jobs = {job.name: job for job in self._jobs(ask)}
        musts = list(self._musts())
        order = Web(
            [Node(label, "step") for label in self.steps],
            [Tie(before, label, "then") for label, step in self.steps.items() for before in step.after or ()],
        )
        self.circle = order.circle()
        self.order, _ = order.unrolled()
        self.conflicts = list(self._conflicts(musts))
        ties = [Tie(first.name, then.name, pair.why, 1.0, "must") for first, then, pair in musts]
        must = Web([Node(job.name, "job", job.element) for job in self.jobs.values()], ties)
        self.web = Web(must.nodes.values(), [*ties, *self._stated(must)])

    @cached_property
    def straight(self) -> frozenset[tuple[str, str]]:
        """The ties that no longer way makes needless, as pairs of jobs."""
        import networkx

        whole: networkx.DiGraph[str] = networkx.DiGraph(self.web.graph())
        return frozenset(networkx.transitive_reduction(whole).edges)

    def _jobs(self, ask: Ask) -> list[Job]:
        found: list[Job] = []
        for task in tasks():
            if task.about == "home":
                found.append(Job(task.does, task.stage, "", task))
            for element in self.home.of_kind(task.about) if task.about != "home" else ():
                if _needed(task.when, element, ask, self.home):
                    found.append(Job(task.does.replace("{element}", element.label), task.stage, element.label, task))
        matched: dict[str, list[str]] = {}
        extra: list[Job] = []
        for label, step in self.steps.items():
            known = [job for job in found if _is_step(job, step)]
            for job in known:
                matched.setdefault(job.name, []).append(label)
            if not known:
                extra.append(Job(step.does or label, "", "", None, (label,)))
        found = [Job(job.name, job.stage, job.element, job.task, tuple(matched.get(job.name, ()))) for job in found]
        return sorted([*found, *extra], key=lambda job: STAGES.index(job.stage) if job.stage else len(STAGES))

    def _musts(self) -> Iterable[tuple[Job, Job, Pair]]:
        by_task: dict[str, list[Job]] = {}
        for job in self.jobs.values():
            if job.task is not None:
                by_task.setdefault(job.task.name, []).append(job)
        for pair in pairs():
            for first in by_task.get(pair.first, ()):
                for then in by_task.get(pair.then, ()):
                    if self._meet(pair.scope, first.element, then.element):
                        yield first, then, pair

    def _meet(self, scope: str, one: str, other: str) -> bool:
        if scope == "all" or not one or not other or one == other:
            return True
        if scope == "same":
            return False
        mine, theirs = self._names[one], self._names[other]
        return one in theirs or other in mine or (scope == "near" and bool(mine & theirs))

    def _conflicts(self, musts: list[tuple[Job, Job, Pair]]) -> Iterable[Conflict]:
        told: set[tuple[str, str]] = set()
        after: dict[str, set[str]] = {}
        for first, then, pair in musts:
            both = set(first.steps) & set(then.steps)
            for early in then.steps:
                if early not in after:
                    after[early] = set(self.order.reached(early)) - {early}
                for late in first.steps if after[early] and early not in both else ():
                    if late not in after[early] or (early, late) in told or late in both:
                        continue
                    if len(told) >= MOST_CONFLICTS:
                        return
                    told.add((early, late))
                    steps = (early, *(tie.target for tie in self.order.way(early, late)))
                    yield Conflict(early, late, first, then, pair, steps)

    def _stated(self, must: Web) -> Iterable[Tie]:
        """The order of the plan's own steps, save where it goes against what must be."""
        by_step: dict[str, list[Job]] = {}
        for job in self.jobs.values():
            for label in job.steps:
                by_step.setdefault(label, []).append(job)
        onward = {name: [tie.target for tie in must.out_of(name)] for name in must.nodes}
        for tie in self.order.ties:
            for first in by_step.get(tie.source, ()):
                for then in by_step.get(tie.target, ()):
                    if first.name != then.name and not _leads(onward, then.name, first.name):
                        onward[first.name].append(then.name)
                        yield Tie(first.name, then.name, "the plan says so", 1.0, "stated")


def _leads(onward: Mapping[str, list[str]], start: str, end: str) -> bool:
    """Whether a way leads from one job to another."""
    found, ahead = {start}, [start]
    for name in ahead:  # grows while it is walked
        if name == end:
            return True
        for other in onward[name]:
            if other not in found:
                found.add(other)
                ahead.append(other)
    return False


def in_order(work: WorkOrder) -> list[Job]:
    """The jobs in an order that keeps every tie, by stage and by the order of the plan as far as ties allow."""
    import networkx

    rank = {name: at for at, name in enumerate(work.jobs)}
    graph: networkx.DiGraph[str] = networkx.DiGraph(work.web.graph())
    return [work.jobs[name] for name in networkx.lexicographical_topological_sort(graph, key=rank.__getitem__)]


def reasons(work: WorkOrder, job: Job) -> list[Tie]:
    """What must come before a job straight away: ties that no longer way makes needless."""
    return [tie for tie in work.web.into(job.name) if (tie.source, tie.target) in work.straight]


def _named(element: Element) -> set[str]:
    """The labels of the parts that an element names."""
    found: set[str] = set()
    for setting in settings_of(type(element)).values():
        if setting.dimension == "part":
            value = getattr(element, setting.attribute) or ()
            found |= {value} if isinstance(value, str) else set(value)
    return found


def _needed(when: str, element: Element, ask: Ask, home: Home) -> bool:
    """Whether a part states what a task asks for."""
    if not when:
        return True
    if " of " in when:
        name, kinds = when.split(" of ", 1)
        part = getattr(element, name.replace(" ", "_"))
        return part is not None and home.elements[part].kind in kinds.split(", ")
    found = re.fullmatch(r"(.+) ([=!>]) (.+)", when)
    assert found is not None, when
    value = ask(element.label, found[1])
    if found[3] == "not stated":
        return value is None
    if found[2] == ">":
        return value is not None and value > float(found[3])
    wanted = value in found[3].split("|")
    return value is not None and wanted is (found[2] == "=")


def _is_step(job: Job, step: Step) -> bool:
    """Whether a step of the plan is a job: its parts are the job's, and its words or its ends say so."""
    task = job.task
    if task is None or (step.on and job.element and job.element not in step.on) or (step.on and not job.element):
        return False
    if job.element and not step.on and job.element not in (step.does or ""):
        return False
    sort = ENDS.get(step.ends or "")
    if sort and task.name.startswith(sort) and task.name.endswith(("ends", "logs")) and step.on:
        return True
    words = re.findall(r"[a-z-]+", (step.does or "").casefold())
    return all(any(word.startswith(start) for word in words for start in group) for group in task.words)

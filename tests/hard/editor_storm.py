"""A storm of edits on the language server: `python -m tests.hard.editor_storm --edits 5000 --seed 1`.

Somebody types, pastes, deletes and puts whole plans back in a plan and in a file that it uses, while questions and
broken messages come between. Every so often, what is told must be what a review of its own finds in the same texts.
"""

from __future__ import annotations

import argparse
import datetime
import json
import sys
import time
from collections.abc import Callable
from pathlib import Path
from random import Random
from typing import Any

from lsprotocol import converters

from speclint.commands.common import units_of
from speclint.editor.diagnose import diagnostics
from speclint.editor.positions import Lines
from speclint.language.uses import CannotRead
from speclint.pipeline import PlanText, review
from speclint.ruling import Review
from tests.editor.client import Client
from tests.hard.holds import Fault
from tests.hard.texts import MARKS, NUMBERS, WORDS, blocks_of, examples, text_of
from tests.specs.expected import book

HOUSE, SHARED = "house.plan", "shared.plan"
FOLDER = "file:///plans/"
LONGEST = 20_000  # characters of a text before it is put back
INTERNAL, MALFORMED = -32603, b"Content-Length: 5\r\n\r\n{[{[{"
Told = dict[str, list[dict[str, Any]]]


class Typist:
    """Somebody at work on two texts, who knows both without asking."""

    def __init__(self, seed: int, encoding: str) -> None:
        self.chance, self.encoding = Random(seed), encoding
        self.texts = {HOUSE: f'use "{SHARED}"\n{examples()[0]}', SHARED: "typical wall { height 9' }\n"}

    def edit(self, name: str) -> dict[str, Any]:
        """The next edit of a text, made in the text too: most are small, some put in a block or the whole text."""
        text, chance = self.texts[name], self.chance
        if len(text) > LONGEST or chance.random() < 0.01:
            return self._put_back(name)
        at = chance.randint(0, len(text))
        end = min(len(text), at + chance.choice((0, 0, 0, 1, 2, 9, 200)))
        new = self._piece() if chance.random() < 0.8 else ""
        lines = Lines(text, self.encoding)
        at, end = (one - (text[max(0, one - 1) : one + 1] == "\r\n") for one in (at, end))  # no place between these
        self.texts[name] = text[:at] + new + text[end:]
        return {"range": {"start": _position(lines, at), "end": _position(lines, end)}, "text": new}

    def _piece(self) -> str:
        chance = self.chance
        lot = chance.random()
        if lot < 0.05:
            return "\n" + chance.choice(blocks_of(chance.choice(examples()))) + "\n"
        if lot < 0.07:
            return f'use "{SHARED}"\n'
        return chance.choice((chance.choice(WORDS) + " ", chance.choice(NUMBERS), chance.choice(MARKS), "\r\n", "\n"))

    def _put_back(self, name: str) -> dict[str, Any]:
        chance = self.chance
        whole = text_of(chance.randrange(10**6), 0) if chance.random() < 0.3 else chance.choice(examples())
        self.texts[name] = whole if name == SHARED else f'use "{SHARED}"\n{whole}'
        return {"text": self.texts[name]}

    def question(self, name: str) -> tuple[str, dict[str, Any]]:
        """A question about a place of a text."""
        chance, lines = self.chance, Lines(self.texts[name], self.encoding)
        place = _position(lines, chance.randint(0, len(self.texts[name])))
        where: dict[str, Any] = {"textDocument": {"uri": FOLDER + name}}
        asked: tuple[tuple[str, dict[str, Any]], ...] = (
            ("hover", {"position": place}),
            ("completion", {"position": place}),
            ("definition", {"position": place}),
            ("references", {"position": place, "context": {"includeDeclaration": True}}),
            ("prepareRename", {"position": place}),
            ("rename", {"position": place, "newName": chance.choice(("front", "a b", "", "site", "{", "é"))}),
            ("documentSymbol", {}),
            ("foldingRange", {}),
            ("formatting", {"options": {"tabSize": 4, "insertSpaces": True}}),
        )
        method, more = chance.choice(asked)
        return f"textDocument/{method}", {**where, **more}


def _position(lines: Lines, offset: int) -> dict[str, int]:
    place = lines.position(offset)
    return {"line": place.line, "character": place.character}


def cold(texts: dict[str, str], encoding: str) -> Told:
    """What reviews of their own tell of a plan and of the file that it may use."""
    asked: set[str] = set()
    found = _reviewed(HOUSE, texts, encoding, asked)
    if SHARED not in asked:
        found |= _reviewed(SHARED, texts, encoding, set())
    return {name: found.get(name, []) for name in texts}


def _reviewed(name: str, texts: dict[str, str], encoding: str, asked: set[str]) -> Told:
    def read(used: str) -> str:
        if used not in texts:
            raise CannotRead("there is no such file")
        asked.add(used)
        return texts[used]

    units = units_of(argparse.Namespace(units=None), texts[name])
    result = review(PlanText(texts[name], name, read), book(), datetime.date.today().isoformat(), units)
    if not isinstance(result, Review):
        raise Fault(f"no review but {result!r}")
    told = diagnostics(result, lambda file: Lines(texts[file], encoding))
    converter = converters.get_converter()
    return {file: [json.loads(json.dumps(converter.unstructure(one))) for one in ones] for file, ones in told.items()}


def storm(seed: int, edits: int, every: int, say: Callable[[str], None] = lambda said: None) -> int:
    """Send a storm of edits, and hold what is told against reviews of their own.

    Args:
        seed: Decides everything that is sent.
        edits: How many edits, at the least.
        every: After how many changes what is told is looked at.
        say: Told how far the storm is.

    Returns:
        How often what is told was looked at.

    Raises:
        Fault: If it is something else, a question is met by a fault, or anything is said of one.
    """
    encoding = ("utf-16", "utf-32", "utf-8")[seed % 3]
    typist = Typist(seed, encoding)
    chance, versions, done, looks, changes = typist.chance, dict.fromkeys(typist.texts, 1), 0, 0, 0
    with Client() as client:
        client.begin(general={"positionEncodings": [encoding, "utf-16"]})
        for name, text in typist.texts.items():
            client.open(FOLDER + name, text)
        while done < edits or changes % every:
            name = SHARED if chance.random() < 0.2 else HOUSE
            made = [typist.edit(name) for _ in range(chance.choice((1, 1, 2, 3)))]
            versions[name] += 1
            client.change(FOLDER + name, versions[name], *made)
            done, changes = done + len(made), changes + 1
            if chance.random() < 0.3:
                method, params = typist.question(name)
                answer = client.answer(method, params)
                if answer.get("error", {}).get("code") == INTERNAL:
                    raise Fault(f"{method} {params}: {answer['error']} in {typist.texts[name]!r}")
            if chance.random() < 0.02:
                client.raw(MALFORMED)
            if changes % every == 0:
                _look(client, typist, versions)
                looks += 1
                say(f"{done:,} edits, {looks} looks, {_megabytes(client.process.pid):.0f} MB")
        status = client.end()
    said = [line for line in client.said if "a message was not understood" not in line]
    if status or said:
        raise Fault(f"ended with {status}: {said}")
    return looks


def _look(client: Client, typist: Typist, versions: dict[str, int]) -> None:
    """Wait until the last texts are told of, and hold that against reviews of their own."""
    expected = cold(typist.texts, typist.encoding)
    for name, version in versions.items():
        client.diagnostics(FOLDER + name, version)
    client.quiet(0.15)
    for name in typist.texts:
        told = client.told[FOLDER + name][-1]
        if told["diagnostics"] != expected[name]:
            client.quiet(1.0)  # the other text may be told of a little later
            told = client.told[FOLDER + name][-1]
        if told["diagnostics"] != expected[name] or told.get("version") != versions[name]:
            here, there = ([f"{one['range']['start']} {one['message']}" for one in ones]
                           for ones in (told["diagnostics"], expected[name]))  # fmt: skip
            differ = {"told and not found": [one for one in here if one not in there],
                      "found and not told": [one for one in there if one not in here]}  # fmt: skip
            raise Fault(f"{name} {told.get('version')} of {versions[name]}: {differ} in {typist.texts!r}")
    client.told = {uri: ones[-1:] for uri, ones in client.told.items()}


def _megabytes(process: int) -> float:
    """The memory that a process holds, where the system tells."""
    try:
        status = Path(f"/proc/{process}/status").read_text(encoding="ascii", errors="replace")
    except OSError:
        return 0.0
    return next((int(line.split()[1]) / 1024 for line in status.splitlines() if line.startswith("VmRSS")), 0.0)


def main(words: list[str] | None = None) -> int:
    """Run the storm; exit status 1 where a fault was found."""
    parser = argparse.ArgumentParser(prog="python -m tests.hard.editor_storm", description=__doc__)
    parser.add_argument("--edits", type=int, default=5_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--every", type=int, default=25, help="changes between two looks at what is told")
    stated = parser.parse_args(words)
    began = time.monotonic()
    last = ""

    def say(said: str) -> None:
        nonlocal last
        last = said

    try:
        storm(stated.seed, stated.edits, stated.every, say)
    except Fault as fault:
        print(f"seed {stated.seed} after {last}: {fault}")
        return 1
    print(f"seed {stated.seed}: {last}, {time.monotonic() - began:.0f} s; no fault")
    return 0


if __name__ == "__main__":
    sys.exit(main())

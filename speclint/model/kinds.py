"""The kinds of element a plan can hold."""

from __future__ import annotations

from speclint.model.element import Element
from speclint.model.porch import Beam, Deck, Ledger, Porch, Post, Rail, Stair
from speclint.model.roof import Chimney, Downspout, Gutter, Junction, Purlin, Roof, Valley
from speclint.model.site import Foundation, Site
from speclint.model.wall import Corner, Door, Wall, Window
from speclint.model.work import Care, Chase, Obstruction, Planting, Step, Stone

_MODELS: tuple[type[Element], ...] = (
    Site,
    Foundation,
    Wall,
    Corner,
    Window,
    Door,
    Roof,
    Valley,
    Junction,
    Chimney,
    Purlin,
    Gutter,
    Downspout,
    Porch,
    Post,
    Beam,
    Deck,
    Ledger,
    Rail,
    Stair,
    Stone,
    Chase,
    Planting,
    Obstruction,
    Care,
    Step,
)
KINDS: dict[str, type[Element]] = {model.kind: model for model in _MODELS}

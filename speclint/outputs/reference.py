"""The language reference and the index of the rulebook, made from the model and the rules themselves."""

from __future__ import annotations

from itertools import groupby

from speclint.measures.register import measures
from speclint.model.element import settings_of
from speclint.model.kinds import KINDS
from speclint.model.settings import Setting
from speclint.outputs.rulebook_tables import tables
from speclint.review.judge import basis_line
from speclint.rulebook.book import Rulebook
from speclint.rulebook.rule import GRADES, Rule
from speclint.units import NEEDED_AS

MADE = "<!-- Made from the model by `sh .ci/tasks reference`; do not edit by hand. -->"

LANGUAGE = """# The plan language

A plan is plain text in UTF-8, in a file that ends in `.plan`.
It reads like the notes on a drawing: elements, and the settings of each between braces.

```plan
wall south { faces S 10 E;  length 46';  height 9'-6" }   # a comment runs to the end of the line
```

## How it is written

- An element is its kind, its name, and a block: `wall south { … }`. A name is one word, hyphens allowed.
- Like elements can be stated together: `wall east, west { … }`. A row of like parts is one element with a `count`.
- A setting is its name and its value. It ends with the line, with `;`, or with the block.
- After a comma another setting of the same element may follow: `finish semitransparent stain, coats 2`.
- A list is parted by commas: `covers north, south`. A comma may end a line and the list go on in the next.
- An element that another names is written by its name, `along south`, or by kind and name where two kinds share a name,
  `under porch lake`.
- `unknown` in place of a value says that nobody knows yet; the review lists it as a question.
- `assumed 48"` says that a value is not certain; the review lists it under the assumptions.
- Text stands in double quotes on one line.

## Numbers

| what | how it is written |
|---|---|
| lengths | `9'-6"`, `10'`, `18"`, `3 1/2"`, `250 mm`, `3.2 m` |
| sizes of timber | `8x8`, `2x12`, `2-2x10` for two plies (nominal, in inches), `200x200 mm`, `10"` for a round log |
| spacing | `16"`, `16" o.c.` |
| slopes | `10:12`, `1/4" per ft`, `2%`, `15 deg` |
| bearings | `S 10 E`, `W 10 S`, `NW`, `south`, `135 deg` (clockwise from north) |
| loads | `70 psf`, `3.4 kPa` |
| rain | `4 in/h`, `100 mm/h` |
| others | `15%`, `120 ft2`, `11 m2`, `115 mph`, `50 m/s`, `40 F`, `5 C`, `4 years`, `14 days`, `2027-06-30` |

A length in mm, cm or m of a customary rounded size meets a limit of a rule in inches within 3%: 300 mm stands for 12".
What is computed for the lot, such as the overhang that a wall needs, is not rounded.
Limits that no variance can set aside are kept to the letter.

## What is typical

`typical wall { … }` holds for every wall that does not state the setting itself.
`typical wall sheltered { … }` holds for walls that say `like sheltered`, before the general typical.
`use "house-standards.plan"` reads typicals (and anything else) from a file in the folder of the plan or below it.

## Alternates

An alternate is the same plan with a change: it restates settings of elements, or adds elements.
Review it with `speclint review PLAN --alternate "wide eaves"`.

```plan
alternate "wide eaves" { roof main { eaves 3';  rakes 4' } }
```

## Variances

A variance accepts one finding, with the reason, who accepts it and until which day.
It never hides: it is listed in every review, and after its day the finding is back.

```plan
variance rake-too-short on wall east {
    because "the lot line is 18 inches away"
    accepted by "J. Moreau"
    until 2027-06-30
}
```

## Rain and wind of the lot

Driving rain is reckoned from the first of these that the plan and the tables give:

1. `rain record "Boston, MA"` names a shipped hourly record; `rain record "lot.csv"` a file of your own beside the plan.
2. `rain shares S 30%, SW 45%, W 25%`: shares of the driving rain by the direction it comes from.
3. `rain wind SW`: the direction it comes from on the whole; a record within 80 km that agrees to 45 degrees is used.
4. The hourly record within 80 km, if it stands less than 300 m higher or lower.
5. The mean of the three nearest hourly records within 500 km.
6. No direction: every bearing alike.

Without an hourly record the amount is reckoned from the yearly rain and mean wind of the station.
Each step down widens the bounds that are shown with the numbers. The ordinary prevailing wind is never used: rain often
comes with another.

The records that ship: {records}.

### An hourly record of your own

A CSV file in UTF-8. Its first line names the columns, each with its unit in brackets, in any order:

```
time, wind direction [deg], wind speed [m/s], rain [mm], temperature [C], humidity [%]
2024-01-01 00:00, 225, 5.1, 0.4, 6.5, 93
2024-01-01 01:00, 230, 6.0, 1.2, 6.4, 94
```

{columns}

`time` is local standard time, on the whole hour. Wind blows from its direction, clockwise from north; in calm air the
speed is 0. An empty cell was not observed. Rows that cannot be read and hours that are missing are told and left out;
nothing is filled in. A calendar year counts where nine of ten of its hours have wind and rain.

## Elements
"""


def language_reference() -> str:
    """The language reference as Markdown."""
    parts = [MADE, "", LANGUAGE.replace("{records}", _records()).replace("{columns}", _columns())]
    parts.append("| element | what it is |\n|---|---|")
    parts += [f"| [`{kind}`](#{kind}) | {_about(kind)} |" for kind in KINDS]
    for kind in KINDS:
        parts += ["", *_kind(kind)]
    return "\n".join(parts) + "\n"


def _records() -> str:
    from speclint.tables.rain_record import record_titles

    return "; ".join(record_titles())


def _columns() -> str:
    from speclint.tables.hourly import COLUMNS

    rows = ["| column | units | may be left out |", "|---|---|---|", "| `time` | as `2024-03-01 14:00` | no |"]
    for name, (units, _, _, optional) in COLUMNS.items():
        written = ", ".join(f"`[{unit}]`" for unit in units)
        rows.append(f"| `{name}` | {written} | {'yes' if optional else 'no'} |")
    return "\n".join(rows)


def _about(kind: str) -> str:
    return " ".join((KINDS[kind].__doc__ or "").split())


def _kind(kind: str) -> list[str]:
    rows = [f"### {kind}", "", _about(kind), "", "| setting | meaning | written | for example |", "|---|---|---|---|"]
    for setting in settings_of(KINDS[kind]).values():
        meaning = setting.meaning + (f"; {setting.reason}: {setting.default}" if setting.default else "")
        rows.append(f"| `{setting.name}` | {meaning} | {_written(setting)} | `{setting.name} {setting.example}` |")
    found = measures().get(kind, {})
    if found:
        rows += ["", f"Computed for each {kind}:", "", "| measure | meaning |", "|---|---|"]
        rows += [f"| `{measure.name}` | {measure.meaning} |" for measure in found.values()]
    return rows


def _written(setting: Setting) -> str:
    return "<br>".join([_value(setting), *_followers(setting)])


def _followers(setting: Setting) -> list[str]:
    """What may follow the value on the same line, a line each."""
    lines = []
    for connecting, follower in setting.then:
        if not follower:
            lines.append(f"may end with `{connecting}`")
        elif connecting:
            lines.append(f"then `{connecting}` {follower}")
        else:
            lines.append(f"then {'an' if follower[0] in 'aeiou' else 'a'} {follower}")
    return lines


def _value(setting: Setting) -> str:
    if setting.dimension == "part":
        kinds = ", ".join(setting.refers) if len(setting.refers) < 8 else "any part"
        return f"{'names of' if setting.many else 'the name of a'} {kinds}"
    if setting.choices:
        return "<br>".join(f"`{phrase}`: {meaning}" for phrase, meaning in setting.choices.items())
    if setting.dimension in ("text", "station", "species", "record"):
        return "a species of the table" if setting.dimension == "species" else "a text in quotes"
    return NEEDED_AS[setting.dimension].replace("|", "\\|")


def rulebook_index(book: Rulebook) -> str:
    """The index of the rulebook as Markdown."""
    parts = [
        MADE,
        "",
        "# The rulebook",
        "",
        "One page, one rule. `speclint explain NAME` shows a page; `hold` is to be settled before release, `revise` "
        "should be improved, `note` is worth knowing.",
    ]
    for group, rules in groupby(book.rules, key=lambda rule: rule.group):
        parts += ["", f"## {group[0].upper()}{group[1:]}", "", "| rule | finds | about | grades | rests on |"]
        parts += ["|---|---|---|---|---|", *map(_row, rules)]
    parts += tables(book)
    return "\n".join(parts) + "\n"


def _row(rule: Rule) -> str:
    given = {tier.grade for tier in rule.tiers}
    grades = ", ".join(grade for grade in GRADES if grade in given)
    basis = "; ".join(basis_line(basis) for basis in rule.basis[:2])
    return f"| [`{rule.name}`]({rule.name}.md) | {rule.title} | {', '.join(rule.kinds)} | {grades} | {basis} |"


def glossary() -> str:
    """Every computed quantity by name, as a Markdown table."""
    rows: dict[tuple[str, str, str], list[str]] = {}
    for kind, found in measures().items():
        for measure in found.values():
            rows.setdefault((measure.name, measure.dimension, measure.meaning), []).append(kind)
    parts = ["| quantity | of | dimension | meaning |", "|---|---|---|---|"]
    for (name, dimension, meaning), kinds in sorted(rows.items()):
        parts.append(f"| {name} | {', '.join(kinds)} | {dimension} | {meaning} |")
    return "\n".join(parts) + "\n"

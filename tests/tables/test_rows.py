"""What is promised of tables in general: cited rows, typed cells, nearest names."""

from __future__ import annotations

import zipfile
from pathlib import Path

import pytest

from speclint import paths
from speclint.citation import Citation
from speclint.tables import rows
from speclint.tables.rows import BadCell, UncitedRow, parse_table, read_shared, read_table, unknown

SHARED = Path(__file__).resolve().parents[2] / "shared"
TABLES = sorted(str(path.relative_to(SHARED)) for path in SHARED.rglob("*.csv") if path.name != "citations.csv")
HEADING = "wood,hardness,citation,place,standing\n"


def test_there_are_tables_to_look_at() -> None:
    assert len(TABLES) >= 14


@pytest.mark.parametrize("table", TABLES)
def test_every_row_of_a_shipped_table_carries_a_citation(table: str) -> None:
    assert len(read_table(table)) > 0


@pytest.mark.parametrize("table", TABLES)
def test_every_cited_key_of_a_shipped_table_is_registered(table: str) -> None:
    from speclint.citation import publications

    cited = {
        cell
        for row in read_table(table)
        for column, cell in row.cells.items()
        if cell and (column == "citation" or column.endswith("_citation"))
    }
    assert set() == cited - set(publications())


def test_a_row_gives_its_cells_and_its_citation() -> None:
    (row,) = parse_table("woods", HEADING + "elm,3.5,some-handbook,Table 1,second-hand\n")
    assert ("elm", 3.5, Citation("some-handbook", "Table 1", "second-hand")) == (
        row.text("wood"),
        row.number("hardness"),
        row.citation,
    )


def test_a_row_without_a_key_is_refused() -> None:
    with pytest.raises(UncitedRow) as refused:
        parse_table("woods", HEADING + "elm,3.5,some-handbook,Table 1,published\noak,4,,Table 1,published\n")
    assert "wanted a key of shared/citations.csv as citation in line 3 of woods; got ''" == str(refused.value)


@pytest.mark.parametrize("standing", ["", "rumour", "Published"])
def test_a_row_without_a_known_standing_is_refused(standing: str) -> None:
    with pytest.raises(UncitedRow):
        parse_table("woods", HEADING + f"elm,3.5,some-handbook,Table 1,{standing}\n")


@pytest.mark.parametrize("standing", ["ours", "common practice"])
def test_what_the_project_or_the_trade_holds_needs_no_key(standing: str) -> None:
    (row,) = parse_table("woods", HEADING + f"elm,3.5,,,{standing}\n")
    assert "" == row.citation.key


def test_a_table_without_provenance_columns_is_refused() -> None:
    with pytest.raises(UncitedRow):
        parse_table("woods", "wood,hardness\nelm,3.5\n")


def test_a_group_of_columns_without_its_own_citation_is_refused() -> None:
    (row,) = parse_table("woods", HEADING + "elm,3.5,some-handbook,Table 1,published\n")
    with pytest.raises(UncitedRow):
        row.cited("hardness")


def test_a_cell_that_is_no_number_is_refused_with_its_place() -> None:
    (row,) = parse_table("woods", HEADING + "elm,hard,some-handbook,Table 1,published\n")
    with pytest.raises(BadCell) as refused:
        row.number("hardness")
    assert "wanted a value in column hardness in line 2 of woods; got 'hard'" == str(refused.value)


def test_an_empty_cell_is_none_where_that_is_allowed() -> None:
    (row,) = parse_table("woods", HEADING + "elm,,some-handbook,Table 1,published\n")
    assert None is row.number_if_stated("hardness")


def test_a_short_row_is_refused() -> None:
    with pytest.raises(BadCell):
        parse_table("woods", HEADING + "elm,3.5,some-handbook\n")


def test_an_unknown_key_names_the_nearest_known_ones() -> None:
    missing = unknown("woods", "Ellm", ["Elm", "Oak", "Helm oak"])
    assert (("Elm", "Helm oak"), "wanted a row of woods; got 'Ellm'; nearest: Elm; Helm oak") == (
        missing.nearest,
        str(missing),
    )


def test_an_unknown_key_unlike_all_known_ones_names_none() -> None:
    assert "wanted a row of woods; got 'xyz'" == str(unknown("woods", "xyz", ["Elm"]))


def test_tables_are_read_from_inside_a_zip_too(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    packed = tmp_path / "shared.zip"
    with zipfile.ZipFile(packed, "w") as archive:
        archive.writestr("shared/woods/hard.csv", HEADING + "elm,3.5,some-handbook,Table 1,published\n")
        archive.writestr("shared/climate/index.csv.gz", (SHARED / "climate/station_index.csv.gz").read_bytes())
    monkeypatch.setattr(paths, "shipped", lambda name: zipfile.Path(packed, f"{name}/"))
    assert (1, b"keys,name") == (
        len(rows.read_table.__wrapped__("woods/hard.csv")),
        read_shared("climate/index.csv.gz")[:9],
    )


def test_nothing_is_read_on_import() -> None:
    import subprocess
    import sys

    program = (
        "import sys, builtins, io, pathlib\n"
        "opened = []\n"
        "sys.addaudithook(lambda event, args: opened.append(str(args[0])) if event == 'open' else None)\n"
        "import speclint.tables.stations, speclint.tables.species, speclint.tables.decks\n"
        "import speclint.tables.rain, speclint.tables.local\n"
        "print([name for name in opened if '.csv' in name], len(opened) > 0)\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True, cwd=SHARED.parent
    )
    assert "[] True" == done.stdout.strip()


def test_the_shared_folder_stays_small() -> None:
    total = sum(path.stat().st_size for path in SHARED.rglob("*") if path.is_file())
    assert 100_000 < total < 2_000_000

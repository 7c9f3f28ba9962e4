"""Running speclint, as the tests of commands do."""

from tests.commands.conftest import run as run

"""What all tests share: a cache of their own, and property tests that give the same result on every machine."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from hypothesis import HealthCheck, settings

settings.register_profile(
    "speclint", deadline=None, derandomize=True, max_examples=60, suppress_health_check=[HealthCheck.too_slow]
)
settings.load_profile("speclint")


@pytest.fixture(scope="session", autouse=True)
def own_cache(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Keep the user's cache out of the tests and the tests out of the user's cache."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("SPECLINT_CACHE", str(tmp_path_factory.mktemp("cache")))
        yield

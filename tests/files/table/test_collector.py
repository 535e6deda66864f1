"""The collector is as it was after a table, however that ends."""

import gc

import pytest

from kitlog.fault import InputFault
from kitlog.files.table.collector import collector_paused


def _fail_while_paused() -> None:
    with collector_paused():
        raise InputFault("table.empty")


def test_it_is_paused_meanwhile_and_on_again_after_a_fault() -> None:
    with collector_paused():
        assert not gc.isenabled()
    assert gc.isenabled()
    with pytest.raises(InputFault):
        _fail_while_paused()
    assert gc.isenabled()


def test_whoever_finds_it_paused_leaves_it_so() -> None:
    with collector_paused():
        with collector_paused():
            assert not gc.isenabled()
        assert not gc.isenabled()
    assert gc.isenabled()

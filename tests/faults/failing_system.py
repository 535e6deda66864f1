"""An operating system whose n-th call fails once: the loop that SQLite's own tests use (sqlite.org/testing.html, 3.2)."""

import errno
import io
import os
import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any, BinaryIO

import pytest

CALLS = ("open", "replace", "rename", "link", "unlink", "fsync", "mkdir")


class FailingSystem:
    """Counts the calls that change files below a folder; the one numbered `fails_at` raises instead."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch, folder: Path, number: int) -> None:
        self.fails_at = 0
        self.calls: list[str] = []
        self.number = number
        self._folder = str(folder)
        for name in CALLS:
            monkeypatch.setattr(os, name, self._counted(name, getattr(os, name)))
        monkeypatch.setattr(os, "fdopen", self._fdopen)
        monkeypatch.setattr(shutil, "copyfileobj", self._counted_copy(shutil.copyfileobj))

    @property
    def failed(self) -> bool:
        """Whether the call that should fail was reached."""
        return 0 < self.fails_at <= len(self.calls)

    def count(self, name: str) -> None:
        """Count one call, or fail."""
        if self.fails_at < 0:
            return
        self.calls.append(name)
        if len(self.calls) == self.fails_at:
            raise OSError(self.number, os.strerror(self.number))

    def _counted(self, name: str, real: Callable[..., Any]) -> Callable[..., Any]:
        def call(target: Any, *args: Any, **kwargs: Any) -> Any:
            if isinstance(target, int) or str(target).startswith(self._folder):
                self.count(name)
            return real(target, *args, **kwargs)

        return call

    def _fdopen(self, handle: int, mode: str) -> BinaryIO:
        system = self

        class Failing(io.BufferedRandom):
            def write(self, content: Any, /) -> int:
                system.count("write")
                return super().write(content)

            def read(self, size: int | None = -1, /) -> bytes:
                system.count("read")
                return super().read(size)

        return Failing(io.FileIO(handle, mode.replace("b", "")))

    def _counted_copy(self, real: Callable[..., None]) -> Callable[..., None]:
        def copy(source: BinaryIO, target: BinaryIO, *args: int) -> None:
            self.count("read")
            target.write(source.read(5_000))
            self.count("write")
            real(source, target, *args)

        return copy


NUMBERS = (errno.ENOSPC, errno.EIO, errno.EACCES)

"""A slower phone: the browser's renderer processes run a part of the time.

DevTools' own throttling does not reach workers, so whole processes are stopped
and let go in turn.
"""

import contextlib
import os
import signal
import threading
import time
from collections.abc import Iterator
from pathlib import Path

RUNNING = 0.005  # s; short beside everything measured


def _parents() -> dict[int, int]:
    parents = {}
    for folder in Path("/proc").iterdir():
        if folder.name.isdigit():
            with contextlib.suppress(OSError):
                after_name = (folder / "stat").read_text().rpartition(")")[2].split()
                parents[int(folder.name)] = int(after_name[1])
    return parents


def _command(pid: int) -> str:
    with contextlib.suppress(OSError):
        return Path(f"/proc/{pid}/cmdline").read_text().replace("\0", " ")
    return ""


def renderers(ancestor: int) -> list[int]:
    """Renderer processes started by `ancestor`, directly or not."""
    parents = _parents()

    def descends(pid: int) -> bool:
        while pid in parents and pid > 1:
            pid = parents[pid]
            if pid == ancestor:
                return True
        return False

    return [pid for pid in parents if descends(pid) and "--type=renderer" in _command(pid)]


@contextlib.contextmanager
def throttled(times: float, ancestor: int | None = None) -> Iterator[None]:
    """Make the renderers that `ancestor` started `times` slower.

    Args:
        times: 1 leaves them alone, 4 lets them run a quarter of the time.
        ancestor: Process they descend from; left out, this one.
    """
    if times == 1:
        yield
        return
    pids = renderers(ancestor or os.getpid())
    over = threading.Event()

    def send(signal_number: signal.Signals) -> None:
        for pid in pids:
            with contextlib.suppress(ProcessLookupError):
                os.kill(pid, signal_number)

    def alternate() -> None:
        while not over.is_set():
            time.sleep(RUNNING)
            send(signal.SIGSTOP)
            time.sleep(RUNNING * (times - 1))
            send(signal.SIGCONT)

    thread = threading.Thread(target=alternate)
    thread.start()
    try:
        yield
    finally:
        over.set()
        thread.join()
        send(signal.SIGCONT)

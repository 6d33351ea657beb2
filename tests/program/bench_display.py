"""A display of its own with a window manager, and the program started on it from an empty home: what
the tests of the whole program share. Keys and pointer are real X events (xdotool)."""

import os
import pathlib
import shutil
import signal
import subprocess
import tempfile
import time

TOP = pathlib.Path(__file__).resolve().parents[2]
PATIENCE_S = 20.0


def wait_for(what, found, patience=PATIENCE_S):
    """What `found` answers as soon as it is neither None, False nor empty."""
    end = time.monotonic() + patience
    while True:
        answer = found()
        if answer:
            return answer
        if time.monotonic() > end:
            raise AssertionError(f"waited {patience:g} s in vain for {what}")
        time.sleep(0.05)


class Display:
    """Xvfb and openbox; `with Display() as display`."""

    def __init__(self, size="1600x1000"):
        self.size = size
        self.home = pathlib.Path(tempfile.mkdtemp(prefix="tackbench-home-"))
        self.programs = []

    def __enter__(self):
        read, write = os.pipe()
        self.server = subprocess.Popen(
            ["Xvfb", "-displayfd", str(write), "-screen", "0", f"{self.size}x24", "-nolisten", "tcp"],
            pass_fds=[write], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        os.close(write)
        with os.fdopen(read) as answer:
            self.name = ":" + answer.readline().strip()
        kept = {name: os.environ[name] for name in ("PATH", "LANG", "LD_LIBRARY_PATH", "ASAN_OPTIONS")
                if name in os.environ}
        self.environment = {**kept, "DISPLAY": self.name, "HOME": str(self.home),
                            "XDG_CONFIG_HOME": str(self.home / "config"),
                            "XDG_DATA_HOME": str(self.home / "data"),
                            "XDG_CACHE_HOME": str(self.home / "cache"),
                            "XDG_RUNTIME_DIR": str(self.home)}
        self.manager = subprocess.Popen(["openbox"], env=self.environment, stdout=subprocess.DEVNULL,
                                        stderr=subprocess.DEVNULL)
        return self

    def __exit__(self, *_):
        for program in [*self.programs, self.manager, self.server]:
            if program.poll() is None:
                program.kill()
            program.wait()
        shutil.rmtree(self.home, ignore_errors=True)

    def start(self, program, *arguments, **more_environment):
        started = subprocess.Popen([program, *arguments], env={**self.environment, **more_environment},
                                   cwd=self.home, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        self.programs.append(started)
        return started

    def xdotool(self, *arguments):
        run = subprocess.run(["xdotool", *map(str, arguments)], env=self.environment,
                             capture_output=True, text=True, check=False)
        return run.stdout

    def windows(self, title):
        """Shown windows with that in their title."""
        return [int(line) for line in
                self.xdotool("search", "--onlyvisible", "--name", title).split()]

    def window(self, title):
        return wait_for(f"a window titled {title!r}", lambda: self.windows(title))[0]

    def title(self, window):
        return self.xdotool("getwindowname", window).strip()

    def numbers(self, *arguments):
        """What xdotool answers in lines NAME=number."""
        return {name: int(value) for name, _, value in
                (line.partition("=") for line in self.xdotool(*arguments).splitlines())
                if value.lstrip("-").isdigit()}

    def window_size(self, window):
        answer = self.numbers("getwindowgeometry", "--shell", window)
        return answer.get("WIDTH"), answer.get("HEIGHT")

    def corner(self, window):
        """The upper left one inside the frame, on the screen. Found by the pointer, which stays there:
        the place that xdotool tells counts the manager's frame twice."""
        self.xdotool("mousemove", "--window", window, 0, 0)
        answer = self.numbers("getmouselocation", "--shell")
        return answer["X"], answer["Y"]

    def drag(self, start, by, steps=8):
        """The pointer's left button down, some way, up; screen coordinates."""
        self.xdotool("mousemove", *start)
        time.sleep(0.2)
        self.xdotool("mousedown", 1)
        for i in range(1, steps + 1):
            self.xdotool("mousemove", start[0] + by[0] * i // steps,
                         start[1] + by[1] * i // steps)
            time.sleep(0.03)
        self.xdotool("mouseup", 1)

    def close(self, window):
        """By the window manager's own key, again when the manager was not ready for it."""
        for _ in range(3):
            self.keys(window, "alt+F4")
            end = time.monotonic() + 5.0
            while time.monotonic() < end:
                time.sleep(0.1)
                if window not in self.windows(""):
                    return
        raise AssertionError("the window does not close")

    def keys(self, window, *keys):
        self.xdotool("windowactivate", "--sync", window)
        self.xdotool("key", "--clearmodifiers", *keys)


def ended(program, patience=PATIENCE_S):
    """Its exit code."""
    try:
        return program.wait(patience)
    except subprocess.TimeoutExpired:
        raise AssertionError("the program did not end") from None


def kill_hard(program):
    program.send_signal(signal.SIGKILL)
    program.wait()

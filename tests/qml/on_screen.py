# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""A screen nobody sees, and programs on it as a person uses them: found by what a screen reader says
(AT-SPI), clicked with a mouse, typed into with keys (xdotool).

Nothing here knows a program's insides: what has no name, or is not in sight, cannot be used.
"""

import os
import re
import subprocess
import time

import gi

gi.require_version("Atspi", "2.0")
from gi.repository import Atspi, GLib  # noqa: E402

WIDTH, HEIGHT = 1700, 900
PATIENCE = 20  # seconds, for a machine with other work to do


class NotThere(Exception):
    """What should be on the screen did not come."""


class Screen:
    """A display of its own, with the bus that screen readers listen on."""

    def __init__(self, folder):
        reading, writing = os.pipe()
        self._server = subprocess.Popen(["Xvfb", "-displayfd", str(writing), "-noreset", "-screen", "0", f"{WIDTH}x{HEIGHT}x24"],
                                        pass_fds=[writing], stderr=subprocess.DEVNULL)
        os.close(writing)
        with os.fdopen(reading) as told:
            os.environ["DISPLAY"] = ":" + told.readline().strip()
        self._bus = subprocess.Popen(["/usr/libexec/at-spi-bus-launcher", "--launch-immediately"], stderr=subprocess.DEVNULL)
        self.folder = folder
        # No setting of this machine, and no display of somebody else, comes in.
        self.environment = {
            "PATH": os.environ["PATH"], "DISPLAY": os.environ["DISPLAY"], "HOME": str(folder), "LC_ALL": "C.UTF-8",
            "TZ": "Europe/Oslo", "XDG_RUNTIME_DIR": os.environ["XDG_RUNTIME_DIR"],
            "DBUS_SESSION_BUS_ADDRESS": os.environ["DBUS_SESSION_BUS_ADDRESS"],
            "QT_QPA_PLATFORM": "xcb", "QT_LINUX_ACCESSIBILITY_ALWAYS_ON": "1",
        }

    def picture(self, file):
        subprocess.run(["import", "-window", "root", str(file)], env=self.environment, check=True)

    def close(self):
        for process in (self._bus, self._server):
            process.terminate()
            process.wait()


class Program:
    """A program with a window, at the top left of the screen."""

    def __init__(self, screen, command):
        self.screen = screen
        self._process = subprocess.Popen([str(part) for part in command], env=screen.environment)
        self._application = self._wait(self._find_application, "its window")

    def _find_application(self):
        if self._process.poll() is not None:
            raise NotThere(f"the program ended with {self._process.returncode}")
        desktop = Atspi.get_desktop(0)
        for index in range(desktop.get_child_count()):
            application = desktop.get_child_at_index(index)
            if application and application.get_process_id() == self._process.pid and application.get_child_count():
                return application
        return None

    @staticmethod
    def _wait(question, what):
        end = time.monotonic() + PATIENCE
        while time.monotonic() < end:
            try:
                if answer := question():
                    return answer
            except GLib.Error:
                pass  # it went while it was looked at
            time.sleep(0.03)
        raise NotThere(f"{what} did not come")

    def _items(self, item, within, inside=False):
        """What is there in the window, whether scrolled to or not; only in parts called WITHIN, if that is given."""
        inside = inside or within is None or bool(re.fullmatch(within, item.get_name()))
        for index in range(item.get_child_count()):
            child = item.get_child_at_index(index)
            if child:
                if inside:
                    yield child
                yield from self._items(child, within, inside)

    @staticmethod
    def _place(item):
        try:
            component = item.get_component_iface()
            box = component.get_extents(Atspi.CoordType.SCREEN) if component else None
        except GLib.Error:
            return None
        return box if box and box.width > 0 and box.height > 0 else None

    def _named(self, name, within=None, nth=0):
        for item in self._items(self._application, within):
            if re.fullmatch(name, item.get_name()) and self._place(item):
                if nth == 0:
                    return item
                nth -= 1
        return None

    def sees(self, name, within=None):
        """Waits until something called NAME, a pattern, is in the window, and gives its whole name."""
        return self._wait(lambda: self._named(name, within), f"'{name}'").get_name()

    def sees_ticked(self, name, within=None, nth=0, ticked=True):
        """Waits until the box called NAME is ticked, or is not."""
        def is_so():
            item = self._named(name, within, nth)
            return item and item.get_state_set().contains(Atspi.StateType.CHECKED) == ticked
        self._wait(is_so, f"'{name}' {'ticked' if ticked else 'empty'}")

    def click(self, name, within=None, nth=0):
        """Scrolls to what is called NAME, in the part called WITHIN, and clicks it with the mouse."""
        x, y = self._scroll_to(name, within, nth)
        xdotool(self.screen, "mousemove", x, y, "click", 1)

    def _scroll_to(self, name, within, nth):
        window = self._place(self._application.get_child_at_index(0))
        top, bottom = window.y + 100, window.y + window.height - 70  # what is said of a file and the bar lie there
        before = None
        for _ in range(60):
            item = self._wait(lambda: self._named(name, within, nth), f"'{name}'")
            box = self._place(item)
            time.sleep(0.06)
            again = self._place(item)
            if box is None or again is None or (box.x, box.y) != (again.x, again.y):
                continue  # the page is still being laid out
            x, y = box.x + box.width // 2, box.y + box.height // 2
            is_at_rest = item.get_parent().get_name() == "Pages" or (x, y) == before  # the end of the page
            if is_at_rest or top <= y <= bottom:
                return x, y
            before = x, y
            xdotool(self.screen, "mousemove", window.x + window.width // 2, window.y + window.height // 2,
                    "click", 5 if y > bottom else 4)
            time.sleep(0.08)
        raise NotThere(f"'{name}' cannot be scrolled to")

    def type(self, text):
        xdotool(self.screen, "type", "--delay", 15, text)

    def key(self, *keys):
        xdotool(self.screen, "key", *keys)

    def kill(self):
        self._process.kill()
        self._process.wait()

    def close(self):
        self._process.terminate()
        self._process.wait()


def xdotool(screen, *what):
    subprocess.run(["xdotool", *(str(part) for part in what)], env=screen.environment, check=True, stdout=subprocess.DEVNULL)


def drag(screen, source, file, to):
    """Drags FILE from the window of the program SOURCE to a place of the screen, as from a file manager."""
    start = (WIDTH - 100, 140)
    process = subprocess.Popen([source, file], env=screen.environment)
    xdotool(screen, "search", "--sync", "--name", "drag source", "windowmove", "%@", start[0] - 80, start[1] - 40)
    xdotool(screen, "mousemove", *start, "mousedown", 1)
    steps = 20
    for step in range(1, steps + 1):
        xdotool(screen, "mousemove", *(round(a + (b - a) * step / steps) for a, b in zip(start, to)))
        time.sleep(0.03)
    time.sleep(0.3)
    xdotool(screen, "mouseup", 1)
    process.wait(PATIENCE)

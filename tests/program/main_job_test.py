"""The main job, by real pointer and keys: the tender's steering box dragged 40 mm back, saved, undone;
and killed in the middle of work that is not saved, started again, taken up again. Environment:
TACKBENCH_BUILD, the build folder."""

import json
import os
import pathlib
import shutil
import subprocess
import time
import unittest

from bench_display import TOP, Display, ended, kill_hard, wait_for

BUILD = pathlib.Path(os.environ["TACKBENCH_BUILD"])
PROGRAM = BUILD / "app/desktop/tackbench"
WHERE = BUILD / "tests/program/tests_program_where"
TENDER = TOP / "sample-projects/tender-as-first-tacked/tender-as-first-tacked.tack"
TITLE = "^The tender as first tacked.* - Tackbench"
SIZE = (1280, 800)
WHEEL_STEPS = 12
BACK_MM = 40


class MainJobTest(unittest.TestCase):
    def setUp(self):
        self.display = Display()
        self.display.__enter__()
        self.addCleanup(self.display.__exit__)
        self.file = self.display.home / "tender.tack"
        shutil.copy(TENDER, self.file)
        places = [float(word) for word in self.asked(
            self.file, *SIZE, "steering_box", WHEEL_STEPS).split()]
        self.box_far, self.box = places[0:2], places[2:4]
        self.scale = places[4]
        self.undo = places[5:9]

    def asked(self, *words):
        return subprocess.run([WHERE, *map(str, words)], env=self.display.environment,
                              capture_output=True, text=True, check=True).stdout

    def opened(self):
        """The program with that file, its window sized and the pointer's wheel turned over the box."""
        bench = self.display.start(PROGRAM, self.file)
        window = self.display.window(TITLE)
        self.display.xdotool("windowsize", window, *SIZE)
        wait_for("the window's size", lambda: self.display.window_size(window) == SIZE)
        time.sleep(1.0)
        return bench, window

    def on_screen(self, window, point):
        x, y = self.display.corner(window)
        return x + int(point[0]), y + int(point[1])

    def drag_box_back(self, window):
        self.display.xdotool("mousemove", *self.on_screen(window, self.box_far))
        self.display.xdotool("click", "--repeat", WHEEL_STEPS, "--delay", 30, 4)
        time.sleep(0.5)
        # The front is to the left.
        self.display.drag(self.on_screen(window, self.box), (round(BACK_MM * self.scale), 0))

    def undo_shown(self, window):
        """What the button that undoes looks like, the pointer being elsewhere."""
        x, y, width, height = self.undo
        at = self.on_screen(window, (x, y))  # the pointer now rests in the window's corner
        time.sleep(0.5)
        return self.asked("--picture", *at, int(width), int(height))

    def saved(self):
        return json.loads(self.file.read_text())

    def expect_box_back(self, before, after):
        for place in ("input_end_mm", "output_point_mm"):
            was, now = before["steering_box"][place], after["steering_box"][place]
            self.assertAlmostEqual(now[0], was[0] - BACK_MM, delta=1.0)
            self.assertEqual(now[1], was[1])
            self.assertAlmostEqual(now[2], was[2], delta=1.0)
        self.assertEqual(after["front_axle"], before["front_axle"])

    def test_the_box_is_dragged_back_saved_and_undone(self):
        bench, window = self.opened()
        self.display.keys(window, "ctrl+s")  # the sample's own text may be written otherwise
        time.sleep(0.5)
        before = self.saved()
        shown = self.undo_shown(window)
        self.drag_box_back(window)
        self.assertNotEqual(self.undo_shown(window), shown, "undo says nothing of the drag")
        self.display.keys(window, "ctrl+s")
        after = wait_for("the file to be saved",
                         lambda: [read for read in [self.saved()] if read != before])[0]
        self.expect_box_back(before, after)
        self.display.keys(window, "ctrl+z", "ctrl+s")
        wait_for("the file as it was", lambda: self.saved() == before)
        self.assertEqual(self.undo_shown(window), shown, "undo still says something")
        self.display.close(window)
        self.assertEqual(ended(bench), 0)

    def test_killed_in_the_middle_the_work_is_offered_again(self):
        bench, window = self.opened()
        before = self.saved()
        self.drag_box_back(window)
        copies = self.display.home / "data/tackbench/tackbench/recovery"
        wait_for("the copy for after a crash", lambda: list(copies.glob("*.json")))
        time.sleep(0.2)
        kill_hard(bench)
        self.assertEqual(self.saved(), before, "the file was touched without saving")

        bench, window = self.opened()
        dialog = self.display.window("^Work that was not saved")
        self.display.keys(dialog, "Return")
        wait_for("the dialog to close", lambda: dialog not in self.display.windows(""))
        self.display.keys(window, "ctrl+s")
        after = wait_for("the file to be saved",
                         lambda: [read for read in [self.saved()] if read != before])[0]
        self.expect_box_back(before, after)
        self.display.close(window)
        self.assertEqual(ended(bench), 0)
        self.assertEqual(list(copies.glob("*.tack")), [], "a copy is left of what was saved")


if __name__ == "__main__":
    unittest.main()

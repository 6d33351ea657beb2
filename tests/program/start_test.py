"""What the program opens when it is started with files, several, wrong ones, none that can be read.
Environment: TACKBENCH_BUILD, the build folder."""

import os
import pathlib
import subprocess
import unittest

from bench_display import TOP, Display, ended, wait_for

BUILD = pathlib.Path(os.environ["TACKBENCH_BUILD"])
PROGRAM = BUILD / "app/desktop/tackbench"
SAMPLES = TOP / "sample-projects"
TIMBER = SAMPLES / "timber-wagon/timber-wagon.tack"
SORTED = SAMPLES / "tender-sorted/tender-sorted.tack"


class StartTest(unittest.TestCase):
    def setUp(self):
        self.display = Display()
        self.display.__enter__()
        self.addCleanup(self.display.__exit__)

    def opened(self, *files):
        return self.display.start(PROGRAM, *files)

    def test_each_of_several_files_has_a_window(self):
        bench = self.opened(TIMBER, SORTED)
        timber = self.display.window("^The timber wagon.* - Tackbench")
        tender = self.display.window("^The tender sorted.* - Tackbench")
        self.display.close(timber)
        self.assertIsNone(bench.poll(), "closing one window ends the other")
        self.display.close(tender)
        self.assertEqual(ended(bench), 0)

    def test_another_window_is_a_bare_start(self):
        bench = self.opened(TIMBER)
        timber = self.display.window("^The timber wagon.* - Tackbench")
        self.display.keys(timber, "ctrl+shift+n")
        other = self.display.window("^A bare start.* - Tackbench")
        self.display.close(other)
        self.display.keys(timber, "ctrl+q")
        self.assertEqual(ended(bench), 0)

    def test_what_cannot_be_opened_leaves_a_bare_start(self):
        folder = self.display.home
        (folder / "broken.tack").write_text("{")
        (folder / "empty.tack").write_text("")
        os.mkfifo(folder / "pipe.tack")
        wrong = ["missing.tack", "broken.tack", "empty.tack", "pipe.tack", "."]
        bench = self.opened(*wrong, TIMBER)
        wait_for("a window for each", lambda: len(
            self.display.windows("^A bare start.* - Tackbench")) == len(wrong))
        timber = self.display.window("^The timber wagon.* - Tackbench")
        self.display.keys(timber, "ctrl+q")
        self.assertEqual(ended(bench), 0)

    def test_it_says_how_it_is_called(self):
        run = subprocess.run([PROGRAM, "--help"], env=self.display.environment, capture_output=True,
                             text=True, check=False)
        self.assertEqual(run.returncode, 0)
        self.assertIn("[FILE...]", run.stdout)


if __name__ == "__main__":
    unittest.main()

"""The Debian package: made, unpacked into a root of its own, complete, and started from there on a
display of its own and from an empty home. Environment: TACKBENCH_BUILD, the build folder."""

import gzip
import os
import pathlib
import re
import shutil
import subprocess
import tempfile
import unittest

from bench_display import TOP, Display, ended, wait_for

BUILD = pathlib.Path(os.environ["TACKBENCH_BUILD"])
SAMPLES = ["bare-start", "tender-as-first-tacked", "tender-sorted", "timber-wagon"]
WANTED = ["usr/bin/tackbench", "usr/bin/tackbench-cli",
          "usr/share/applications/tackbench.desktop",
          "usr/share/mime/packages/tackbench-project.xml",
          "usr/share/icons/hicolor/scalable/apps/tackbench.svg",
          "usr/share/icons/hicolor/scalable/mimetypes/application-x-tackbench-project.svg",
          "usr/share/metainfo/org.example.tackbench.metainfo.xml",
          "usr/share/man/man1/tackbench.1.gz", "usr/share/man/man1/tackbench-cli.1.gz",
          "usr/share/doc/tackbench/copyright", "usr/share/doc/tackbench/changelog.gz",
          "usr/share/doc/tackbench/CHANGELOG.md.gz",
          "usr/share/tackbench/tackbench-project.schema.json",
          "usr/share/tackbench/sample-projects/README.md",
          *[f"usr/share/tackbench/sample-projects/{name}/{file}" for name in SAMPLES
            for file in (f"{name}.tack", "README.md")]]


def said(*command):
    return subprocess.run(command, capture_output=True, text=True, check=True).stdout


def installed_depends():
    """Each installed package's alternatives of what it depends on, and who provides what: under no
    name what every system has."""
    depends = {}
    provided = {}
    for line in said("dpkg-query", "-W", "-f",
                     "${Package}\t${Depends}, ${Pre-Depends}\t${Provides}\t${Essential}\n") \
            .splitlines():
        name, wants, provides, essential = line.split("\t")
        depends[name] = names_in(wants)
        for virtual in names_in(provides):
            provided.setdefault(virtual, set()).add(name)
        if essential == "yes":
            provided.setdefault("", set()).add(name)
    return depends, provided


def names_in(field):
    return [re.split(r"[\s(:]", each.strip())[0] for each in re.split(r"[,|]", field) if each.strip()]


def all_needed(first):
    """Everything that comes with the packages `first`, themselves included."""
    depends, provided = installed_depends()
    needed = set()
    waiting = [*first, ""]
    while waiting:
        name = waiting.pop()
        if name not in needed:
            needed.add(name)
            waiting += [*depends.get(name, []), *provided.get(name, [])]
    return needed


def real_places(path):
    """A path as packages may name it: /lib is /usr/lib."""
    real = os.path.realpath(path)
    return {path, real, real.removeprefix("/usr"), path.removeprefix("/usr")} - {""}


class PackageTest(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = pathlib.Path(tempfile.mkdtemp(prefix="tackbench-package-"))
        cls.addClassCleanup(shutil.rmtree, cls.folder, ignore_errors=True)
        subprocess.run(["cpack", "--config", BUILD / "CPackConfig.cmake", "-B", cls.folder],
                       cwd=BUILD, check=True, capture_output=True)
        cls.package, = cls.folder.glob("tackbench_*.deb")
        cls.root = cls.folder / "root"
        subprocess.run(["dpkg-deb", "-x", cls.package, cls.root], check=True)

    def test_everything_is_in_it_and_nothing_else(self):
        there = {str(path.relative_to(self.root)) for path in self.root.rglob("*") if path.is_file()}
        self.assertEqual(there, set(WANTED))
        for file in self.root.rglob("*"):
            self.assertEqual(file.stat().st_mode & 0o022, 0, f"{file} may be written by anybody")

    def test_its_descriptions_hold(self):
        share = self.root / "usr/share"
        for command in (["desktop-file-validate", share / "applications/tackbench.desktop"],
                        ["appstreamcli", "validate", "--no-net",
                         share / "metainfo/org.example.tackbench.metainfo.xml"],
                        ["update-mime-database", "-V", share / "mime"]):
            run = subprocess.run(command, capture_output=True, text=True, check=False)
            self.assertEqual(run.returncode, 0, f"{command[0]}: {run.stdout}{run.stderr}")
        globs = (share / "mime/globs2").read_text()
        self.assertIn("application/x-tackbench-project:*.tack", globs)
        entry = (share / "applications/tackbench.desktop").read_text()
        self.assertIn("MimeType=application/x-tackbench-project;", entry)
        shutil.rmtree(share / "mime")
        changes = gzip.decompress((share / "doc/tackbench/changelog.gz").read_bytes()).decode()
        version = said("dpkg-deb", "-f", self.package, "Version").strip()
        self.assertTrue(changes.startswith(f"tackbench ({version}) "), changes[:40])

    def test_it_knows_no_source_tree(self):
        for program in ("tackbench", "tackbench-cli"):
            self.assertNotIn(str(TOP).encode(), (self.root / "usr/bin" / program).read_bytes())

    def test_the_command_line_works_from_there(self):
        sample = self.root / "usr/share/tackbench/sample-projects/tender-sorted/tender-sorted.tack"
        run = subprocess.run([self.root / "usr/bin/tackbench-cli", "findings", sample],
                             capture_output=True, text=True, check=False, cwd=self.folder)
        self.assertEqual(run.returncode, 0, run.stderr)
        self.assertIn("shaft.wander", run.stdout)

    def test_the_window_opens_and_closes_and_needs_no_other_package(self):
        with Display() as display:
            folder = self.root / "usr/share/tackbench/sample-projects"
            bench = display.start(self.root / "usr/bin/tackbench",
                                  folder / "timber-wagon/timber-wagon.tack")
            window = display.window("^The timber wagon.* - Tackbench")
            # The view in space, the icon, the drawing's letters by ISO 3098.
            for part in ("libopenglrenderer", "libqsvgicon", "osifont"):
                wait_for(part, lambda name=part: any(name in each for each in self.loaded_by(bench)))
            loaded = self.loaded_by(bench)
            display.close(window)
            self.assertEqual(ended(bench), 0)
        owners = self.owned(loaded)
        depends, recommends = (names_in(said("dpkg-deb", "-f", self.package, field))
                               for field in ("Depends", "Recommends"))
        self.assertEqual(owners - all_needed(depends + recommends), set(),
                         "loaded by the running program, but neither depended on nor recommended")
        # Without these the window would lack something.
        for part in ("libqxcb.so", "libopenglrenderer", "libqsvgicon", "osifont", "swrast_dri"):
            files = [path for path in loaded if part in path]
            self.assertNotEqual(files, [], part)
            self.assertLessEqual(self.owned(files), all_needed(depends), part)

    def test_the_first_start_shows_the_first_page_and_the_sample_inside(self):
        with Display() as display:
            bench = display.start(self.root / "usr/bin/tackbench")
            display.window("^The tender as first tacked.* - Tackbench")
            page = wait_for("the first page", lambda: [
                each for each in display.windows("Tackbench")
                if not display.title(each).startswith("The tender")])[0]
            display.keys(page, "Escape")
            wait_for("the first page to go", lambda: page not in display.windows("Tackbench"))
            display.close(display.window("^The tender as first tacked"))
            self.assertEqual(ended(bench), 0)

    def loaded_by(self, program):
        """Libraries, plugins and fonts in its memory; not its own file."""
        lines = pathlib.Path(f"/proc/{program.pid}/maps").read_text().splitlines()
        paths = {line.split(maxsplit=5)[5] for line in lines if len(line.split(maxsplit=5)) > 5}
        return {path for path in paths if path.startswith("/usr/") or path.startswith("/lib")}

    def owned(self, paths):
        """The packages that these files belong to; caches of fonts belong to none."""
        places = {place for path in paths for place in real_places(path)}
        run = subprocess.run(["dpkg", "-S", *places], capture_output=True, text=True, check=False)
        return {line.split(":")[0] for line in run.stdout.splitlines()}


if __name__ == "__main__":
    unittest.main()

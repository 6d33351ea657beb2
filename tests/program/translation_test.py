"""Every text of the window can be translated: all of them are found for translators, and a
translation is used. Environment: TACKBENCH_BUILD, the build folder."""

import os
import pathlib
import re
import subprocess
import unittest
import xml.etree.ElementTree

from bench_display import TOP, Display

PROGRAM = pathlib.Path(os.environ["TACKBENCH_BUILD"]) / "app/desktop/tackbench"
QT_TOOLS = pathlib.Path("/usr/lib/qt6/bin")
# Calls with a literal; those whose text begins on the next line count too.
CALL = re.compile(r'\btr\(\s*"|QT_TRANSLATE_NOOP\(|QCoreApplication::translate\(\s*"[A-Za-z:]+",\s*"')


class TranslationTest(unittest.TestCase):
    def test_texts_are_found_and_translated(self):
        with Display() as display:
            ts = display.home / "tackbench_de.ts"
            said = subprocess.run([QT_TOOLS / "lupdate", "-I", ".", "ui", "app/desktop", "-ts", ts],
                                  cwd=TOP, capture_output=True, text=True, check=True)
            lost = [line for line in (said.stdout + said.stderr).splitlines()
                    if "lacks Q_OBJECT" in line or "without context" in line]
            self.assertEqual(lost, [], "texts that no translation would reach")

            tree = xml.etree.ElementTree.parse(ts)
            sources = [message.findtext("source") for message in tree.iter("message")]
            calls = sum(len(CALL.findall(file.read_text()))
                        for folder in ("ui", "app/desktop") for file in (TOP / folder).rglob("*.cpp"))
            # Some texts are said more than once.
            self.assertGreater(len(sources), 0.9 * calls)
            for text in ("Drag link", "Undo", "Save cut list...",
                         "exact place of the selected point"):
                self.assertIn(text, sources)

            folder = display.home / "data" / "tackbench" / "translations"
            folder.mkdir(parents=True)
            subprocess.run([QT_TOOLS / "lrelease", "-silent", "-markuntranslated", "#", ts,
                            "-qm", folder / "tackbench_de.qm"], check=True)
            for language, mark in (("de_DE.UTF-8", "#"), ("en_GB.UTF-8", "")):
                answer = subprocess.run([PROGRAM, "--help"], capture_output=True, text=True, check=True,
                                        env={**display.environment, "LANG": language})
                self.assertIn("\n" + mark + "Tackbench: drag the points", answer.stdout)


if __name__ == "__main__":
    unittest.main()

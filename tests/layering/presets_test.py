"""A preset says itself whether tests and window are built: what an earlier configure left in the
cache (app/run without a display wants neither) would otherwise decide what tests/run runs."""

import json
import pathlib
import sys

TOP = pathlib.Path(__file__).resolve().parents[2]
WANTED = ("TACKBENCH_TESTS", "TACKBENCH_WINDOW")
presets = {preset["name"]: preset for preset in
           json.loads((TOP / "CMakePresets.json").read_text())["configurePresets"]}


def variables(name):
    preset = presets[name]
    inherited = variables(preset["inherits"]) if "inherits" in preset else {}
    return {**inherited, **preset.get("cacheVariables", {})}


open_ends = [f"{name} leaves {wanted} to the cache" for name, preset in presets.items()
             if not preset.get("hidden") for wanted in WANTED if wanted not in variables(name)]
print("\n".join(open_ends) or "every preset says so")
sys.exit(bool(open_ends) or variables("release") | dict.fromkeys(WANTED, "ON") != variables("release"))

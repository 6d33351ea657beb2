#!/usr/bin/env python3
"""Judges the kept texts by the published JSON Schema with an outside validator (python3-jsonschema).

Usage: validate_texts.py TOP_FOLDER
Everything in tests/project-file/texts/good and every sample project has to be valid, everything in
texts/bad has to be invalid.
"""
import json
import pathlib
import sys

from jsonschema import Draft202012Validator

top = pathlib.Path(sys.argv[1])
schema = json.loads((top / "resources/tackbench-project.schema.json").read_text(encoding="utf-8"))
Draft202012Validator.check_schema(schema)
validator = Draft202012Validator(schema)

texts = top / "tests/project-file/texts"
good = sorted(texts.glob("good/*.tack")) + sorted(top.glob("sample-projects/*/*.tack"))
bad = sorted(texts.glob("bad/*.tack"))
failures = 0
for path in good:
    for error in validator.iter_errors(json.loads(path.read_text(encoding="utf-8"))):
        failures += 1
        print(f"{path}: {error.json_path}: {error.message}")
for path in bad:
    if validator.is_valid(json.loads(path.read_text(encoding="utf-8"))):
        failures += 1
        print(f"{path}: valid by the schema")
if len(good) < 3 or len(bad) < 12:
    failures += 1
    print(f"only {len(good)} good and {len(bad)} bad texts: is the folder right?")
print(f"{len(good)} good and {len(bad)} bad texts, {failures} surprises")
sys.exit(1 if failures else 0)

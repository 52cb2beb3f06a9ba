PYTHON ?= python3
UV := .tools/bin/uv
BIN := .venv/bin
PAGES := src/loopwright/studio/static/.stamp

.PHONY: demo studio test lint bench fuzz pictures lock clean

demo: $(PAGES)
	$(BIN)/loopwright studio --demo demo-out

# The pages of the studio, where the frontend was changed since they were built.
studio: $(PAGES)

$(PAGES): .venv/.stamp $(shell find frontend -name node_modules -prune -o -type f -print)
	$(UV) pip install -q --python $(BIN)/python --no-deps --build-constraints build-constraints.txt --reinstall-package loopwright -e .
	touch $@

test: $(PAGES)
	$(BIN)/python -m pytest -q

lint: .venv/.stamp
	$(BIN)/ruff check
	$(BIN)/mypy
	$(BIN)/lint-imports --no-cache
	$(BIN)/python -m pytest -q tests/structure/test_sizes.py

bench: .venv/.stamp
	$(BIN)/python -m benchmarks.run

fuzz: .venv/.stamp
	$(BIN)/python -m benchmarks.fuzz_long --lines 100000

pictures: .venv/.stamp
	$(BIN)/python docs/make_pictures.py pictures

lock: .tools/.stamp
	$(UV) pip compile -q --universal --generate-hashes --no-header --python-version 3.11 pyproject.toml --group dev -o requirements-dev.lock

.tools/.stamp:
	$(PYTHON) -c 'import sys; sys.exit("Python 3.11 or newer is needed" if sys.version_info < (3, 11) else 0)'
	$(PYTHON) -m venv .tools
	.tools/bin/python -m pip install -q uv==0.13.8
	touch $@

.venv/.stamp: .tools/.stamp requirements-dev.lock build-constraints.txt pyproject.toml
	$(UV) venv -q --clear --python $(PYTHON) --no-python-downloads .venv
	$(UV) pip sync -q --compile-bytecode --python $(BIN)/python --require-hashes requirements-dev.lock
	$(UV) pip install -q --python $(BIN)/python --no-deps --build-constraints build-constraints.txt -e .
	$(BIN)/python -m compileall -q src
	touch $@

clean:
	rm -rf .venv .tools

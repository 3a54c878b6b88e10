# One command each; `make help` lists them. The environment is made on first use and again when its pins change.
# Only the making of the environment uses the network (pip), and the first `make lint` (npm, where there is one).

PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
# one more than the two processors of a small machine, since tests wait for browser, disk and programs
PROCESSES ?= 3
PINS := pyproject.toml constraints.txt
PIP := $(BIN)/python -m pip --disable-pip-version-check --quiet
INSTALL := $(PIP) install --constraint constraints.txt

SITE_READY := $(VENV)/.site-ready
DEV_READY := $(VENV)/.dev-ready

# Each program that a test starts would compile all modules anew.
unexport PYTHONDONTWRITEBYTECODE

.DEFAULT_GOAL := help
.DELETE_ON_ERROR:
.NOTPARALLEL:
.PHONY: help ready site serve check test lint format schema bench fuzz words parts pins clean

help: ## list these commands
	@sed -n 's/^\([a-z]*\):.*## \(.*\)/make \1\t\2/p' $(MAKEFILE_LIST) | expand -t 16

site: $(SITE_READY) ## check the records and build the site with its sheets into site/
	$(BIN)/undertrim build

serve: $(SITE_READY) ## preview the site in a browser, rebuilt as records are saved
	$(BIN)/undertrim serve

check: $(SITE_READY) ## check all records
	$(BIN)/undertrim check

test: $(DEV_READY) ## run the tests (ARGS="-k units" picks some)
	$(BIN)/pytest --numprocesses $(PROCESSES) $(ARGS)

lint: $(DEV_READY) ## look at style, types and the direction of imports, and at JavaScript and CSS
	$(BIN)/ruff check
	$(BIN)/ruff format --check
	$(BIN)/mypy
	$(BIN)/lint-imports --no-logo
	.ci/lint-web

ready: $(DEV_READY) ## make the environment and nothing else

format: $(DEV_READY) ## mend what ruff can mend, and lay the records out
	$(BIN)/ruff check --fix
	$(BIN)/ruff format
	$(BIN)/undertrim format

schema: $(DEV_READY) ## put the schemas of records together for editors, in schema/editor/
	$(BIN)/python -m undertrim.publish.editor_schema

bench: $(DEV_READY) ## measure speed and size (ARGS="--size 5000": large; ARGS=--mistakes: what the checks find)
	$(BIN)/python tests/bench/bench.py $(ARGS)

fuzz: $(DEV_READY) ## spoil the records at random: nothing may crash or hang (ARGS="--minutes 10")
	$(BIN)/python tests/fuzz/fuzz.py $(ARGS)

words: $(DEV_READY) ## write the template of all texts for translators, and bring the other languages up to date with it
	@mkdir -p .undertrim/words
	$(BIN)/pybabel --quiet extract --mapping-file=pyproject.toml --project=Undertrim --output-file=.undertrim/words/undertrim.pot generator schema site_overrides
	@$(BIN)/python tests/update_languages.py

parts: $(DEV_READY) ## list what others made and we ship, with its licences, in generator/undertrim/PARTS.md
	$(BIN)/python tests/parts_shipped.py

pins: ## renew constraints.txt with the newest versions that pyproject.toml allows
	PYTHON=$(PYTHON) .ci/renew-pins

clean: ## remove what was made, but for the environment in .venv
	rm -rf site build dist node_modules .undertrim .hypothesis .import_linter_cache .mypy_cache .pytest_cache .ruff_cache
	find generator tests -name __pycache__ -prune -exec rm -rf {} +

$(SITE_READY): $(PINS) | $(BIN)/pip
	$(INSTALL) hatchling editables
	$(INSTALL) --no-build-isolation --editable .
	@touch $@

$(DEV_READY): $(PINS) | $(BIN)/pip
	$(INSTALL) hatchling editables
	$(INSTALL) --no-build-isolation --editable '.[dev]'
	@touch $@ $(SITE_READY)

$(BIN)/pip:
	@command -v $(PYTHON) >/dev/null || { echo "Undertrim needs Python 3.11 or newer, and '$(PYTHON)' was not found: install it, or name another with make PYTHON=..." >&2; exit 1; }
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' || { echo "Undertrim needs Python 3.11 or newer; '$(PYTHON)' is $$($(PYTHON) -V 2>&1): name a newer one with make PYTHON=..." >&2; exit 1; }
	@$(PYTHON) -c 'import ensurepip, venv' 2>/dev/null || { echo "'$(PYTHON)' cannot make environments: install its venv module (on Debian the package python3-venv)" >&2; exit 1; }
	$(PYTHON) -m venv $(VENV)

# make dev     the site while you write it: an edit shows by itself (DEV_URL=)
# make serve   build the site and serve it       make test    every test (FAST=1: two minutes)
# make site    build only, for SITE_URL          make bench   measure, beside the stock runtime
# make lint    ruff and mypy                     make lock    renew both lock files
# make zip     the site as one file for a folder
# make engine-lock   ask all requests anew, and list the functions that answers enter
# make mutants whether the tests notice small changes of the code (SEED=, COUNT=)
SHELL := /bin/bash
SITE_URL ?= http://127.0.0.1:8000/
DEV_URL ?= http://127.0.0.1:8001/
export SITE_URL
export NO_MKDOCS_2_WARNING = 1
export BENCHBOOK_RELEASE ?= $(shell sed -n 's/^VERSION = "\(.*\)"/\1/p' calc/release.py), $(or $(shell git log -1 --format=%cs 2>/dev/null),no date)

FIND_PYTHON = for p in $(PYTHON) python3.13 python3.12 python3 python3.14 $$HOME/.pyenv/versions/3.13*/bin/python $$HOME/.pyenv/versions/3.12*/bin/python; do \
	"$$p" -c 'import sys; sys.exit(not (3, 12) <= sys.version_info < (3, 14))' 2>/dev/null && { echo "$$p"; break; }; done
PY := .venv/bin/python

BEFORE = python="$$($(FIND_PYTHON))"; \
	if [ -z "$$python" ]; then echo "Python 3.12 or 3.13 is needed; install it, or name one: make PYTHON=/path/to/python3.13"; exit 1; fi; \
	"$$python" -m site_overrides.build.before

.PHONY: dev serve site zip test bench lint lock engine-lock clean mutants before-dev before-serve before-site before-zip
.NOTPARALLEL:

.venv/ready: requirements.lock
	@if cmp -s requirements.lock $@; then touch $@; else \
	python="$$($(FIND_PYTHON))"; \
	if [ -z "$$python" ]; then echo "Python 3.12 or 3.13 is needed; install it, or name one: make PYTHON=/path/to/python3.13"; exit 1; fi; \
	SECONDS=0; "$$python" -m venv .venv && \
	$(PY) -m pip install --quiet --quiet --disable-pip-version-check --require-hashes -r requirements.lock && \
	cp requirements.lock $@ && printf "%-40s%6d s\n" "Python's packages" $$SECONDS; fi

before-dev:
	@$(BEFORE) dev $(DEV_URL)
before-serve:
	@$(BEFORE) serve $(SITE_URL)
before-site before-zip:
	@$(BEFORE) $(@:before-%=%)

dev: before-dev .venv/ready
	@SITE_URL=$(DEV_URL) $(PY) -m site_overrides.build.dev

site: before-site .venv/ready
	@$(PY) -m site_overrides.build

serve: before-serve .venv/ready
	@$(PY) -m site_overrides.build
	@$(PY) -m site_overrides.build.serve

zip: before-zip .venv/ready
	@$(PY) -m site_overrides.build.zipped

ifdef FAST
test: .venv/ready
	$(PY) -m ruff check .
	$(PY) -m pytest -q -n auto --dist loadfile -m "not browser and not site and not slow" --ignore tests/wasm --ignore tests/build tests calc
else
test: lint
	$(PY) -m site_overrides.build.browser
	SITE_URL=http://127.0.0.1:8123/bench/ $(PY) -m site_overrides.build
	$(PY) -m pytest -q -n auto --dist loadfile --no-loadscope-reorder -m "not browser" tests calc
	BENCHBOOK_SITE=site $(PY) -m pytest -q -n 2 --dist worksteal -m browser
endif

bench: site
	$(PY) -m tests.bench --keep

mutants: .venv/ready
	$(PY) -m tests.mutants --seed $(or $(SEED),14) --count $(or $(COUNT),400) --keep

lint: .venv/ready
	$(PY) -m ruff check .
	$(PY) -m mypy

engine-lock: .venv/ready
	$(PY) -m site_overrides.build.bundle entered

lock:
	$(PY) -m venv .build/lock && .build/lock/bin/pip install --quiet uv==0.13.9
	.build/lock/bin/uv pip compile --quiet pyproject.toml --group site --group test --group lint --universal \
		--python-version 3.12 --generate-hashes --no-emit-index-url --no-header --upgrade -o requirements.lock
	cd site_overrides/runtime && npm install --package-lock-only
	cd tests/bench && npm install --package-lock-only

clean:
	rm -rf site .build .venv

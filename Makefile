# Everything is reached from here; `make help` lists it.

.DEFAULT_GOAL := help
.PHONY: help run test dist long crowd folder kills engines full icons translated fuzz mutants bench coverage setup command visible sheet panels sql chdb check unit content browser pictures size clean

help: ## list what can be made
	@awk -F ':.*## ' '/^[a-z]+:.*## / { printf "  make %-9s %s\n", $$1, $$2 }' $(MAKEFILE_LIST)

run: ## build the app and serve it on 127.0.0.1 (PORT, 8080 unless set)
	@tools/setup.sh run
	@node tools/dist.mjs
	@exec node tools/serve.mjs

test: ## everything that gates a change
	@tools/setup.sh test
	@node tools/test.mjs

dist: ## leave the static files to host in dist/
	@tools/setup.sh run
	@node tools/dist.mjs

# Test targets with laws over random inputs, each a file or a folder of tests/: those that ask for as many as there are, and
# those that ask for a share or a number of their own, since each of their inputs is a whole journal.
USERS = grep -rlE --include=*.rs --exclude-dir=support
TARGETS = tests | sed 's|tests/\([^/.]*\).*|\1|' | sort -u
LAWS = $(shell $(USERS) 'laws\(\)|\binputs\([A-Z]+\)' $(TARGETS))
LONG_LAWS = $(filter-out $(LAWS),$(shell $(USERS) '\binputs\((.+ / .+|[0-9].*|support.*)\)' $(TARGETS)))

long: ## the same laws over a million inputs a family (about half an hour), those of whole journals over 20,000, and cards over ten times the seeds (as long again)
	STEPBOARD_LAW_INPUTS=1000000 cargo test --locked $(addprefix --test ,$(LAWS))
	STEPBOARD_LAW_INPUTS=20000 cargo test --locked $(addprefix --test ,$(LONG_LAWS))
	STEPBOARD_WALKS=500 cargo test --locked --test walk laws
	STEPBOARD_LAW_SEEDS=100000 cargo test --locked --test cards -- --nocapture
	STEPBOARD_CROWD=200 cargo test --locked --test gathered -- --nocapture

folder: ## 10,000 files to each of two real WebDAV servers over a network that does its worst (some minutes)
	STEPBOARD_FOLDER_FILES=10000 cargo test --locked --test folder real -- --nocapture

crowd: ## the crew page with 200 people of 500 answers each, measured against dist/ on an idle machine
	STEPBOARD_CROWD=200 node --test tests/browser/crew.timed.test.mjs

kills: command ## end the browser at 500 moments that nobody picked (KILLS, SEED), against dist/: all that was told as saved is there
	STEPBOARD_KILLS=$(or $(KILLS),500) STEPBOARD_SEED=$(or $(SEED),1) node --test tests/browser/killed.test.mjs

engines: command ## all journeys in Firefox and in WebKitGTK (ENGINE=firefox or webkit: that one alone), against dist/
	@tools/setup.sh test
	@failed=; for engine in $(or $(ENGINE),firefox webkit); do ENGINE=$$engine node tools/test.mjs browser || failed=1; done; [ -z "$$failed" ]

full: ## how a tablet with 100,000 answers starts and deals the next card, against dist/ on an idle machine
	node --test tests/browser/full.mjs

icons: ## draw the icons that home screens ask for
	@node tools/icons.mjs

fuzz: ## readers of what comes from outside under libFuzzer, SECONDS for each of four (900); wants a nightly toolchain
	@node tools/fuzz.mjs $(or $(SECONDS),900)

mutants: ## change rules, process, learning and record in 300 places and see whether a test notices (COUNT, SEED); goes on where it was stopped
	@cargo mutants --version >/dev/null 2>&1 || cargo install --quiet cargo-mutants
	@node tools/mutants.mjs $(or $(COUNT),300) $(or $(SEED),1)

bench: ## how long the model takes, and the same figures beside general-purpose libraries, into DEVELOPERS.md
	@node tools/bench.mjs

sql: ## the queries of sql/ in DuckDB on 1,000,000 generated answers, against the report
	@tools/setup.sh test
	@node tools/sql.mjs duckdb 2000 500

chdb: ## the same in chDB, the in-process build of a distributed engine; it is fetched once and takes 0.9 GB
	@tools/setup.sh chdb
	@node tools/sql.mjs chdb 2000 500

coverage: ## write the table of what is checked against the outside into DEVELOPERS.md
	@node tools/coverage.mjs

visible: ## measure on which woods a slight fault can be seen, into content/panels.toml
	@node tools/visible.mjs

translated: ## once the messages were read that `cargo test --test languages` names: they are translations of the English of now
	STEPBOARD_TRANSLATED=1 cargo test --locked --test languages changed

panels: ## cards that are looked at, drawn over 500 seeds a family
	STEPBOARD_PANEL_SEEDS=500 cargo test --locked --test panels

sheet: ## one page with all faults and woods, three seeds each, for people to look at
	@node tools/sheet.mjs

# Two programs that journeys ask: one solves cards, one makes files of many answers.
command:
	@cargo build --locked --quiet --bin stepboard --example made

setup: ## fetch what the build and the tests need
	@tools/setup.sh test

check: ## formatting, lints, documentation, licences
	@node tools/test.mjs format lint lint-web docs licences

unit: ## the native tests
	@node tools/test.mjs unit

content: ## is content/ in order
	@node tools/test.mjs content

browser: command ## journeys in a headless browser, against dist/
	@node tools/test.mjs dist timed browser

pictures: ## take the pictures of the README from dist/
	@cargo build --quiet
	@node tools/pictures.mjs

size: ## what the app weighs, compressed; `node tools/size.mjs --record` accepts it
	@node tools/test.mjs dist size

clean: ## remove what was built
	cargo clean
	rm -rf dist tests/browser/shots

# Duskweight. `make run` builds and opens the app, `make test` runs every test.
# Go 1.26, a C compiler (for SQLite) and make are all that a machine needs; the browser tests also want a Chromium.

SHELL    := /bin/bash
TOOL     := go tool -modfile=internal/tools/go.mod
FUZZTIME ?= 15s
IMAGE    ?= docker

.PHONY: run build test check fresh browser vet race fuzz torture mutants bench shots words generate image release package-check package-quick vulnerable clean

run: build
	./build/duskweight

build:
	go build -o build/ ./cmd/duskweight

# Everything: vet, fresh templates, all tests with those in a browser.
test: browser vet fresh
	go test -timeout 20m ./...
	@$(MAKE) --no-print-directory left-out

vet:
	go vet ./...

# The committed *_templ.go files are those that the templates give.
fresh:
	$(TOOL) templ generate -check -log-level error

generate:
	$(TOOL) templ generate -log-level error

# Brings a Chromium where the package manager lets us without asking: as root, or where CI is set.
HAVE := { command -v "$${DUSKWEIGHT_CHROMIUM:-chromium}" || command -v chromium-browser || command -v google-chrome || command -v google-chrome-stable; }
browser:
	@if $(HAVE) >/dev/null; then exit 0; fi; \
	if ! command -v apt-get >/dev/null; then exit 0; fi; \
	if [ "$$(id -u)" = 0 ]; then AS=; elif [ -n "$$CI" ] && sudo -n true 2>/dev/null; then AS="sudo -n"; else exit 0; fi; \
	echo "No Chromium here: installing the system's package for the browser tests."; \
	$$AS apt-get -qq update && DEBIAN_FRONTEND=noninteractive $$AS apt-get -qq install -y --no-install-recommends chromium fonts-dejavu-core fonts-liberation >/dev/null \
	|| echo "That did not work; see the end of the tests."

.PHONY: left-out
left-out:
	@if $(HAVE) >/dev/null; then exit 0; fi; \
	echo; echo "Left out, because there is no Chromium on this machine:"; \
	grep -rhoE '^func TestBrowser[A-Za-z0-9_]*' web --include='*_test.go' | sed 's/^func /  /'; \
	echo "To run them: apt-get install chromium (or your system's way), or set DUSKWEIGHT_CHROMIUM to its path."

# What a reviewer would find: form, vet, static analysis, stale templates, code that nothing reaches.
check: vet fresh
	@out=$$(gofmt -l $$(git ls-files -co --exclude-standard '*.go')); if [ -n "$$out" ]; then echo "not gofmted:"; echo "$$out"; exit 1; fi
	$(TOOL) staticcheck ./...
	@out=$$($(TOOL) deadcode -test ./...); if [ -n "$$out" ]; then echo "nothing reaches:"; echo "$$out"; exit 1; fi
	@out=$$($(TOOL) deadcode ./... | grep -v '^\(web/browsertest\|web/webtest\|web/formtest\|internal/witness\)/'); if [ -n "$$out" ]; then echo "only tests reach:"; echo "$$out"; exit 1; fi

# The race detector, on the package whose workers share memory. With SQLite the C code would be compiled once more.
race:
	go test -race -short -timeout 20m ./internal/model/search

# Every fuzz target for FUZZTIME each. A run that ends in the tool's own "context deadline exceeded", with no failing
# input, says nothing about the code (the clock ran out inside an input) and is run once more. Fuzzing compiles all that is
# linked once more; what links SQLite without using it goes without. FUZZ_WITHOUT leaves packages out.
FUZZ_WITHOUT ?=
fuzz:
	@mkdir -p build; \
	for dir in $$(grep -rlE '^func Fuzz' --include='*_test.go' . | xargs -rn1 dirname | sort -u); do \
	  case " $(FUZZ_WITHOUT) " in *" $$dir "*) echo "$$dir is left out"; continue ;; esac; \
	  case $$dir in ./web/page | ./web/projects) export CGO_ENABLED=0 ;; *) unset CGO_ENABLED ;; esac; \
	  for f in $$(grep -hoE '^func Fuzz[A-Za-z0-9_]+' $$dir/*_test.go | sed 's/^func //'); do \
	    for try in 1 2; do \
	      echo "$$dir $$f for $(FUZZTIME)"; \
	      if go test -run '^$$' -fuzz "^$$f\$$" -fuzztime $(FUZZTIME) -fuzzminimizetime 20x $$dir >build/fuzz.log 2>&1; then tail -n 3 build/fuzz.log; break; fi; \
	      tail -n 40 build/fuzz.log; \
	      if [ $$try = 2 ] || grep -q 'Failing input' build/fuzz.log || ! grep -q 'context deadline exceeded' build/fuzz.log; then exit 1; fi; \
	    done; \
	  done; \
	done

# The long forms: ten minutes for each fuzz target, many more draws for each property.
torture:
	$(MAKE) fuzz FUZZTIME=10m
	DUSKWEIGHT_TORTURE=1 go test -timeout 12h -count 1 ./...

# Whether the tests can fail: N changes to the program by chance, one at a time, for FOR at the longest. Another SEED
# makes other changes; IN=internal/draw,internal/model/... changes these packages alone.
N    ?= 50
SEED ?= 1
FOR  ?= 30m
mutants:
	cd internal/tools && go build -o ../../build/mutants ./mutants
	nice -n 10 build/mutants -n $(N) -seed $(SEED) -for $(FOR) $(if $(IN),-in $(IN))

bench:
	go test -run '^$$' -bench . -benchmem ./...

# Pictures of the pages and the printed sheet, into build/shots; those that README.md shows, into testdata/pictures too.
shots: browser
	DUSKWEIGHT_SHOTS=$(CURDIR)/build/shots go test -count 1 -run '^TestBrowser' ./web/...
	for p in idea bench motion sheet; do cp build/shots/readme-$$p.png testdata/pictures/$$p.png || exit 1; done

# Every text that the pages of several plans show, with its page, into build/words.txt: what a reader of the words looks through.
words:
	@mkdir -p build
	DUSKWEIGHT_WORDS=$(CURDIR)/build/words.txt go test -count 1 -timeout 20m -run '^TestEverythingSaid$$' ./web/crawl
	@wc -l build/words.txt

image:
	$(IMAGE) build -t duskweight .

# What is handed to others, into build/release: programs, packages, licences, bills of materials and their sums.
release:
	internal/release/release.sh

# Builds it twice, in two folders and with nothing kept in between, and compares every byte; then tries the package.
package-check:
	internal/release/twice.sh
	internal/release/check.sh

# The package of this machine alone, from the objects that a build left: built, installed, started, asked and removed.
package-quick:
	QUICK=1 OUT=build/package ARCHS="$$(go env GOHOSTARCH)" internal/release/release.sh
	QUICK=1 internal/release/check.sh build/package

# Known holes in what is linked. Needs a network; findings in the standard library go away with a newer Go.
vulnerable:
	$(TOOL) govulncheck ./...

clean:
	rm -rf build

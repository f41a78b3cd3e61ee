# Needs Go alone. Longer work is in .ci.
FUZZTIME ?= 10s

.PHONY: demo build test golden fuzz lint docs cover bench

demo:
	@go run ./cmd/ledgerboard bid scenarios/juniper-lane.yaml

# Without C the program needs no C library to load, which is a fifth of a short run.
build:
	CGO_ENABLED=0 go build -o bin/ ./cmd/ledgerboard

test:
	@.ci/test $(TESTFLAGS)

golden:
	go test ./pkg/cli ./pkg/why -update
	@git diff --stat -- testdata

fuzz:
	@.ci/fuzz $(FUZZTIME)

lint:
	@.ci/lint

docs:
	go run ./cmd/gendocs

cover:
	@mkdir -p bin
	go test -short -coverpkg=./pkg/... -coverprofile=bin/cover.out ./...
	go tool cover -func=bin/cover.out | tail -1

bench:
	go test -run '^$$' -bench . -benchmem ./...

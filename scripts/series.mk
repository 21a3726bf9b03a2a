# A series in several processes at a time on this machine, gathered at the end:
#
#   make -f scripts/series.mk -j 4 JOBS='--list jobs.txt' OUT=out SHARES=8
#   make -f scripts/series.mk share-3 JOBS='job.yaml --each places.csv' OUT=out SHARES=8
#
# The first plans all shares, four at a time, and puts them together into OUT/batch.json and OUT/index.html; the second plans one.
# JOBS are arguments of plan, more options among them. Run again after a stop, it does what is missing. A failed panel stops
# nothing: at the end gather names it, and make fails.

SHARES ?= 2
here := $(dir $(lastword $(MAKEFILE_LIST)))
PLYSCAPE ?= $(firstword $(wildcard $(here)plyscape $(here)../bin/plyscape))
shares := $(addprefix share-,$(shell seq $(SHARES)))

.PHONY: gather $(shares)

gather: $(shares)
	$(PLYSCAPE) gather '$(OUT)'

$(shares): share-%:
	@: $(or $(JOBS),$(error JOBS is missing: the jobs as plan takes them)) $(or $(OUT),$(error OUT is missing: a folder))
	-$(PLYSCAPE) plan $(JOBS) -o '$(OUT)' --share $*/$(SHARES)

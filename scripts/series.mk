# A series of panels in several processes at a time, on one machine or from several on one file system:
#
#   make -f scripts/series.mk -j 4 LIST=jobs.txt OUT=out SHARES=8
#   make -f scripts/series.mk share-3 LIST=jobs.txt OUT=out SHARES=8
#
# The first plans all shares, four at a time, and puts them together into OUT/batch.json and OUT/index.html; the second plans one.
# Run again after a stop, it does what is missing. A failed panel stops nothing: at the end gather names it, and make fails.
# OPTIONS adds options for plan; names of files may not have spaces.

SHARES ?= 2
PLYSCAPE ?= $(dir $(lastword $(MAKEFILE_LIST)))plyscape
shares := $(addprefix share-,$(shell seq $(SHARES)))

.PHONY: gather $(shares)

gather: $(shares)
	$(PLYSCAPE) gather $(OUT)

$(shares): share-%:
	@: $(or $(LIST),$(error LIST is missing: a file with a job a line)) $(or $(OUT),$(error OUT is missing: a folder))
	-$(PLYSCAPE) plan --list $(LIST) -o $(OUT) --share $*/$(SHARES) $(OPTIONS)

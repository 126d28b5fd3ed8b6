package main

import (
	"path/filepath"
	"strings"

	"sawbill/stock"
	"sawbill/stock/job"
)

// planName is the folder of a job's plan if nothing else is said: that of the job itself,
// or of a what-if.
func planName(path string, as job.Changes, units stock.Units) string {
	name := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	if slug := as.Slug(units); slug != "" {
		return name + "-" + slug
	}
	return name + "-plan"
}

package main

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"unicode"

	"sawbill/stock/job"
)

// planName is the folder of a job's plan if nothing else is said: that of the job itself,
// or of a what-if.
func planName(path string, as job.Changes) string {
	name := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	if slug := slugOf(as); slug != "" {
		return name + "-what-if-" + slug
	}
	return name + "-plan"
}

// mostOfSlug keeps the name of a folder short enough to type.
const mostOfSlug = 40

// slugOf names changes in few letters that every file system takes: "smaller-height-2".
// It is empty where nothing is changed.
func slugOf(as job.Changes) string {
	var said []string
	for _, of := range []struct {
		word   string
		values []string
	}{{"smaller", as.Smaller}, {"without", as.Without}, {"count", as.Counts}, {"thickness", as.Thicknesses}} {
		for _, v := range of.values {
			said = append(said, of.word+" "+v)
		}
	}
	if as.Spare > 0 {
		said = append(said, fmt.Sprintf("spare %d", as.Spare))
	}
	whole := strings.Join(said, " ")
	words := strings.FieldsFunc(strings.ToLower(whole), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '.' })
	slug := strings.Trim(strings.Join(words, "-"), ".")
	simple := !strings.ContainsFunc(whole, func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r >= '0' && r <= '9' || r == ' ' || r == '=' || r == '.')
	})
	if letters := []rune(slug); whole != "" && (!simple || len(letters) > mostOfSlug) {
		// Two what-ifs whose names differ in what was left out get folders of their own.
		sum := sha256.Sum256([]byte(whole))
		letters = slices.Clip(letters[:min(len(letters), mostOfSlug)])
		slug = strings.TrimRight(string(letters), "-.") + "-" + hex.EncodeToString(sum[:2])
	}
	return slug
}

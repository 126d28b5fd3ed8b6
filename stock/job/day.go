package job

import (
	"fmt"
	"strings"
	"time"

	"sawbill/stock/fault"
)

// day reads a date, with or without quotes, and keeps it as text.
func day(v value) (string, fault.Fault) {
	const remedy = "write it as year, month and day: 2026-03-05"
	if v.kind != date && v.kind != text && v.kind != cell {
		return "", wrongKind(v, remedy)
	}
	said := strings.TrimSpace(v.text)
	if _, err := time.Parse(time.DateOnly, said); err != nil {
		return "", fault.New(fmt.Sprintf("%q is no day", said), remedy)
	}
	return said, fault.Fault{}
}

// IsDay reports whether said is a date as a rack writes it.
func IsDay(said string) bool {
	_, found := day(value{kind: text, text: said})
	return !found.Found()
}

package rack

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"sawbill/stock"
	"sawbill/stock/fault"
	"sawbill/stock/job"
)

// Rack is a rack's file and what lies beside it. Several programs may use one
// at once.
type Rack struct{ path string }

// At is the rack whose file is at path, which need not be there yet.
func At(path string) Rack {
	// A link stays a link: the file behind it is replaced, and has one lock
	// under all its names.
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	return Rack{path}
}

// Path is the rack's file.
func (r Rack) Path() string { return r.path }

func (r Rack) history() string  { return r.path + ".history" }
func (r Rack) newFile() string  { return r.hidden(".new") }
func (r Rack) lockFile() string { return r.hidden(".lock") }
func (r Rack) folder() string   { return filepath.Dir(r.path) }
func (r Rack) hidden(end string) string {
	return filepath.Join(r.folder(), "."+filepath.Base(r.path)+end)
}

// Read reads what is on hand: the state that the history promises. The error is of type
// [fault.Faults].
func (r Rack) Read() (*job.Rack, error) {
	if text, pending := r.Settle(); pending {
		return job.ParseRack(r.path, []byte(text))
	}
	if !isThere(r.path) {
		return nil, r.none()
	}
	return job.ReadRack(r.path)
}

// Exists reports whether there is a rack's file.
func (r Rack) Exists() bool {
	_, pending := r.Settle()
	return pending || isThere(r.path)
}

func isThere(path string) bool {
	_, err := os.Stat(path)
	return !errors.Is(err, fs.ErrNotExist)
}

// none tells that there is no rack.
func (r Rack) none() error {
	return r.fault("", "there is no such rack", "name its file with --rack, or begin one with sawbill rack add")
}

// begun reports whether there is a rack, or was one.
func (r Rack) begun() bool {
	return isThere(r.path) || isThere(r.history())
}

// fault is one thing that is wrong with the rack.
func (r Rack) fault(subject, cause, remedy string) error {
	return fault.Faults{{File: r.path, Key: subject, Cause: cause, Remedy: remedy}}
}

// numbered is an id that the rack gives.
var numbered = regexp.MustCompile(`^[Rr]([1-9][0-9]{0,6})$`)

// highest is the greatest number of an id that the rack gives.
func highest(pieces []stock.Piece) int {
	most := 0
	for _, p := range pieces {
		if m := numbered.FindStringSubmatch(p.ID); m != nil {
			n, _ := strconv.Atoi(m[1]) // the pattern is a number
			most = max(most, n)
		}
	}
	return most
}

func idOf(number int) string { return "R" + strconv.Itoa(number) }

// indexOf finds a piece by its id, capital letters or not; -1 if there is none.
func indexOf(pieces []stock.Piece, id string) int {
	return slices.IndexFunc(pieces, func(p stock.Piece) bool { return strings.EqualFold(p.ID, id) })
}

package rack

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"unicode/utf8"

	"sawbill/stock/fault"
	"sawbill/stock/store"
)

// versionNow is the version of the lines that are written. Version 1 had no key for it,
// nor "continues". Another key, or another meaning of one, needs another version.
const versionNow = 2

// Entry is one line of a rack's history: a change, and the state it led to.
type Entry struct {
	Version int `json:"v,omitempty"` // 0 in a line of version 1
	// Number counts the changes from 1. State 0 is before the first: no file.
	Number int    `json:"n"`
	Date   string `json:"date,omitempty"`
	What   string `json:"what"` // in few words
	// Out and In are the ids of the pieces that left the rack and entered it.
	Out []string `json:"out,omitempty"`
	In  []string `json:"in,omitempty"`
	// Plan is the code of the plan that was carried out with the change.
	Plan string `json:"plan,omitempty"`
	// Continues are the codes of the plans before it.
	Continues []string `json:"continues,omitempty"`
	// Back is the state that the rack went back to; nil of other changes.
	Back *int `json:"back,omitempty"`
	// Undo tells that the way back was one step: the next goes on from there.
	Undo bool `json:"undo,omitempty"`
	// Highest is the greatest number that an id had so far.
	Highest int `json:"highest"`

	// The file after the change has Put in place of Cut, at the byte At of the
	// file before it. Sum is of the whole file after it.
	At  int     `json:"at"`
	Cut passage `json:"cut,omitempty"`
	Put passage `json:"put,omitempty"`
	Sum string  `json:"sum"`
}

// passage is a part of a file: text in JSON, or bytes that are none.
type passage string

func (p passage) MarshalJSON() ([]byte, error) {
	if utf8.ValidString(string(p)) {
		return json.Marshal(string(p))
	}
	return json.Marshal([]string{base64.StdEncoding.EncodeToString([]byte(p))})
}

func (p *passage) UnmarshalJSON(data []byte) error {
	var text string
	if json.Unmarshal(data, &text) == nil {
		*p = passage(text)
		return nil
	}
	var coded []string
	if err := json.Unmarshal(data, &coded); err != nil || len(coded) != 1 {
		return errors.New("neither text nor bytes")
	}
	raw, err := base64.StdEncoding.DecodeString(coded[0])
	*p = passage(raw)
	return err
}

// sum tells one state from another.
func sum(text string) string {
	digest := sha256.Sum256([]byte(text))
	return hex.EncodeToString(digest[:8])
}

// leads sets how e leads from one text to another, whole lines of it.
func (e *Entry) leads(from, to string) {
	at := 0
	for at < len(from) && at < len(to) && from[at] == to[at] {
		at++
	}
	at = strings.LastIndexByte(from[:at], '\n') + 1
	cut, put := from[at:], to[at:]
	same := 0
	for same < len(cut) && same < len(put) && cut[len(cut)-1-same] == put[len(put)-1-same] {
		same++
	}
	if !beginsLine(cut, len(cut)-same) || !beginsLine(put, len(put)-same) {
		_, whole, _ := strings.Cut(cut[len(cut)-same:], "\n")
		same = len(whole)
	}
	e.At, e.Cut, e.Put, e.Sum = at, passage(cut[:len(cut)-same]), passage(put[:len(put)-same]), sum(to)
}

func beginsLine(s string, at int) bool { return at == 0 || s[at-1] == '\n' }

// after is the text that e makes of the one before; false if it is another's.
func (e Entry) after(text string) (string, bool) {
	if e.At < 0 || e.At > len(text) || !strings.HasPrefix(text[e.At:], string(e.Cut)) {
		return "", false
	}
	return text[:e.At] + string(e.Put) + text[e.At+len(e.Cut):], true
}

// past is the history as it was read.
type past struct {
	entries []Entry
	text    string // of the last state
	good    int64  // bytes up to the end of the last whole line
}

// readPast reads the history; that of a rack which has none is empty. A torn
// last line is passed over.
func (r Rack) readPast() (past, error) {
	data, err := store.ReadLong(r.history())
	if errors.Is(err, fs.ErrNotExist) {
		return past{}, nil
	}
	if err != nil {
		return past{}, r.cannot("read", r.history(), err)
	}
	return r.parsePast(data)
}

func (r Rack) parsePast(data []byte) (past, error) {
	var p past
	damaged := func(line int, cause string) error {
		return fault.Faults{{File: r.history(), Line: line, Cause: cause,
			Remedy: "put back a copy of it, or move it away: the rack then begins a new one"}}
	}
	for rest := data; len(rest) > 0; {
		line, behind, whole := bytes.Cut(rest, []byte("\n"))
		if newer := versionOf(line); whole && newer > versionNow {
			return past{}, fault.Faults{{File: r.history(), Line: len(p.entries) + 1,
				Cause:  fmt.Sprintf("the line is of version %d of the history, this program reads versions 1 to %d", newer, versionNow),
				Remedy: "use the newer Sawbill that wrote it"}}
		}
		var e Entry
		readable := json.Unmarshal(line, &e) == nil
		if !whole || !readable && len(behind) == 0 {
			break // torn
		}
		if !readable || e.Version < 0 || e.Version == 1 || e.Number != len(p.entries)+1 || e.Back != nil && (*e.Back < 0 || *e.Back >= e.Number) || e.Undo && e.Back == nil {
			return past{}, damaged(len(p.entries)+1, "the line is not as it was written")
		}
		text, follows := e.after(p.text)
		if !follows {
			return past{}, damaged(len(p.entries)+1, "the change does not follow from those before it")
		}
		p.entries, p.text = append(p.entries, e), text
		p.good += int64(len(line)) + 1
		rest = behind
	}
	if n := len(p.entries); n > 0 && sum(p.text) != p.entries[n-1].Sum {
		return past{}, damaged(n, "the changes do not lead to the state that it tells of")
	}
	return p, nil
}

// versionOf is the version that a line says it has; 0 if it says none.
func versionOf(line []byte) int {
	var of struct {
		Version int `json:"v"`
	}
	if json.Unmarshal(line, &of) != nil {
		return 0
	}
	return of.Version
}

// state is the text of an earlier state.
func (p past) state(number int) string {
	text := ""
	for _, e := range p.entries[:number] {
		text, _ = e.after(text) // it did when the history was read
	}
	return text
}

func (p past) last() int { return len(p.entries) }

func (p past) highest() int {
	if len(p.entries) == 0 {
		return 0
	}
	return p.entries[len(p.entries)-1].Highest
}

// before is the state to which one step back leads from the state given, and
// the change that the step takes back, which is 0 where there is none. A step
// back that was made already is no change to take back.
func (p past) before(state int) (back, change int) {
	for state > 0 {
		e := p.entries[state-1]
		if !e.Undo {
			return state - 1, state
		}
		state = *e.Back
	}
	return 0, 0
}

// carriedOut reports whether a plan's change is among those that led to a state.
func (p past) carriedOut(plan string, state int) (Entry, bool) {
	for state > 0 {
		e := p.entries[state-1]
		switch {
		case e.Back != nil:
			state = *e.Back
			continue
		case e.Plan == plan, slices.Contains(e.Continues, plan):
			return e, true
		}
		state--
	}
	return Entry{}, false
}

// line is e as the history has it.
func (e Entry) line() []byte {
	data, err := json.Marshal(e)
	if err != nil {
		panic("rack: an entry that is no JSON: " + err.Error())
	}
	return append(data, '\n')
}

// History lists every change, the first one first.
func (r Rack) History() ([]Entry, error) {
	r.Settle() // only then it has a change that was given up
	p, err := r.readPast()
	return p.entries, err
}

// BookedBy returns the change that carried a plan out, if there is one that was not taken
// back.
func (r Rack) BookedBy(plan string) (by Entry, booked bool, err error) {
	r.Settle()
	p, err := r.readPast()
	if err != nil {
		return Entry{}, false, err
	}
	by, booked = p.carriedOut(plan, p.last())
	return by, booked, nil
}

func (r Rack) cannot(what, path string, err error) error {
	if no := (*store.NoInput)(nil); errors.As(err, &no) {
		return fault.Faults{{File: path, Cause: no.Cause, Remedy: no.Remedy}}
	}
	return fault.Faults{{File: path, Cause: fmt.Sprintf("cannot be %s (%v)", what, store.Bare(err)), Remedy: "nothing was changed; look at the folder and its permissions"}}
}

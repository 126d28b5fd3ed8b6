package store

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"sawbill/stock/fault"
)

// listVersion is the version of [list]. Another key needs another version.
const listVersion = 1

// list is the file .sawbill-files: which files of a folder the program wrote.
type list struct {
	Version int      `json:"v"`
	Kind    string   `json:"kind"`
	Files   []listed `json:"files"`
	// Once says when a change that waits in .sawbill-new is made: as soon as a record
	// says so. Empty in the list of a folder.
	Once *Once `json:"once,omitempty"`
}

// listed is a file with the SHA-256 of what the program wrote.
type listed struct {
	Name string `json:"name"`
	Sum  string `json:"sha256"`
}

func sumOf(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

func listOf(kind string, files []File, once *Once) list {
	l := list{Version: listVersion, Kind: kind, Once: once}
	for _, f := range files {
		l.Files = append(l.Files, listed{f.Name, sumOf(f.Data)})
	}
	return l
}

func (l list) bytes() []byte {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	if err := e.Encode(l); err != nil {
		panic("store: a list that is no JSON: " + err.Error())
	}
	return b.Bytes()
}

// sum returns the sum of a file of the list; empty for any other.
func (l list) sum(name string) string {
	for _, f := range l.Files {
		if f.Name == name {
			return f.Sum
		}
	}
	return ""
}

// readListAt reads a list; one that is not there is empty.
func (f Folder) readListAt(path string) (list, error) {
	data, err := Read(path)
	if errors.Is(err, fs.ErrNotExist) {
		return list{}, nil
	}
	if err != nil {
		return list{}, fault.Faults{{File: path, Cause: fmt.Sprintf("cannot be read (%v)", Bare(err)), Remedy: "check its permissions"}}
	}
	var version struct {
		Version int `json:"v"`
	}
	var l list
	err = json.Unmarshal(data, &version)
	switch {
	case err == nil && version.Version > listVersion:
		return list{}, fault.Faults{{File: path, Cause: fmt.Sprintf("the list is of version %d, this program reads version %d", version.Version, listVersion),
			Remedy: "use the newer Sawbill that wrote it"}}
	case err == nil:
		err = json.Unmarshal(data, &l)
	}
	if err != nil || l.Version != listVersion || !l.sound() {
		return list{}, damaged{fault.Faults{{File: path, Cause: "the list of the folder's files is not as it was written", Remedy: "put back a copy of it, or name another folder"}}}
	}
	return l, nil
}

// damaged is the error of a list that is not as it was written.
type damaged struct{ fault.Faults }

func (d damaged) Unwrap() error { return d.Faults }

// sound refuses names that lead out of the folder.
func (l list) sound() bool {
	return !slices.ContainsFunc(l.Files, func(f listed) bool {
		return f.Name == "" || f.Name == "." || f.Name == ".." || filepath.Base(f.Name) != f.Name
	})
}

// readList reads the list of the folder.
func (h *Held) readList() (err error) {
	h.list, err = h.readListAt(h.at(listName))
	if of := (damaged{}); errors.As(err, &of) {
		of.Faults[0].Remedy = "put back a copy of it; if there is none, delete it: the files then count as the program wrote them"
	}
	return err
}

// Listed reports whether the program wrote files into the folder and knows which.
func (h *Held) Listed() bool { return h.list.Version > 0 }

// Kind is the kind of files that the program wrote into the folder; empty if it wrote
// none.
func (h *Held) Kind() string { return h.list.Kind }

// Adopt counts files as written by the program, as they are now. It is for a folder of a
// version of the program that kept no list.
func (h *Held) Adopt(ours func(name string) bool) error {
	there, err := os.ReadDir(h.path)
	if err != nil {
		return h.wrong("", fmt.Sprintf("the folder cannot be looked through (%v)", Bare(err)), "check its permissions")
	}
	h.list = list{Version: listVersion, Kind: h.kind}
	for _, e := range there {
		if !e.Type().IsRegular() || !ours(e.Name()) {
			continue
		}
		data, err := os.ReadFile(h.at(e.Name()))
		if err != nil {
			return h.wrong(e.Name(), fmt.Sprintf("cannot be read (%v)", Bare(err)), "check its permissions")
		}
		h.list.Files = append(h.list.Files, listed{e.Name(), sumOf(data)})
	}
	return nil
}

// theirs reports files of the user that are in the way of those coming, or that would be
// removed. A file belongs to the user if the list of before lacks it, or if it was edited
// since.
func (h *Held) theirs(before, after list, coming []listed, remedy string) error {
	var faults fault.Faults
	for _, f := range coming {
		switch {
		case !present(h.at(f.Name)):
		case before.sum(f.Name) == "":
			faults = append(faults, fault.Fault{File: h.at(f.Name), Cause: "this program did not write it, and it would be replaced", Remedy: remedy})
		case h.edited(before, f.Name):
			faults = append(faults, fault.Fault{File: h.at(f.Name), Cause: "it was changed by hand, and the change would be lost", Remedy: remedy})
		}
	}
	for _, f := range before.Files {
		if after.sum(f.Name) == "" && present(h.at(f.Name)) && h.edited(before, f.Name) {
			faults = append(faults, fault.Fault{File: h.at(f.Name), Cause: "it was changed by hand, and the change would be lost", Remedy: remedy})
		}
	}
	return faults.OrNil()
}

// edited reports whether a file is other than the list has it.
func (h *Held) edited(l list, name string) bool {
	info, err := os.Lstat(h.at(name))
	if err != nil || !info.Mode().IsRegular() {
		return true
	}
	data, err := os.ReadFile(h.at(name))
	return err != nil || sumOf(data) != l.sum(name)
}

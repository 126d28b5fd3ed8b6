package shop

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/shop/planfile"
	"sawbill/stock/store"
)

// before is the folder of the plan that this one continues; nil of a job's first plan, and
// where that folder is not known or not there.
func (f *Folder) before() *Folder {
	if len(f.plan.Continues) == 0 {
		return nil
	}
	paths := []string{f.from(f.plan.Before)}
	if f.plan.Before == "" { // version 1 of the file does not say
		paths = namesBefore(f.path)
	}
	for _, path := range paths {
		b := folderAt(path)
		info, err := os.Stat(b.planPath())
		if err != nil {
			continue
		}
		if p := f.pred; p != nil && p.path == b.path && unchanged(p.read, info) {
			return p
		}
		if p, err := planfile.Read(b.planPath()); err == nil && p.Code == f.plan.Continues[len(f.plan.Continues)-1] {
			b.read, b.plan = info, p
			f.pred = b
			return b
		}
	}
	return nil
}

// there reports whether the folder of a successor holds it. The user may have moved it, or
// thrown it away.
func (s Successor) there() bool {
	p, err := planfile.Read(filepath.Join(s.Folder, planfile.Name))
	return err == nil && p.Code == s.Code
}

// withdrawn reports whether the plan is a rest that was taken back, and where its
// predecessor is. Where the predecessor has gone this plan is the one that is left.
func (f *Folder) withdrawn() (before string, withdrawn bool, err error) {
	b := f.before()
	if b == nil {
		return "", false, nil
	}
	entries, err := b.record.Read()
	if err != nil {
		return b.path, false, err
	}
	named := f.naming(b, entries)
	return b.path, len(named) > 0 && len(f.naming(b, store.Standing(entries))) == 0, nil
}

// naming selects the entries of the predecessor's record that name this plan as its
// successor. The folder that they name is this one, or one that was moved since: that may
// be this one too.
func (f *Folder) naming(before *Folder, entries []store.Entry) []store.Entry {
	return slices.DeleteFunc(slices.Clone(entries), func(e store.Entry) bool {
		if len(e.Did) == 0 {
			return true
		}
		word, value, _ := strings.Cut(e.Did[0], " ")
		next, ok := before.successorOf(value)
		return word != continuedWord || !ok || next.Code != f.plan.Code || !samePlace(next.Folder, f.path) && next.there()
	})
}

// samePlace reports whether two paths lead to one folder or file.
func samePlace(a, b string) bool {
	one, err := os.Stat(a)
	other, wrong := os.Stat(b)
	if err != nil || wrong != nil {
		return filepath.Clean(a) == filepath.Clean(b)
	}
	return os.SameFile(one, other)
}

// oldSuccessor finds the rest of a plan of version 1 in the folder that version 1 gave it:
// the record does not name it. A rest that was withdrawn since does not count.
func (f *Folder) oldSuccessor(entries []store.Entry) *Successor {
	path := nameAfter1(f.path)
	if !present(filepath.Join(path, planfile.Name)) {
		return nil
	}
	next := folderAt(path)
	p, err := planfile.Read(next.planPath())
	if err != nil || p.Before != "" || len(p.Continues) == 0 || p.Continues[len(p.Continues)-1] != f.plan.Code {
		return nil
	}
	next.plan = p
	if len(next.naming(f, entries)) > 0 {
		return nil
	}
	return &Successor{Code: p.Code, Number: p.Number, Folder: path}
}

// nameAfter1 is the folder that version 1 gave to the rest of a plan.
func nameAfter1(path string) string {
	path = besides(path)
	at := strings.LastIndex(path, "-")
	if n, err := strconv.Atoi(path[at+1:]); at >= 0 && err == nil && n > 1 && n < 100 { // not a year
		return path[:at+1] + strconv.Itoa(n+1)
	}
	return path + "-2"
}

// namesBefore are the folders of which version 1 gave this one its name.
func namesBefore(path string) []string {
	path = besides(path)
	at := strings.LastIndex(path, "-")
	n, err := strconv.Atoi(path[at+1:])
	if at < 0 || err != nil {
		return nil
	}
	return []string{path[:at+1] + strconv.Itoa(n-1), path[:at]}
}

// besides is a path to which a number can be added: that of a folder from outside.
func besides(path string) string {
	path = filepath.Clean(path)
	if base := filepath.Base(path); base == "." || base == ".." {
		if whole, err := filepath.Abs(path); err == nil {
			return whole
		}
	}
	return path
}

var numbered = regexp.MustCompile(`-\d+$`)

// nextFolder is the default folder of the rest: the name of the plan's folder with the next
// number of the lineage that no folder has.
func (f *Folder) nextFolder(ctx context.Context) (folder string, number int, err error) {
	base := besides(f.path)
	if f.plan.Number > 1 && strings.HasSuffix(base, fmt.Sprintf("-%d", f.plan.Number)) {
		base = numbered.ReplaceAllString(base, "")
	}
	for number = f.nextNumber(); ; number++ {
		folder = fmt.Sprintf("%s-%d", base, number)
		if left := store.FolderAt(folder, kind); left.There() {
			// A rest that a program was stopped in goes, with its folder.
			if err := left.Tidy(ctx); err != nil {
				return "", 0, err
			}
		}
		if !present(folder) {
			return folder, number, nil
		}
	}
}

// nextNumber is the first number that no plan of the lineage has had.
func (f *Folder) nextNumber() int { return max(f.plan.Number, f.life.highest) + 1 }

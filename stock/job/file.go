package job

import (
	"cmp"
	"fmt"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"sawbill/stock"
	"sawbill/stock/casework"
	"sawbill/stock/fault"
	"sawbill/stock/store"
)

// File is a job as its files tell it: nothing in it is wrong.
type File struct {
	stock.Job
	// Case is the case its parts were derived from, nil without a [case].
	Case *casework.Case
	// Labels are the sheets that labels are printed on.
	Labels stock.LabelGrid
	// Warnings are worth reading, but the job can be planned as it is.
	Warnings []fault.Fault
	// Lists are the part lists that belong to the job, in the order named.
	Lists []string
	// Sources are all files that the job was read from, the job file first. [Reread]
	// makes the same job of them.
	Sources []Source
	// Rack is the file of the rack whose pieces joined the stock, or empty.
	Rack string
}

// Read reads the job file at path and the part lists and the rack it names, which
// are looked for beside it. The error is of type [fault.Faults] and holds every fault.
func Read(path string) (*File, error) { return ReadChanged(path, Changes{}) }

// ReadChanged is Read as if the files said otherwise.
func ReadChanged(path string, as Changes) (*File, error) { return ReadSettled(path, as, nil) }

// ReadSettled is ReadChanged of a job whose rack may have a change pending. It calls
// settle with the path of the rack's file before it reads that. If settle reports a
// change as pending still, its text counts as what is in the file.
func ReadSettled(path string, as Changes, settle Settler) (*File, error) {
	return read(path, func(name string) string { return besideFile(path, name) }, store.Read, settle, as)
}

// Settler finishes a pending change of a rack, by the path of its file, if it can.
type Settler func(rack string) (text string, pending bool)

// besideFile is where a file is that the one at path names.
func besideFile(path, name string) string {
	if filepath.IsAbs(name) {
		return name
	}
	return filepath.Join(filepath.Dir(path), filepath.FromSlash(name))
}

// Source is a file as it was read: plain text, whatever its encoding was.
type Source struct{ Name, Text string }

// Reread is [ReadChanged] of files as they were read before.
func Reread(sources []Source, as Changes) (*File, error) {
	if len(sources) == 0 {
		return nil, fault.Faults{{File: "job", Cause: "there is no file of it", Remedy: "plan the job again"}}
	}
	beside := func(name string) string { return besideFile(sources[0].Name, name) }
	open := func(name string) ([]byte, error) {
		for _, s := range sources {
			if filepath.ToSlash(s.Name) == filepath.ToSlash(name) { // stored names have slashes
				return []byte(s.Text), nil
			}
		}
		return nil, fs.ErrNotExist
	}
	return read(sources[0].Name, beside, open, nil, as)
}

// ReadFS is Read within a file system, such as one in memory.
func ReadFS(fsys fs.FS, name string) (*File, error) {
	beside := func(list string) string { return path.Join(path.Dir(name), list) }
	return read(name, beside, func(name string) ([]byte, error) { return fs.ReadFile(fsys, name) }, nil, Changes{})
}

// read reads the job called name. Part lists are found by beside.
func read(name string, beside func(string) string, open func(string) ([]byte, error), settle Settler, as Changes) (*File, error) {
	r := &reader{settle: settle, layout: fileKeys, files: []string{name}, changes: as}
	at := place{file: name}
	source, unread := openText(name, open)
	if len(unread) > 0 {
		r.mistakes(at, unread)
		return nil, r.err()
	}
	sources := []Source{{name, source}}
	root, mistakes := parseTOML([]byte(source))
	whole := true
	for _, m := range mistakes {
		whole = whole && m.Key != ""
	}
	r.mistakes(at, mistakes)
	file := r.job(root, at, func(list string, settle Settler) (string, string, []fault.Fault) {
		full, open := beside(list), open
		if settle != nil {
			if text, pending := settle(full); pending {
				open = func(string) ([]byte, error) { return []byte(text), nil }
			}
		}
		source, found := openText(full, open)
		sources = append(sources, Source{full, source})
		return full, source, found
	}, whole)
	if err := r.err(); err != nil {
		return nil, err
	}
	inFileOrder(r.warnings, r.files)
	file.Warnings, file.Sources = r.warnings, sources
	return file, nil
}

// listOpener finds and opens a part list, or a rack once it is settled: its full name and
// its text, or what keeps it from being read.
type listOpener func(name string, settle Settler) (full, source string, found []fault.Fault)

// job reads the tree of a job file. The tree is whole when every key of the
// file could be made out; of one that is not, nothing is said to be missing.
func (r *reader) job(root *table, at place, open listOpener, whole bool) *File {
	top := r.read(root, fileKeys, at)
	if top.text("units") == stock.Inches.String() {
		r.ruler.Units = stock.Inches
	}
	file := &File{}
	file.Title = cmp.Or(top.text("title"), strings.TrimSuffix(filepath.Base(at.file), filepath.Ext(at.file)))
	file.Units = r.ruler.Units

	saw, offcut := r.section(root, "saw", at), r.section(root, "offcut", at)
	allowed := r.allowances(root, at, saw)
	file.Saw = sawOf(saw)
	r.changes.setKerf(r, &file.Saw)
	file.Shortest = r.section(root, "milling", at).length("shortest")
	file.Offcut = r.offcut(offcut, saw)
	file.Transport = r.transport(root, at)
	file.Labels = r.labels(root, at)

	r.shopping(root, at, &file.Job)
	offers := r.offers(root, at, file.Saw.Kerf)
	whole = r.lists(top, "offers", open, file, func(source string, at place) {
		offers = append(offers, r.priceList(source, at, file.Saw.Kerf)...)
	}) && whole
	if n := len(offers); n > mostOffers {
		r.fault(at, fault.New(fmt.Sprintf("the job has %d offers, and at most %d are compared", n, mostOffers), "leave out what no part is cut from"))
		offers, whole = nil, false
	}
	r.together(offers)
	were := r.changes.remeasure(r, offers)
	rough := r.rough(root, at, offers)
	wanted := r.parts(root, at, allowed)
	whole = r.lists(top, "parts", open, file, func(source string, at place) {
		wanted = append(wanted, r.partList(source, at, allowed)...)
	}) && whole
	if !r.roomForRows(wanted) || !r.roomForMaterials(offers, rough, wanted) {
		return file
	}
	file.Densities = allowed.densities(offers)
	onHand, ok := r.onHand(top, open, offers, rough, file)
	whole = whole && ok
	derived, left, ok := r.derive(root, at, slices.Concat(offers, unlike(onHand, offers, rough)), rough, allowed, file, whole)
	wanted = append(wanted, derived...)
	wanted = r.changes.parts(r, append(wanted, r.changes.added(r, wanted, allowed)...), were, left, file.Offcut)
	whole = whole && ok

	if whole {
		r.offered(allowed, slices.Concat(offers, onHand), rough)
	}
	r.nameEach(wanted)
	r.match(wanted, offers, onHand, rough, file.Job, whole)
	for _, o := range slices.Concat(offers, serving(onHand, wanted)) {
		file.Stock = append(file.Stock, o.pieces()...)
	}
	for _, l := range rough {
		file.Rough = append(file.Rough, l.Rough)
	}
	for _, w := range wanted {
		file.Parts = append(file.Parts, w.Part)
	}
	return file
}

// lists opens the lists that a key of the job file names and has each read. It reports
// whether all could be opened.
func (r *reader) lists(top record, key string, open listOpener, file *File, read func(source string, at place)) bool {
	all := true
	for _, name := range top.fields[key].files {
		full, source, unread := open(name, nil)
		if slices.Contains(r.files, full) {
			unread = []fault.Fault{fault.New("is named twice", "name each list once")}
		}
		if len(unread) > 0 {
			r.unread(top.where(key).of(key), name, full, unread)
			all = false
			continue
		}
		r.files = append(r.files, full)
		file.Lists = append(file.Lists, full)
		read(source, place{file: full})
	}
	return all
}

// unread tells why the file named at a place could not be read: there, or in its own
// lines.
func (r *reader) unread(named place, name, full string, why []fault.Fault) {
	for _, m := range why {
		if m.Line == 0 {
			r.fault(named, fault.New(name+": "+m.Cause, m.Remedy))
			continue
		}
		if !slices.Contains(r.files, full) {
			r.files = append(r.files, full)
		}
		r.fault(place{file: full, line: m.Line}, m)
	}
}

// section reads the [name] of a job file; without one, all is as default.
func (r *reader) section(root *table, name string, at place) record {
	t := &table{}
	if v, there := root.last(name); there && v.kind != broken {
		found := fault.Fault{}
		if t, found = single(name, *v); found.Found() {
			r.fault(at.at(v.line).of(name), found)
			t = &table{line: v.line}
		}
	}
	return r.read(t, keysOf(name, r.layout), at.of(name))
}

func sawOf(rec record) stock.Saw {
	return stock.Saw{
		Kerf:             rec.length("kerf"),
		ResawKerf:        rec.length("resaw_kerf"),
		RipCapacity:      rec.length("rip_capacity"),
		CrosscutCapacity: rec.length("crosscut_capacity"),
		NarrowestRip:     rec.length("narrowest_rip"),
		Stages:           rec.count("stages"),
		FirstCut:         firstCut(rec.text("first_cut")),
		BoardFirstCut:    firstCut(rec.text("board_first_cut")),
	}
}

func firstCut(word string) stock.FirstCut {
	return map[string]stock.FirstCut{"rip": stock.FirstRip, "crosscut": stock.FirstCrosscut}[word]
}

// offcut reads what is worth keeping. An offcut narrower than the narrowest
// rip could not be ripped: a default gives way, a width that was written is a
// fault.
func (r *reader) offcut(rec, saw record) stock.Offcut {
	offcut := stock.Offcut{Length: rec.length("length"), Width: rec.length("width")}
	narrowest := saw.length("narrowest_rip")
	if !saw.sound || !rec.sound || narrowest <= offcut.Width {
		return offcut
	}
	if rec.given("width") {
		r.fault(rec.where("width").of("width"), fault.New(
			r.ruler.PrintUnit(offcut.Width)+" is narrower than the narrowest rip (saw.narrowest_rip is "+r.ruler.PrintUnit(narrowest)+"), so such an offcut could not be ripped",
			"raise it to "+r.ruler.PrintUnit(narrowest)+" or more",
		))
	}
	offcut.Width = narrowest
	return offcut
}

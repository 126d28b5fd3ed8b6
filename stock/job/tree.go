package job

import (
	"bytes"
	"errors"
	"regexp"
	"slices"
	"sort"
	"strings"

	"sawbill/stock/fault"

	"github.com/pelletier/go-toml/v2/unstable"
)

// kind is the notation of a value.
type kind int

const (
	broken kind = iota // could not be parsed; a fault was given for it
	text
	number
	truth
	date
	list
	group // a table
	cell  // of a part list, where numbers and text look alike
)

// String names a kind as messages do.
func (k kind) String() string {
	return [...]string{"nothing", "text", "a number", "true or false", "a date", "a list", "a table", "a cell"}[k]
}

// value is the value of a key. Numbers are kept as they were written.
type value struct {
	kind  kind
	line  int
	fixed bool   // of a list: written in brackets, so that [[key]] cannot add to it
	text  string // of text, unquoted; of number, truth and date, as written
	list  []value
	table *table
}

// table is the keys of one [table], {table}, or row of a part list, in the
// order in which they were written. A key that was given twice is there twice.
type table struct {
	line    int
	made    making
	entries []entry
}

// making is how a table came about. TOML forbids to open or to extend some of
// them again.
type making int

const (
	byHeader making = iota // [a] or [[a]]
	byPath                 // a on the way to [a.b]: its own header may follow
	byDots                 // a in a.b = value: more dotted keys may follow
	inBraces               // {b = value}: complete
	byRow                  // a row of a part list
	byFlags                // of a command line
)

type entry struct {
	key   string
	line  int
	value value
}

func (t *table) add(key string, line int, v value) {
	t.entries = append(t.entries, entry{spelled(key), line, v})
}

// last is the latest value of a key.
func (t *table) last(key string) (*value, bool) {
	for i := range slices.Backward(t.entries) {
		if t.entries[i].key == key {
			return &t.entries[i].value, true
		}
	}
	return nil, false
}

// parseTOML reads source into a tree. It goes on after a line that it cannot
// parse, so that the rest is read too; the key of such a line, when it can be
// made out, is in the tree with a broken value.
func parseTOML(source []byte) (*table, []fault.Fault) {
	b := builder{root: &table{line: 1}, source: source}
	b.current = b.root
	for start := 0; start < len(source); {
		start = b.parseFrom(start)
	}
	return b.root, b.mistakes
}

type builder struct {
	source        []byte
	lineStarts    []int
	root, current *table
	mistakes      []fault.Fault

	parser unstable.Parser
	offset int // of the parser's data in source
}

// parseFrom parses from the offset start to the end or the next mistake, and
// returns where to go on.
func (b *builder) parseFrom(start int) int {
	b.offset = start
	b.parser.Reset(b.source[start:])
	for b.parser.NextExpression() {
		b.take(b.parser.Expression())
	}
	var wrong *unstable.ParserError
	if !errors.As(b.parser.Error(), &wrong) {
		return len(b.source)
	}
	at := start
	if len(wrong.Highlight) > 0 {
		at += int(b.parser.Range(wrong.Highlight).Offset)
	} else {
		at = max(start, len(b.source)-1)
	}
	lineStart := bytes.LastIndexByte(b.source[:at], '\n') + 1
	lineEnd := len(b.source)
	if i := bytes.IndexByte(b.source[at:], '\n'); i >= 0 {
		lineEnd = at + i + 1
	}
	written := strings.TrimRight(string(b.source[lineStart:lineEnd]), "\r\n")
	line := b.lineAt(at)
	key := b.keepPlace(written, line)
	if strings.Contains(wrong.Message, "array") || strings.Contains(wrong.Message, "inline table") {
		// It shows where the next thing begins; told is where the list does.
		if starts := listStart.FindAllIndex(b.source[:at], -1); len(starts) > 0 {
			line, key = b.lineAt(starts[len(starts)-1][0]), ""
		}
	}
	found := explain(written, at-lineStart, wrong.Message)
	found.Line, found.Key = line, key
	b.mistakes = append(b.mistakes, found)
	return lineEnd
}

// keepPlace leaves a trace of a line that could not be parsed: a key is known
// to be there, and is returned; what follows a spoilt [header] goes to no table.
func (b *builder) keepPlace(written string, line int) (key string) {
	if strings.HasPrefix(strings.TrimSpace(written), "[") {
		b.current = &table{line: line}
		return ""
	}
	key, _, found := strings.Cut(written, "=")
	if key = strings.Trim(strings.TrimSpace(key), `"'`); !found || !bareKey.MatchString(key) {
		return ""
	}
	b.current.add(key, line, value{kind: broken, line: line})
	return key
}

var listStart = regexp.MustCompile(`=[ \t]*[\[{]`)

var bareKey = regexp.MustCompile(`^[A-Za-z0-9_-]+$`)

// lineAt is the line, from 1, of an offset in source.
func (b *builder) lineAt(offset int) int {
	if b.lineStarts == nil {
		b.lineStarts = []int{0}
		for i, c := range b.source {
			if c == '\n' {
				b.lineStarts = append(b.lineStarts, i+1)
			}
		}
	}
	return sort.SearchInts(b.lineStarts, offset+1)
}

func (b *builder) take(n *unstable.Node) {
	switch n.Kind {
	case unstable.Table, unstable.ArrayTable:
		b.open(n)
	case unstable.KeyValue:
		b.assign(b.current, n)
	}
}

// open makes the table of a [header] or [[header]] the current one.
func (b *builder) open(n *unstable.Node) {
	names, line := b.key(n)
	parent := b.root
	for _, name := range names[:len(names)-1] {
		parent = descend(parent, name, line, byPath)
	}
	name := names[len(names)-1]
	b.current = &table{line: line}
	opened := value{kind: group, line: line, table: b.current}
	v, found := parent.last(name)
	switch {
	case n.Kind == unstable.Table && found && v.kind == group && v.table.made == byPath:
		v.line, v.table.line, v.table.made = line, line, byHeader
		b.current = v.table
	case n.Kind == unstable.Table:
		parent.add(name, line, opened)
	case found && v.kind == list && !v.fixed:
		v.list = append(v.list, opened)
	default:
		parent.add(name, line, value{kind: list, line: line, list: []value{opened}})
	}
}

// descend goes to the table called name, the last one of a list, on the way to
// something in it. Where there is none, or one that is complete, it makes one;
// the latter is then there twice, which is told when the table is read.
func descend(t *table, name string, line int, by making) *table {
	v, found := t.last(name)
	if found && v.kind == list && len(v.list) > 0 && !v.fixed && by == byPath {
		v = &v.list[len(v.list)-1]
	}
	if found && v.kind == group && v.table.made != inBraces && (by == byPath || v.table.made == byDots) {
		return v.table
	}
	made := &table{line: line, made: by}
	t.add(name, line, value{kind: group, line: line, table: made})
	return made
}

// assign adds key = value to t; a.b = value goes to the table a of t.
func (b *builder) assign(t *table, n *unstable.Node) {
	names, line := b.key(n)
	for _, name := range names[:len(names)-1] {
		t = descend(t, name, line, byDots)
	}
	t.add(names[len(names)-1], line, b.value(n.Value(), line))
}

// key returns the parts of a dotted key, and its line.
func (b *builder) key(n *unstable.Node) (names []string, line int) {
	for it := n.Key(); it.Next(); {
		if line == 0 {
			line = b.lineOf(it.Node())
		}
		names = append(names, string(it.Node().Data))
	}
	return names, line
}

func (b *builder) lineOf(n *unstable.Node) int {
	return b.lineAt(b.offset + int(n.Raw.Offset))
}

// value turns a node into a value. An array has no place of its own in the
// parser's tree: it gets the line of its key.
func (b *builder) value(n *unstable.Node, line int) value {
	v := value{line: line, text: string(n.Data)}
	if n.Kind != unstable.Array {
		v.line = b.lineOf(n)
	}
	switch n.Kind {
	case unstable.String:
		v.kind = text
	case unstable.Integer, unstable.Float:
		v.kind = number
	case unstable.Bool:
		v.kind = truth
	case unstable.Array:
		v.kind, v.fixed = list, true
		for it := n.Children(); it.Next(); {
			v.list = append(v.list, b.value(it.Node(), line))
		}
	case unstable.InlineTable:
		v.kind = group
		v.table = &table{line: v.line, made: inBraces}
		for it := n.Children(); it.Next(); {
			b.assign(v.table, it.Node())
		}
	default:
		v.kind = date
	}
	return v
}

package job

import (
	"cmp"
	"errors"
	"fmt"
	"math/big"
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"sawbill/stock"
	"sawbill/stock/fault"
)

// Each function here reads one value as what its key holds. Whether the key
// may hold that much is told by the key.

// length reads a length. Bare numbers take the units of the ruler.
func (k key) length(v value, ruler stock.Ruler) (stock.Length, fault.Fault) {
	if v.kind != number && v.kind != text && v.kind != cell {
		return 0, wrongKind(v, `write a length such as 900, "900 mm" or "35 1/2 in"`)
	}
	length, err := stock.ParseLength(v.plain(), ruler.Units)
	if err != nil {
		return 0, unreadable(v.plain(), err)
	}
	longest := cmp.Or(k.longest, stock.Longest)
	switch {
	case length == 0 && !k.zero:
		return 0, fault.New("0 is no size", k.otherwise("write a length above 0"))
	case length > longest:
		cause := v.plain() + " is more than can be meant"
		if bare(v.plain()) {
			cause = fmt.Sprintf("%s %s is more than can be meant", v.plain(), ruler.Units)
		}
		if ruler.Exact(longest) {
			cause += fmt.Sprintf(" (at most %s)", ruler.PrintUnit(longest))
		}
		return 0, fault.New(cause, k.otherwise("check the figure")+inMillimeters(v.plain(), ruler, longest))
	}
	return length, fault.Fault{}
}

// inMillimeters is what to write if a bare number of a job in inches was meant
// as millimeters, as it may have been if it would then be in range.
func inMillimeters(written string, ruler stock.Ruler, longest stock.Length) string {
	if ruler.Units != stock.Inches || !bare(written) {
		return ""
	}
	if length, err := stock.ParseLength(written, stock.Millimeters); err != nil || length > longest {
		return ""
	}
	return fmt.Sprintf(`, or write "%s mm" if millimeters are meant`, written)
}

// count reads a whole number.
func (k key) count(v value) (int, fault.Fault) {
	written := v.plain()
	switch v.kind {
	case number:
	case cell:
		written = withoutNoughts(written)
	default:
		return 0, wrongKind(v, "write a whole number, without quotes")
	}
	exact, ok := new(big.Int), len(written) <= longestCount
	if ok {
		exact, ok = exact.SetString(written, 10)
	}
	switch {
	case len(written) > longestCount:
		return 0, fault.New(fmt.Sprintf("%s is no count", written), k.otherwise("write one such as 3"))
	case !ok:
		return 0, fault.New(fmt.Sprintf("%s is not a whole number", v.text), "write one such as 3")
	case exact.Sign() < 0:
		return 0, fault.New(fmt.Sprintf("%s is negative", v.text), k.insteadOfNone())
	case exact.Sign() == 0 && !k.zero:
		return 0, fault.New("0 is no count", k.insteadOfNone())
	case exact.Cmp(big.NewInt(int64(k.most))) > 0:
		return 0, fault.New(fmt.Sprintf("%s is more than can be meant (at most %d)", v.text, k.most), k.otherwise("check the figure"))
	}
	return int(exact.Int64()), fault.Fault{}
}

// longestCount is in digits. It keeps the work small on a file that is no job at all.
const longestCount = 64

// withoutNoughts drops the decimals a spreadsheet gives a whole number: 3.00
// or 3,00. Three of them may be thousands.
func withoutNoughts(s string) string {
	if i := strings.IndexAny(s, ".,"); i > 0 && strings.Trim(s[i+1:], "0") == "" && len(s[i+1:]) != 3 {
		return s[:i]
	}
	return s
}

func price(v value) (stock.Money, fault.Fault) {
	if v.kind != number && v.kind != text && v.kind != cell {
		return 0, wrongKind(v, "write a price such as 74.50")
	}
	money, err := stock.ParseMoney(v.plain())
	if err != nil {
		return 0, unreadable(v.plain(), err)
	}
	return money, fault.Fault{}
}

// percentage reads hundredths of a percent: 8.25, "8.25 %".
func percentage(v value) (stock.Money, fault.Fault) {
	if v.kind == text {
		v.text = strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(v.text), "%"))
	}
	hundredths, found := price(v)
	if found.Found() {
		return 0, fault.New(fmt.Sprintf("%q is no percentage with at most two decimals", v.text), "write it like 8.1")
	}
	return hundredths, fault.Fault{}
}

// Names are printed in tables and on labels; remarks have a line or more to themselves.
const (
	longestName = 200 // characters
	longestNote = 1000
)

// words reads a name, a title or a note. Runs of blanks and line ends become
// one blank, so that a name looks alike wherever it is printed.
func words(v value) (string, fault.Fault) { return wordsUpTo(longestName, v) }

// wordsUpTo is words of so many characters at most.
func wordsUpTo(most int, v value) (string, fault.Fault) {
	if v.kind != text && v.kind != cell {
		return "", wrongKind(v, fmt.Sprintf(`write it in quotes: "%s"`, v.text))
	}
	if n := utf8.RuneCountInString(v.text); n > most {
		return "", fault.New(fmt.Sprintf("has %d characters, and at most %d can be printed", n, most), "shorten it")
	}
	said := strings.Join(strings.Fields(v.text), " ")
	if said == "" {
		return "", fault.New("is empty", "write something, or delete the line")
	}
	return said, unprintable(said)
}

// unprintable is about the first character of a text that has no shape, or turns
// others around.
func unprintable(said string) fault.Fault {
	for _, r := range said {
		if !unicode.IsPrint(r) {
			return fault.New(fmt.Sprintf("%q holds a character that cannot be printed (%U)", said, r), "delete it")
		}
	}
	return fault.Fault{}
}

// word reads one of the words of k, capital letters or not.
func (k key) word(v value) (string, fault.Fault) {
	choice := quoted(k.words)
	if v.kind != text && v.kind != cell {
		return "", wrongKind(v, "write "+choice)
	}
	said := strings.TrimSpace(v.text)
	for _, w := range k.words {
		if strings.EqualFold(said, w) || stock.American(strings.ToLower(said)) == w {
			return w, fault.Fault{}
		}
	}
	if near, ok := stock.Nearest(said, k.words); ok {
		return "", fault.New(fmt.Sprintf("%q is none of %s", v.text, choice), fmt.Sprintf("did you mean %q?", near))
	}
	return "", fault.New(fmt.Sprintf("%q is not known here", v.text), "write "+choice)
}

func isTrue(v value) (bool, fault.Fault) {
	const remedy = "write true or false, without quotes"
	switch said := strings.ToLower(strings.TrimSpace(v.text)); {
	case v.kind == truth || v.kind == cell && (said == "true" || said == "false"):
		return said == "true", fault.Fault{} // a spreadsheet writes TRUE
	case v.kind == cell:
		return false, fault.New(fmt.Sprintf("%q is neither true nor false", v.text), remedy)
	}
	return false, wrongKind(v, remedy)
}

// longestPath is in bytes, what systems allow at most.
const longestPath = 4096

// names reads one text or a list of texts.
func names(v value) ([]string, fault.Fault) {
	const remedy = `write "parts.csv" or ["carcass.csv", "drawers.csv"]`
	values := []value{v}
	if v.kind == list {
		values = v.list
	}
	var all []string
	for _, each := range values {
		if each.kind != text {
			return nil, wrongKind(each, remedy)
		}
		if strings.TrimSpace(each.text) == "" {
			return nil, fault.New("the name of the file is empty", remedy)
		}
		if found := unprintable(each.text); found.Found() {
			return nil, fault.New(found.Cause, "rename the file")
		}
		if len(each.text) > longestPath {
			return nil, fault.New(fmt.Sprintf("the name of the file has %d characters, and at most %d are read", len(each.text), longestPath), "check the name")
		}
		all = append(all, each.text)
	}
	return all, fault.Fault{}
}

// counter tells which of several tables is meant: "case.bay 1.opening 2".
var counter = regexp.MustCompile(` \d+`)

// tables reads the tables of a [[name]], as far as they can be read.
func tables(name string, v value) ([]*table, fault.Fault) {
	remedy := fmt.Sprintf("begin each with [[%s]], in two pairs of brackets", counter.ReplaceAllString(name, ""))
	if v.kind == group {
		return []*table{v.table}, fault.New("is a single table", remedy)
	}
	return listed(v, remedy)
}

// tablesIn reads a list of tables in braces.
func tablesIn(v value) ([]*table, fault.Fault) {
	return listed(v, "write a list such as [{from = 300, to = 360}]")
}

// listed returns the tables of a list, up to the first that is none.
func listed(v value, remedy string) (all []*table, found fault.Fault) {
	if v.kind != list {
		return nil, wrongKind(v, remedy)
	}
	for _, each := range v.list {
		if each.kind != group {
			return all, wrongKind(each, remedy)
		}
		all = append(all, each.table)
	}
	return all, found
}

// single reads the table of a [name].
func single(name string, v value) (*table, fault.Fault) {
	if v.kind == group {
		return v.table, fault.Fault{}
	}
	if v.kind == list {
		return nil, fault.New("there is only one", fmt.Sprintf("begin it with [%s], in one pair of brackets", name))
	}
	return nil, wrongKind(v, fmt.Sprintf("begin a table with [%s]", name))
}

// plain is the text as written, without the strokes TOML allows in long numbers.
func (v value) plain() string {
	if v.kind == number {
		return strings.TrimPrefix(strings.ReplaceAll(v.text, "_", ""), "+")
	}
	return strings.TrimSpace(v.text)
}

// bare reports whether a length was written without a unit.
func bare(written string) bool {
	return !strings.ContainsFunc(written, func(r rune) bool {
		return unicode.IsLetter(r) || strings.ContainsRune(`'"′″’”`, r)
	})
}

// insteadOfNone is the remedy for a count of none or less.
func (k key) insteadOfNone() string {
	return cmp.Or(k.none, k.otherwise("write a whole number above 0"))
}

func (k key) otherwise(remedy string) string { return cmp.Or(k.usual, remedy) }

func wrongKind(v value, remedy string) fault.Fault {
	switch v.kind {
	case text:
		return fault.New(fmt.Sprintf("is text (%q)", v.text), remedy)
	case truth:
		return fault.New("is "+v.text, remedy)
	case number, date:
		return fault.New(fmt.Sprintf("is %s (%s)", v.kind, v.text), remedy)
	}
	return fault.New("is "+v.kind.String(), remedy)
}

// unreadable takes the cause and the remedy from an error of package stock about text.
func unreadable(text string, err error) fault.Fault {
	if f, ok := errors.AsType[fault.Fault](err); ok {
		return fault.New(fmt.Sprintf("%q: %s", text, f.Cause), f.Remedy)
	}
	return fault.New(err.Error(), "write it another way")
}

// quoted writes a choice: `"mm" or "in"`.
func quoted(words []string) string { return quotedWith("or", words) }

func quotedWith(link string, words []string) string {
	var b strings.Builder
	for i, w := range words {
		switch {
		case i > 0 && i == len(words)-1:
			b.WriteString(" " + link + " ")
		case i > 0:
			b.WriteString(", ")
		}
		b.WriteString(strconv.Quote(w))
	}
	return b.String()
}

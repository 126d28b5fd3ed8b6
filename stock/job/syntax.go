package job

import (
	"fmt"
	"strings"

	"sawbill/stock/fault"
)

// explain says in plain words why a line of a job file cannot be parsed. The
// message is the parser's; column counts bytes from 0.
func explain(written string, column int, message string) fault.Fault {
	column = min(column, len(written))
	key, after, assigned := strings.Cut(written, "=")
	key, after = strings.TrimSpace(key), strings.TrimSpace(withoutComment(after))
	switch {
	case assigned && after == "":
		return fault.New("nothing stands behind the =", "write a value, or delete the line")
	case strings.Contains(message, "UTF-8"):
		return fault.New("the line holds bytes that are not UTF-8 text", "save the file as UTF-8")
	case strings.Contains(message, "'=' after key"):
		return withoutEquals(written)
	case strings.Contains(message, "close table name"), strings.Contains(message, "close array table name"):
		return notClosed(written)
	case strings.Contains(message, "at start of key"):
		return fault.New(fmt.Sprintf("%q cannot begin a key", firstRune(written[column:])),
			"write key = value, and begin a remark with #")
	case strings.Contains(message, "unterminated"), strings.Contains(message, "cannot have new lines"),
		strings.Contains(message, "not terminated"):
		return fault.New("a quoted text is not closed", "end it with the same quotation mark on the same line")
	case strings.Contains(message, "escape"), strings.Contains(message, `after \`):
		return fault.New(`a backslash in "double quotes" begins a special character`,
			`put the text in 'single quotes', or write \\ for one backslash`)
	case strings.Contains(message, "array"):
		return fault.New("a list is not written as one", `write ["one", "two"], with commas between and a bracket at the end`)
	case strings.Contains(message, "inline table"), strings.HasPrefix(after, "{"):
		return fault.New("a table in braces is not written as one", `write {name = "shelf", length = 900}`)
	case assigned:
		return badValue(key, after)
	}
	return fault.New("the line cannot be understood ("+message+")", "write key = value")
}

// notClosed explains a heading without its closing brackets, whatever file it is in.
func notClosed(written string) fault.Fault {
	heading := strings.TrimSpace(withoutComment(written))
	name := strings.TrimSpace(strings.Trim(heading, "[]"))
	remedy := "write [[" + name + "]]"
	switch {
	case name == "":
		remedy = "write a name between the brackets"
	case !strings.HasPrefix(heading, "[["):
		remedy = fmt.Sprintf("write [%s], or [[%s]] where there can be several", name, name)
	}
	return fault.New(fmt.Sprintf("the heading %q is not closed", strings.TrimSpace(written)), remedy)
}

// withoutEquals explains a line that should have been key = value.
func withoutEquals(written string) fault.Fault {
	written = strings.TrimSpace(written)
	if key, after, found := strings.Cut(written, ":"); found && !strings.Contains(key, "=") {
		return fault.New(`":" stands where "=" belongs`,
			write(strings.TrimSpace(key), strings.TrimSpace(after)))
	}
	key, after, found := strings.Cut(written, "=")
	key = strings.TrimSpace(key)
	switch {
	case found && strings.ContainsRune(key, ' '):
		return fault.New(fmt.Sprintf("the key %q has a blank in it", key),
			write(strings.Join(strings.Fields(key), "_"), strings.TrimSpace(after)))
	case found && key != "":
		return fault.New(fmt.Sprintf("the key %q has a character that no key has", key), "write keys with a to z and _")
	}
	return fault.New(fmt.Sprintf("%q is not a key with a value", written), "write key = value, and begin a remark with #")
}

// badValue explains a value that is neither a number nor quoted, mostly a
// length in the trade's notation or a decimal comma.
func badValue(key, after string) fault.Fault {
	written := strings.TrimPrefix(strings.TrimSuffix(after, `"`), `"`)
	if !strings.HasPrefix(after, `"`) {
		written = after
	}
	switch {
	case strings.Count(after, `"`) > 2 || strings.HasPrefix(after, `"`) && strings.HasSuffix(after, `""`):
		return fault.New(`an inch mark inside "double quotes" ends the text`, rewrite(key, written))
	case decimal(strings.Replace(after, ",", ".", 1)) && strings.Contains(after, ","):
		return fault.New(fmt.Sprintf("%s has a decimal comma", after),
			fmt.Sprintf("write %s = %s, or put it in quotes", key, strings.Replace(after, ",", ".", 1)))
	case strings.HasPrefix(after, "."):
		return fault.New(fmt.Sprintf("%s begins with a point", after), fmt.Sprintf("write %s = 0%s", key, after))
	case strings.HasSuffix(after, "."):
		return fault.New(fmt.Sprintf("%s ends with a point", after), fmt.Sprintf("write %s = %s", key, strings.TrimSuffix(after, ".")))
	case decimal(after):
		return fault.New(fmt.Sprintf("%s begins with a nought", after),
			fmt.Sprintf("write %s = %s", key, strings.TrimLeft(after, "0")))
	}
	return fault.New(fmt.Sprintf("%s is neither a number nor text in quotes", after), rewrite(key, written))
}

// write shows a value behind its =, in quotes unless it has them or needs none.
func write(key, value string) string {
	if decimal(value) || value == "true" || value == "false" || strings.HasPrefix(value, `"`) {
		return fmt.Sprintf("write %s = %s", key, value)
	}
	return rewrite(key, value)
}

// rewrite shows how to quote a text. One with both an inch and a foot mark is
// better spelt out than escaped.
func rewrite(key, written string) string {
	switch {
	case strings.Contains(written, `"`) && strings.Contains(written, "'"):
		written = strings.NewReplacer(`"`, " in", "'", " ft").Replace(written)
	case strings.Contains(written, `"`):
		return fmt.Sprintf("write %s = '%s'", key, written)
	}
	return fmt.Sprintf(`write %s = "%s"`, key, written)
}

// decimal reports whether s is digits with at most one point.
func decimal(s string) bool {
	return strings.Trim(s, "0123456789.") == "" && strings.Count(s, ".") <= 1 && s != "" && s != "."
}

func withoutComment(s string) string {
	s, _, _ = strings.Cut(s, "#")
	return s
}

func firstRune(s string) string {
	for _, r := range s {
		return string(r)
	}
	return ""
}

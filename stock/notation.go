package stock

import (
	"fmt"
	"strings"

	"sawbill/stock/fault"
)

// notation gives a fault its key: the quantity that a text should have been, and the text.
// A text of more than longestText bytes is cut short. It returns nil without a fault.
func notation(of, text string, wrong *fault.Fault) error {
	if wrong == nil {
		return nil
	}
	if len(text) > longestText {
		text = text[:longestText] + "..."
	}
	keyed := *wrong
	keyed.Key = fmt.Sprintf("%s %q", of, text)
	return keyed
}

// longestText is far more than any length, price or size needs. It keeps the
// work small on a file that is no job at all.
const longestText = 64 // bytes

// tooLong refuses such a text.
var tooLong = fault.New("the text is too long to be one figure", "write a number with its unit")

// keyboard turns what word processors and phones make of a measurement back
// into what a keyboard has. A fraction character keeps a space on both sides,
// so that "27½" does not become 271/2.
var keyboard = strings.NewReplacer(
	"½", " 1/2 ", "¼", " 1/4 ", "¾", " 3/4 ",
	"⅛", " 1/8 ", "⅜", " 3/8 ", "⅝", " 5/8 ", "⅞", " 7/8 ",
	"⅓", " 1/3 ", "⅔", " 2/3 ",
	"⅕", " 1/5 ", "⅖", " 2/5 ", "⅗", " 3/5 ", "⅘", " 4/5 ",
	"⅙", " 1/6 ", "⅚", " 5/6 ", "⅐", " 1/7 ", "⅑", " 1/9 ", "⅒", " 1/10 ",
	"⁄", "/", "∕", "/",
	"′", "'", "’", "'", "‘", "'", "ʹ", "'", "ʼ", "'", "´", "'", "`", "'",
	"″", `"`, "”", `"`, "“", `"`, "ʺ", `"`, "˝", `"`, "„", `"`,
	"‐", "-", "‑", "-", "–", "-", "−", "-",
	"×", "x",
)

// typed is text as it would be typed: lower case, keyboard characters only
// where there is one of like meaning, single spaces, two feet marks as one
// inch mark.
func typed(text string) string {
	plain := keyboard.Replace(strings.ToLower(text))
	plain = strings.ReplaceAll(plain, "''", `"`)
	return strings.Join(strings.Fields(plain), " ")
}

// enumerated joins two words or more: "4/4, 5/4 and 6/4".
func enumerated(words []string) string {
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " and " + words[last]
}

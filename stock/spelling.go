package stock

// american has the American form of British words of the trade.
var american = map[string]string{
	"mitre": "miter", "mitres": "miters", "metre": "meter", "square metre": "square meter",
	"rebate": "rabbet", "housing": "dado",
}

// American is the form in which a word of a job file is known, "miter" for "mitre"; the word itself
// if it has no other.
func American(word string) string {
	if a, ok := american[word]; ok {
		return a
	}
	return word
}

package pdfa

import (
	"strings"
	"testing"
)

// A document in another form than the writer's is refused, never patched.
func TestOtherDocumentsAreRefused(t *testing.T) {
	const whole = "%PDF-1.3\n1 0 obj\n<<>>\nendobj\n2 0 obj\n<<\n/Type /Catalog\n/Names <<\n>>\n>>\nendobj\nxref\n0 3\n0000000000 65535 f \n" +
		"0000000009 00000 n \n0000000029 00000 n \ntrailer\n<<\n/Size 3\n/Root 2 0 R\n/Info 1 0 R\n>>\nstartxref\n78\n%%EOF\n"
	if _, err := Archived([]byte(whole), Info{}); err != nil {
		t.Fatal(err)
	}
	for what, document := range map[string]string{
		"empty":             "",
		"text":              "a page of text\n",
		"cut short":         whole[:100],
		"no catalog":        strings.Replace(whole, "/Catalog", "/Unknown", 1),
		"no information":    strings.Replace(whole, "/Info", "/Inf0", 1),
		"catalog not last":  strings.Replace(whole, "/Root 2", "/Root 1", 1),
		"table elsewhere":   strings.Replace(whole, "startxref\n78", "startxref\n7", 1),
		"table beyond":      strings.Replace(whole, "startxref\n78", "startxref\n7800", 1),
		"catalog kept more": strings.Replace(whole, "/Names", "/Nomes", 1),
	} {
		if _, err := Archived([]byte(document), Info{}); err == nil {
			t.Errorf("%s is taken", what)
		}
	}
}

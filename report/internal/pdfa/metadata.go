package pdfa

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"strings"
	"time"
)

// Info is what the document information says; the metadata say the same.
type Info struct {
	Title, Subject, Keywords, Creator, Producer string
	Date                                        time.Time // of making and of the last change
}

// write adds the metadata: XMP of ISO 16684-1, which name the part and the level of the
// standard (ISO 19005-2, 6.6.4).
func (i Info) write(add func(number int, format string, values ...any), number int) {
	date := i.Date.Format("2006-01-02T15:04:05")
	var b strings.Builder
	b.WriteString("<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n")
	b.WriteString(`<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">` + "\n")
	b.WriteString(`<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/"` +
		` xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/">` + "\n")
	say := func(name, value string) {
		if value != "" {
			fmt.Fprintf(&b, "<%s>%s</%s>\n", name, escaped(value), name)
		}
	}
	say("pdfaid:part", "2")
	say("pdfaid:conformance", "B")
	b.WriteString("<dc:format>application/pdf</dc:format>\n")
	if i.Title != "" {
		fmt.Fprintf(&b, "<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">%s</rdf:li></rdf:Alt></dc:title>\n", escaped(i.Title))
	}
	if i.Subject != "" {
		fmt.Fprintf(&b, "<dc:description><rdf:Alt><rdf:li xml:lang=\"x-default\">%s</rdf:li></rdf:Alt></dc:description>\n", escaped(i.Subject))
	}
	fmt.Fprintf(&b, "<dc:language><rdf:Bag><rdf:li>%s</rdf:li></rdf:Bag></dc:language>\n", language)
	say("pdf:Keywords", i.Keywords)
	say("pdf:Producer", i.Producer)
	say("xmp:CreatorTool", i.Creator)
	say("xmp:CreateDate", date)
	say("xmp:ModifyDate", date)
	b.WriteString("</rdf:Description>\n</rdf:RDF></x:xmpmeta>\n<?xpacket end=\"r\"?>")
	add(number, "<</Type /Metadata /Subtype /XML /Length %d>>\nstream\n%s\nendstream", b.Len(), b.String())
}

func escaped(s string) string {
	var b bytes.Buffer
	_ = xml.EscapeText(&b, []byte(s)) // a buffer takes all
	return b.String()
}

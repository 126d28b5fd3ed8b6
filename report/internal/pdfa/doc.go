// Package pdfa turns a document of the PDF writer into one for archives: PDF/A-2b of ISO
// 19005-2. The writer embeds fonts and needs no help there; this package adds a comment to
// the header, the language, metadata, an output intent and the file's ID. Clauses are
// named from memory.
package pdfa

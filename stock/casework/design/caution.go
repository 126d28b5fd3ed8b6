package design

// Caution is something to see to before the case is built or used.
type Caution struct {
	Subject string // "tipping"
	Text    string // whole sentences
}

// Caution adds a caution.
func (r *Reader) Caution(subject, text string) {
	r.Cautions = append(r.Cautions, Caution{subject, text})
}

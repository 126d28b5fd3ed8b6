// Package joints has the joints of a case, one in a file. A joint says what it adds to the pieces it
// joins, what is marked on both, what it asks of assembly, and what cannot be made.
package joints

// Joint is one way in which two pieces meet. Each joint is a type in a file of its own; All lists
// them. Its traits describe it in words.
type Joint interface {
	// Name is its word in the job file: "half-lap".
	Name() string
	// At is how it is made at a site; ok is false where it may not be.
	At(Site) (f Fit, ok bool)
	// Keys lists the keys of the job file that it uses besides its word: "tenon_length".
	Keys() []string
	// Prepare is a step before assembly, in a sentence; "" if there is none.
	Prepare() string
	// Mark lays it out on both pieces.
	Mark(*Marker, Seat)
}

// Fit is a joint at one site.
type Fit struct {
	Says  string // what the manual says of it
	Reach Reach
	Cut   string // what is cut for it before assembly: "dados"; "" if there is nothing to say
	Close string // how the pieces are put together: "in the dados"
}

// Reach is how far a piece reaches into the one that it meets, and so what a joint adds to it.
type Reach int

const (
	Between Reach = iota // to its face
	Housed               // by the depth of the joint
	Tenoned              // by a tenon of given length
	Through              // to its far side
)

// All lists the joints in the order in which words and steps are listed.
var All = []Joint{
	Butted, rabbeted, dadoed, grooved, halfLapped, mortised, bridled, fingered, doweled, looseTenoned,
}

// traits describe a joint.
type traits struct {
	name    string
	keys    []string
	at      map[Site]Fit
	prepare string
}

func (t traits) Name() string    { return t.name }
func (t traits) Keys() []string  { return t.keys }
func (t traits) Prepare() string { return t.prepare }
func (t traits) At(s Site) (f Fit, ok bool) {
	f, ok = t.at[s]
	return f, ok
}

// FitOf is a joint at a site where it may be.
func FitOf(j Joint, s Site) Fit {
	f, _ := j.At(s)
	return f
}

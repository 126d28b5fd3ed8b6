// Package joints has the joints of a case, one in a file. A joint says what it adds to the pieces it
// joins, what is marked on both, what it asks of assembly, and what cannot be made.
package joints

// Joint is one way in which two pieces meet. Each joint is a type in a file of its own; All
// lists them.
type Joint interface {
	// Name is its word in the job file: "half-lap".
	Name() string
	// Sites are where it may be, each with what the manual says of it there, if anything.
	Sites() map[Site]string
	// Reach is how far a piece reaches into the other at a site.
	Reach(Site) Reach
	// Keys are those of the job file that it uses besides its word: "tenon_length".
	Keys() []string
	// Mark lays it out on both pieces.
	Mark(*Marker, Seat)
	// Cut is what is cut for it at a site before assembly: "dados"; "" if there is nothing to say.
	Cut(Site) string
	// Prepare is another step before assembly, in a sentence; "" if there is none.
	Prepare() string
	// Close says how the pieces are put together at a site: "in the dados".
	Close(Site) string
}

// All lists the joints in the order in which words and steps are listed.
var All = []Joint{
	Butt{}, newRabbet(), newDado(), newGroove(), halfLap{}, MortiseAndTenon{}, bridle{}, boxJoint{}, dowel{}, looseTenon{},
}

// Reach is how far a piece reaches into the one that it meets, and so what a joint adds to it.
type Reach int

const (
	Between Reach = iota // to its face
	Housed               // by the depth of the joint
	Tenoned              // by a tenon of given length
	Through              // to its far side
)

// basic is what joints have in common unless they say otherwise.
type basic struct{}

func (basic) Reach(Site) Reach   { return Between }
func (basic) Keys() []string     { return nil }
func (basic) Mark(*Marker, Seat) {}
func (basic) Cut(Site) string    { return "" }
func (basic) Prepare() string    { return "" }

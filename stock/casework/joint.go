package casework

import (
	"fmt"
	"slices"
	"strings"
)

// Joint is one way in which two pieces meet. Each joint is a type in a file of its own; joints
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
	Mark(*marker, seat)
	// Cut is what is cut for it at a site before assembly: "dados"; "" if there is nothing to say.
	Cut(Site) string
	// Prepare is another step before assembly, in a sentence; "" if there is none.
	Prepare() string
	// Close says how the pieces are put together at a site: "in the dados".
	Close(Site) string
}

// joints are all joints, in the order in which words and steps are listed.
var joints = []Joint{
	butt{}, newRabbet(), newDado(), newGroove(), halfLap{}, mortiseAndTenon{}, bridle{}, boxJoint{}, dowel{}, looseTenon{},
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
func (basic) Mark(*marker, seat) {}
func (basic) Cut(Site) string    { return "" }
func (basic) Prepare() string    { return "" }

// Site is where a case has joints of one kind.
type Site int

const (
	CarcassCorner Site = iota
	DividerEnd         // of partitions and dividers
	ShelfEnd
	BackEdge
	FrameCorner
	FrameMiddle // the ends of mid stiles and mid rails; the word is that of the corner
	DrawerCorner
	DrawerBottom // always a groove
)

// Sites are those whose joint the job file names.
var Sites = []Site{CarcassCorner, DividerEnd, ShelfEnd, BackEdge, FrameCorner, DrawerCorner}

// siteKeys are the keys of a site, and its words that are no joints, ahead of those that are.
type siteKeys struct {
	tag    string // of the field of the design: `joint:"carcass"`
	joint  string // key of the word
	depth  string // key of the depth
	lead   string // what the manual says first
	others []other
}

// other is a word of a site that is no joint, and what the manual says of it.
type other struct{ word, note string }

var keysOf = map[Site]siteKeys{
	CarcassCorner: {tag: "carcass", joint: "joint", depth: "joint_depth", lead: "of the four corners: "},
	DividerEnd:    {tag: "divider", joint: "joint", depth: "joint_depth", lead: "at its two ends: "},
	ShelfEnd:      {tag: "shelf", joint: "held", depth: "joint_depth", others: []other{{"pins", "the shelf lies loose"}}},
	BackEdge:      {tag: "back", joint: "fit", depth: "depth", others: []other{{"none", "no back"}, {"applied", "on the rear edges, over the whole case"}}},
	FrameCorner:   {tag: "frame", joint: "corner"},
	DrawerCorner:  {tag: "drawer", joint: "corner", depth: "corner_depth"},
	DrawerBottom:  {joint: "bottom", depth: "groove_depth"},
}

// wordsOf are the words of the site with that tag, the default first.
func wordsOf(tag string) []string {
	for _, s := range Sites {
		if keysOf[s].tag == tag {
			return s.Words()
		}
	}
	panic("casework: no site has the tag " + tag)
}

// Words are what the job file may say at a site, the default first.
func (s Site) Words() []string {
	var words []string
	for _, o := range keysOf[s].others {
		words = append(words, o.word)
	}
	for _, j := range s.joints() {
		words = append(words, j.Name())
	}
	return words
}

// joints are those that a site may have.
func (s Site) joints() []Joint {
	return slices.DeleteFunc(slices.Clone(joints), func(j Joint) bool {
		_, may := j.Sites()[s]
		return !may
	})
}

// named is the joint of that name, butt for a word that is no joint.
func (s Site) named(name string) Joint {
	for _, j := range s.joints() {
		if j.Name() == name {
			return j
		}
	}
	return butt{}
}

// Manual is what the manual says of the words of a site: `"dado"`; `"dowel"`: sizes as for `"butt"`.
func (s Site) Manual() string {
	all := slices.Clone(keysOf[s].others)
	for _, j := range s.joints() {
		all = append(all, other{j.Name(), j.Sites()[s]})
	}
	said := make([]string, len(all))
	for i, o := range all {
		said[i] = fmt.Sprintf("`%q`", o.word)
		if o.note != "" {
			said[i] += ": " + o.note
		}
	}
	return keysOf[s].lead + strings.Join(said, "; ")
}
